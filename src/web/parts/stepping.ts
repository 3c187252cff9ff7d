/** The next sensible value of a written number, with whatever unit stands after it. */

const WRITTEN = /^(\s*[+\-−]?)(\d+(?:\.\d+)?)(.*)$/s;

/** Steps grow with the number: 1.00 to 2.00 by 0.05, to 5.0 by 0.1, to 10 by 0.2, and the same in every decade. */
function stepFor(size: number): number {
  const decade = 10 ** Math.floor(Math.log10(size) + 1e-12);
  const lead = size / decade;
  return decade * (lead < 2 - 1e-9 ? 0.05 : lead < 5 - 1e-9 ? 0.1 : 0.2);
}

const tidy = (value: number) => String(Number(value.toPrecision(12)));

/** "240 mm" up is "250 mm", "10 px" down is "9.8 px"; undefined when the text holds no plain positive number. */
export function stepWritten(text: string, direction: 1 | -1): string | undefined {
  const [, sign = '', digits, rest = ''] = WRITTEN.exec(text) ?? [];
  if (digits === undefined || /^\s*\//.test(rest)) return undefined;
  const size = Number(digits);
  if (!(size > 0)) return undefined;
  const isNegative = /[-−]/.test(sign);
  const grows = direction === (isNegative ? -1 : 1);
  const step = stepFor(grows ? size : size * (1 - 1e-9));
  const count = size / step;
  const next = grows ? Math.floor(count + 1e-6) + 1 : Math.ceil(count - 1e-6) - 1;
  return `${sign}${tidy(next * step)}${rest}`;
}
