/** Lists in a sentence. */

/** "mode", "mode and shutter", "lens, stop and light"; nothing for none. */
export function sayList(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}
