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
