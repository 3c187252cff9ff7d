/** Numbers of every frame of a clip whose length nobody knows yet, in as little room as they take. */

export interface Growing {
  /** Adds the numbers of one frame. */
  readonly add: (values: ArrayLike<number>) => void;
  /** All so far, frame after frame, not to be changed. */
  readonly all: () => Float32Array;
}

/** Room for `width` numbers a frame. */
export function createGrowing(width: number): Growing {
  let room = new Float32Array(64 * width);
  let length = 0;
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
