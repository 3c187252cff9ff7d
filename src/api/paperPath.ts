/** Where the paper of a shoot is to be had, apart from its schema so that a page may have the address without it. */
import { shootPath } from './routes.ts';

export interface PaperAsked {
  readonly sheet: 'card' | 'plan' | 'morning' | 'cues' | 'day' | 'dressing';
  readonly shot?: string | undefined;
  readonly duty?: string | undefined;
  readonly size: 'a4' | 'letter';
  readonly units?: 'metric' | 'imperial' | undefined;
}

export function paperPath(shootId: string, asked: PaperAsked): string {
  const query = Object.entries(asked).flatMap(([key, value]: readonly [string, string | undefined]) =>
    value === undefined ? [] : [`${key}=${encodeURIComponent(value)}`],
  );
  return `${shootPath(shootId)}/paper?${query.join('&')}`;
}
