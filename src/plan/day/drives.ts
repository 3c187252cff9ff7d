/** How full the drives are at the end of the day: what is saved fills them in turn, each copy its own. */
import type { DayData, DriveAt } from './data.ts';
import type { DriveFill } from './types.ts';

interface Sizes {
  readonly middle_B: number;
  readonly late_B: number;
}

/** What of so many bytes lies on each drive of a row: each is filled before the next, the last takes all the rest. */
function spread(row: readonly DriveAt[], size_B: number): readonly number[] {
  let rest_B = size_B;
  return row.map(({ free_B }, i) => {
    const on_B = i === row.length - 1 || Number.isNaN(free_B) ? rest_B : Math.min(rest_B, free_B);
    rest_B -= on_B;
    return on_B;
  });
}

/** Drives whose free room is known, with what the day puts on them. */
export function driveFills({ saves, copies }: DayData, saved: Sizes): readonly DriveFill[] {
  return [saves, ...copies].flatMap((row, i) => {
    const [middle, late] = [spread(row, saved.middle_B), spread(row, saved.late_B)];
    return row.flatMap(({ id, title, free_B }, j): readonly DriveFill[] => {
      if (Number.isNaN(free_B)) return [];
      const holds = i === 0 ? 'saves' : 'copies';
      return [{ drive: id, title, holds, free_B, middle_B: middle[j]!, late_B: late[j]!, isShort: late[j]! > free_B }];
    });
  });
}
