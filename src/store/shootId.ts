/** Ids for shoots that come without one. */

export const ID_PATTERN = /^[A-Za-z][A-Za-z0-9-]{0,63}$/;

const LONGEST = 48;

/** An id made from a title, with a number behind it where it is taken. */
export function idFrom(title: string, isTaken: (id: string) => boolean): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
  const id = /^[a-z]/.test(plain) ? plain : `shoot-${plain}`.replace(/-+$/, '');
  if (!isTaken(id)) return id;
  for (let count = 2; ; count += 1) if (!isTaken(`${id}-${count}`)) return `${id}-${count}`;
}
