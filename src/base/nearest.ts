/** The name a person most likely meant: the nearest of a list by edit distance, for error messages. */

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const changed = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row[j] = Math.min(changed, previous[j]! + 1, row[j - 1]! + 1);
    }
    previous = row;
  }
  return previous[b.length]!;
}

/** The entry of `names` nearest to `word`, or undefined when none is near enough to be meant. */
export function nearestName(word: string, names: Iterable<string>): string | undefined {
  const wanted = word.slice(0, 80).toLowerCase();
  let best: string | undefined;
  let least = Math.max(2, Math.ceil(wanted.length / 3)) + 1;
  for (const name of names) {
    const lower = name.toLowerCase();
    const isBegun = lower !== wanted && wanted.length > 2 && lower.startsWith(wanted);
    const distance = isBegun ? 1 : editDistance(wanted, lower);
    if (distance < least) [best, least] = [name, distance];
  }
  return best;
}
