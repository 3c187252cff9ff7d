/** Published checks: a value as its source prints it, right to half a unit in the last printed place. */
import { expect, test } from 'vitest';

export function printed(text: string): { readonly value: number; readonly tolerance: number } {
  const digits = text.replace(/[,\s]/g, '');
  const [mantissa = '', exponent = '0'] = digits.split(/e/i);
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return { value: Number(digits), tolerance: 0.5 * 10 ** (Number(exponent) - decimals) };
}

export interface PublishedCheck<Given> {
  /** Key in docs/sources.yaml. */
  readonly source: string;
  /** Page, table, equation or example. */
  readonly at: string;
  readonly given: Given;
  /** The number as printed; its last digit sets the tolerance. */
  readonly expected: string;
}

/** Tests a law against values others published; source and place stand in each test's title. */
export function published<Given>(
  name: string,
  compute: (given: Given) => number,
  checks: readonly PublishedCheck<Given>[],
): void {
  test.each(checks.map((check) => ({ ...check, name })))('$name agrees with $source, $at', ({ given, expected }) => {
    const { value, tolerance } = printed(expected);
    expect(Math.abs(compute(given) - value)).toBeLessThanOrEqual(tolerance * (1 + 1e-9));
  });
}
