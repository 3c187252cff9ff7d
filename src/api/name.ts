/** Names of people, as a client may send them whatever was typed. */

/** Characters of a name, whole ones. */
export const LONGEST_NAME = 60;

/**
 * What was typed as one line of at most 60 whole characters, which the server takes; undefined where nothing is left.
 * A name that is refused would make every request fail, so a client sends this and never the raw text.
 */
export function plainName(typed: string | undefined): string | undefined {
  const whole = (typed ?? '').replace(/\p{Surrogate}/gu, '').replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ');
  const name = [...whole.trim()].slice(0, LONGEST_NAME).join('').trim();
  return name === '' ? undefined : name;
}
