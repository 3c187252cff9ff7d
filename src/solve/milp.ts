/**
 * The solver port: a mixed-integer linear problem in, its optimum out. Behind it stands HiGHS, compiled to WebAssembly,
 * one thread, one seed, stopped by nodes and never by a clock: the same problem has the same answer everywhere. Whoever
 * calls brings the loader, as a page and a command find the WebAssembly in different places.
 */
import type { Highs } from 'highs';
import { Fault } from '../base/fault.ts';

export type LoadHighs = () => Promise<Pick<Highs, 'solve'>>;
export type Solver = Pick<Highs, 'solve'>;

export interface Variable {
  /** A letter, then letters, digits and underscores. */
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly isInteger?: boolean;
  /** Its weight in what is made least. */
  readonly cost: number;
}

/** Σ coefficient · variable, held between two bounds; an infinite bound is none. */
export interface Row {
  readonly terms: readonly (readonly [name: string, coefficient: number])[];
  readonly least?: number;
  readonly most?: number;
}

export interface Problem {
  readonly variables: readonly Variable[];
  readonly rows: readonly Row[];
}

export type Solution =
  | { readonly is: 'found'; readonly values: ReadonlyMap<string, number>; readonly cost: number; readonly isProven: boolean }
  | { readonly is: 'impossible' }; // prettier-ignore

/** Of the cost, how near the optimum is near enough: below what any lamp is set to. */
const GAP = 1e-5;

/** Nodes of the search tree after which the best found so far is taken as it is. */
const MOST_NODES = 20_000;

const NAME = /^[a-z]\w{0,60}$/i;

/** Names that the text format reads as a number or as a section. */
const READ_OTHERWISE = /^(?:e\d*|inf|infinity|free|st|bin|gen|end)$/i;

const signed = (value: number): string => (value < 0 ? `- ${-value}` : `+ ${value}`);

/** Long rows are broken: readers of the format limit the length of a line. */
const TERMS_PER_LINE = 20;

function sumOf(terms: Row['terms']): string {
  const words = terms.map(([name, coefficient]) => `${signed(coefficient)} ${name}`);
  const lines = [];
  for (let i = 0; i < words.length; i += TERMS_PER_LINE) lines.push(words.slice(i, i + TERMS_PER_LINE).join(' '));
  return lines.join('\n  ');
}

function requireSound({ variables, rows }: Problem): void {
  const names = new Set(variables.map(({ name }) => name));
  if (names.size !== variables.length) throw new RangeError('two variables have one name');
  for (const { name, low, high, cost } of variables) {
    if (!NAME.test(name) || READ_OTHERWISE.test(name)) throw new RangeError(`${name} cannot be a variable's name`);
    if (!(low <= high) || !Number.isFinite(low) || !Number.isFinite(high) || !Number.isFinite(cost))
      throw new RangeError(`${name} needs finite bounds in order and a finite cost, got ${low} to ${high} at ${cost}`);
  }
  for (const { terms, least = -Infinity, most = Infinity } of rows) {
    if (Number.isNaN(least) || Number.isNaN(most)) throw new RangeError('a row is bounded by no number');
    for (const [name, coefficient] of terms)
      if (!names.has(name) || !Number.isFinite(coefficient))
        throw new RangeError(`a row has ${coefficient} of ${name}, which is no number or no variable`);
  }
}

/** The problem in the LP format. Throws RangeError for what is no problem: names that clash, bounds out of order. */
export function lpText(problem: Problem): string {
  requireSound(problem);
  const { variables, rows } = problem;
  const costs = variables.flatMap(({ name, cost }) => (cost === 0 ? [] : [[name, cost] as const]));
  const lines = ['Minimize', `  cost: ${sumOf(costs)}`, 'Subject To'];
  for (const { terms, least = -Infinity, most = Infinity } of rows) {
    const used = terms.filter(([, coefficient]) => coefficient !== 0);
    // A row of nothing says only whether it holds, and the format has no way to write it.
    const sum = used.length > 0 ? sumOf(used) : `+ 0 ${variables[0]!.name}`;
    if (Number.isFinite(least)) lines.push(`  ${sum} >= ${least}`);
    if (Number.isFinite(most)) lines.push(`  ${sum} <= ${most}`);
  }
  lines.push('Bounds', ...variables.map(({ name, low, high }) => `  ${low} <= ${name} <= ${high}`));
  const integers = variables.filter(({ isInteger }) => isInteger === true).map(({ name }) => `  ${name}`);
  if (integers.length > 0) lines.push('General', ...integers);
  return `${[...lines, 'End'].join('\n')}\n`;
}

/** What was stopped early may still have found something. */
const STOPPED: ReadonlySet<string> = new Set(['Iteration limit reached', 'Unknown', 'Time limit reached', 'Bound on objective reached', 'Target for objective reached']); // prettier-ignore

function failed(status: string, cause?: unknown): Fault {
  return new Fault({
    code: 'solve.failed',
    what: `The solver ended without an answer: ${status}`,
    where: 'the search for an optimum',
    mend: 'Narrow what is searched, such as the places or the lamps, and try again.',
    cause,
  });
}

/**
 * The cheapest values that keep every row, or word that there are none; unproven where the search was ended by its
 * count of nodes. Throws Fault `solve.failed` where the solver gives neither.
 */
export function solveProblem(solver: Solver, problem: Problem): Solution {
  if (problem.variables.length === 0) throw new RangeError('a problem needs a variable');
  const text = lpText(problem);
  const options = { output_flag: false, threads: 1, random_seed: 0, mip_max_nodes: MOST_NODES, mip_rel_gap: GAP, mip_abs_gap: 1e-9 };
  let result;
  try {
    result = solver.solve(text, options);
  } catch (cause) {
    throw failed(cause instanceof Error ? cause.message : String(cause), cause);
  }
  const status: string = result.Status;
  if (status === 'Infeasible' || status === 'Primal infeasible or unbounded') return { is: 'impossible' };
  const isProven = status === 'Optimal';
  const values = new Map<string, number>();
  for (const { name, isInteger } of problem.variables) {
    const column: object | undefined = result.Columns[name];
    const value = column !== undefined && 'Primal' in column ? Number(column.Primal) : NaN;
    values.set(name, isInteger === true ? Math.round(value) : value);
  }
  const isWhole = [...values.values()].every(Number.isFinite) && keeps(problem, values);
  if (!(isProven || STOPPED.has(status)) || !isWhole) throw failed(status);
  return { is: 'found', values, cost: problem.variables.reduce((sum, { name, cost }) => sum + cost * values.get(name)!, 0), isProven };
} // prettier-ignore

/** Rows hold within this share of their size: the solver's own tolerance. */
const SLACK = 1e-5;

/** Whether values keep every row. */
function keeps({ rows }: Problem, values: ReadonlyMap<string, number>): boolean {
  return rows.every(({ terms, least = -Infinity, most = Infinity }) => {
    let [sum, size] = [0, 1];
    for (const [name, coefficient] of terms) {
      sum += coefficient * values.get(name)!;
      size = Math.max(size, Math.abs(coefficient));
    }
    return sum >= least - SLACK * size && sum <= most + SLACK * size;
  });
}
