/** Keys that hold a problem: written, but not to be used. */

/** Whether a key of a record, as written, holds something that cannot be read. */
export function isUnread({ unread }: { readonly unread?: readonly string[] }, key: string): boolean {
  return unread?.includes(key) === true;
}
