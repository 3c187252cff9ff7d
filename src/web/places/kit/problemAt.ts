/** What is wrong with the value written at a path, in one sentence. */
import type { OpenShoot } from '../../state/contract.ts';

export function problemAt({ problems }: Pick<OpenShoot, 'problems'>, path: string): string | undefined {
  const found = problems.find((problem) => problem.path === path);
  return found && (found.near === undefined ? found.what : `${found.what}; did you mean ${found.near}?`);
}

/** How many values at or beneath a path cannot be read. */
export function problemCount({ problems }: Pick<OpenShoot, 'problems'>, path: string): number {
  return problems.filter((problem) => problem.path === path || problem.path.startsWith(`${path}/`)).length;
}
