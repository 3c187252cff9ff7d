/** JSON Pointers (RFC 6901): where a value stands in the written shoot, such as `/shots/pour-1/shutter`. */

/** The keys a pointer passes, or undefined when it is no pointer. */
export function keysOf(pointer: string): readonly string[] | undefined {
  if (pointer === '') return [];
  if (!pointer.startsWith('/') || /~(?![01])/.test(pointer)) return undefined;
  return pointer
    .slice(1)
    .split('/')
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
}

export function pointerTo(keys: readonly (string | number)[]): string {
  return keys.map((key) => `/${escapeKey(String(key))}`).join('');
}

export function escapeKey(key: string): string {
  return key.includes('~') || key.includes('/') ? key.replaceAll('~', '~0').replaceAll('/', '~1') : key;
}
