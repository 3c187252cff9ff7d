/** Whether the pointer itself moved, rather than something having come to lie under it. */
export function isMoving({
  movementX,
  movementY,
}: {
  readonly movementX: number;
  readonly movementY: number;
}): boolean {
  return movementX !== 0 || movementY !== 0;
}

/** Whether a click on a link is meant to stay in this page, rather than to open it elsewhere. */
export function isPlainClick({
  button,
  metaKey,
  ctrlKey,
  shiftKey,
  altKey,
}: Readonly<Record<'metaKey' | 'ctrlKey' | 'shiftKey' | 'altKey', boolean>> & { readonly button: number }): boolean {
  return button === 0 && !metaKey && !ctrlKey && !shiftKey && !altKey;
}
