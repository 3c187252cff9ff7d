/** The only door for data from outside: what does not fit its schema becomes a fault that names every misfit. */
import type * as z from 'zod';
import { Fault } from '../base/fault.ts';

export type Schema = z.ZodType;
export type Parsed<Of extends Schema> = z.output<Of>;

/** Misfits told in full. */
const NAMED = 5;

/** The value as its schema reads it. Throws Fault `input.malformed`; `where` names what was sent. */
export function parsed<Of extends Schema>(schema: Of, value: unknown, where: string): Parsed<Of> {
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  const { issues } = read.error;
  const named = issues.slice(0, NAMED).map(({ path, message }) => {
    const at = path.map(String).join('.');
    return at === '' ? message : `${at}: ${message}`;
  });
  const more = issues.length > NAMED ? `; and ${issues.length - NAMED} more` : '';
  throw new Fault({
    code: 'input.malformed',
    what: `${named.join('; ')}${more}`,
    where,
    mend: 'Correct what is named and send it again; nothing was changed.',
  });
}
