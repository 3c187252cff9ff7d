/** The guards of laws: each refuses, by name, a value outside the domain where the law has a meaning. */

type Named = Readonly<Record<string, number>>;

function refuse(name: string, must: string, got: number): never {
  throw new RangeError(`${name} must be ${must}, got ${got}`);
}

/** Throws RangeError unless every value is finite and above zero. */
export function requirePositive(values: Named): void {
  for (const name in values) {
    const value = values[name]!;
    if (!(value > 0 && value < Infinity)) refuse(name, 'positive and finite', value);
  }
}

/** Throws RangeError unless every value is finite and zero or above. */
export function requireNotNegative(values: Named): void {
  for (const name in values) {
    const value = values[name]!;
    if (!(value >= 0 && value < Infinity)) refuse(name, 'zero or above and finite', value);
  }
}

/** Throws RangeError unless every value is finite. */
export function requireFinite(values: Named): void {
  for (const name in values) if (!Number.isFinite(values[name]!)) refuse(name, 'finite', values[name]!);
}

/** Throws RangeError unless every value lies in [low, high]. */
export function requireWithin(low: number, high: number, values: Named): void {
  for (const name in values) {
    const value = values[name]!;
    if (!(value >= low && value <= high)) refuse(name, `from ${low} to ${high}`, value);
  }
}

/** Throws RangeError unless every value is a whole number, `least` or above. */
export function requireCount(values: Named, least = 0): void {
  for (const name in values) {
    const value = values[name]!;
    if (!(Number.isSafeInteger(value) && value >= least)) refuse(name, `a whole number of at least ${least}`, value);
  }
}

/** Marks a branch that types say cannot be reached. */
export function assertNever(value: never): never {
  throw new RangeError(`unexpected ${JSON.stringify(value)}`);
}
