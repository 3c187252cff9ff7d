/** Transfer curves as people name them. */
import { Fault } from '../base/fault.ts';
import type { TransferCurve } from './transfer.ts';

const NAMED: Readonly<Record<string, TransferCurve>> = {
  linear: { kind: 'linear' },
  srgb: { kind: 'srgb' },
  rec709: { kind: 'rec709' },
  pq: { kind: 'pq' },
  hlg: { kind: 'hlg' },
  acescct: { kind: 'acescct' },
};

/** How curves are written, for the help and for whoever wrote one wrongly. */
export const CURVE_FORMS = 'linear, rec709, srgb, pq, hlg, acescct, gamma:2.2, or log:a,b,c,d,e,f,cut';

function refuse(text: string, what: string): never {
  throw new Fault({
    code: 'measure.bad-curve',
    what,
    where: `the curve ${JSON.stringify(text.slice(0, 80))}`,
    mend: `Write ${CURVE_FORMS}, with the constants as the camera’s maker publishes them: c·log10(a·light + b) + d above the cut, e·light + f below.`,
  });
}

function numbersOf(text: string, after: string, count: number): readonly number[] {
  const numbers = after.split(',').map((part) => (part.trim() === '' ? NaN : Number(part)));
  if (numbers.length !== count || !numbers.every(Number.isFinite)) refuse(text, `This curve takes ${count === 1 ? 'a number' : `${count} numbers with commas between`}`); // prettier-ignore
  return numbers;
}

/** The curve of a name. Throws a Fault for one that is none. */
export function parseCurve(text: string): TransferCurve {
  const [kind = '', ...rest] = text.trim().toLowerCase().split(':');
  const named = Object.hasOwn(NAMED, kind) && rest.length === 0 ? NAMED[kind] : undefined;
  if (named) return named;
  if (kind === 'gamma') {
    const [exponent = NaN] = numbersOf(text, rest.join(':'), 1);
    return exponent > 0 ? { kind, exponent } : refuse(text, 'A gamma lies above 0');
  }
  if (kind === 'log') {
    const [a = NaN, b = NaN, c = NaN, d = NaN, e = NaN, f = NaN, cut = NaN] = numbersOf(text, rest.join(':'), 7);
    return a > 0 && c > 0 && e > 0 ? { kind, a, b, c, d, e, f, cut } : refuse(text, 'Of these constants a, c and e lie above 0'); // prettier-ignore
  }
  return refuse(text, `There is no curve ${JSON.stringify(text.slice(0, 80))}`);
}
