/** Numbers of every frame of a clip whose length nobody knows yet, in as little room as they take. */

export interface Growing {
  /** Adds the numbers of one frame. */
  readonly add: (values: ArrayLike<number>) => void;
  /** All so far, frame after frame, not to be changed. */
  readonly all: () => Float32Array;
}

/** Room for `width` numbers a frame, those there already first. */
export function createGrowing(width: number, saved: Float32Array = new Float32Array(0)): Growing {
  let room = new Float32Array(Math.max(64 * width, saved.length));
  room.set(saved);
  let { length } = saved;
  return {
    add: (values) => {
      if (length + width > room.length) {
        const larger = new Float32Array(2 * room.length);
        larger.set(room);
        room = larger;
      }
      room.set(values, length);
      length += width;
    },
    all: () => room.subarray(0, length),
  };
}
