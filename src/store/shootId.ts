/** Ids for shoots that come without one. */

export const ID_PATTERN = /^[A-Za-z][A-Za-z0-9-]{0,63}$/;

/** Words that begin addresses of other places: a shoot under one could not be reached. */
const RESERVED: ReadonlySet<string> = new Set(['shoots', 'reckoner', 'gallery', 'api', 'kit', 'paper']);

const LONGEST = 48;

/** Whether no shoot may take this id, however it is spelt. */
export function isReservedId(id: string): boolean {
  return RESERVED.has(id.toLowerCase());
}

/** A title in small letters, digits and hyphens, such as a file may be called; a letter first. */
export function plainTitle(title: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
  return /^[a-z]/.test(plain) ? plain : `shoot-${plain}`.replace(/-+$/, '');
}

/** An id made from a title, with a number behind it where it is taken or reserved. */
export function idFrom(title: string, isTaken: (id: string) => boolean): string {
  const id = plainTitle(title);
  const isFree = (candidate: string) => !isReservedId(candidate) && !isTaken(candidate);
  if (isFree(id)) return id;
  for (let count = 2; ; count += 1) if (isFree(`${id}-${count}`)) return `${id}-${count}`;
}
