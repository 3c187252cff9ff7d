/** What keeps light off in a set-up: its flags where they stand, and the doors of its lamps. */
import type { Flag as WrittenFlag, PlacedLamp, Shoot } from '../document/schema.ts';
import type { Vec3 } from '../laws/light/area/polygon.ts';
import { doorsOf, type Door } from '../laws/light/placed/doors.ts';
import { flagAt, type Flag } from '../laws/light/placed/flag.ts';
import { acrossAxis } from '../laws/light/placed/source.ts';
import { vecOf, type LampLack } from './lampLack.ts';
import { isUnread } from './unread.ts';

/** One flag of a set-up, as it stands or with what it lacks. */
export interface PlacedFlag {
  readonly id: string;
  readonly title: string;
  /** Taken away. */
  readonly isOff: boolean;
  /** Where it stands, in the way or taken away. */
  readonly flag?: Flag;
  readonly lacks: readonly LampLack[];
}

/** Every flag of a set-up. Never throws for what somebody wrote. */
export function flagsOf(shoot: Shoot, setupId: string): readonly PlacedFlag[] {
  const { flags = {} } = shoot.lighting[setupId] ?? {};
  return Object.entries(flags).map(([id, flag]) => placedFlag(`/lighting/${setupId}/flags/${id}`, id, flag));
}

function placedFlag(path: string, id: string, written: WrittenFlag): PlacedFlag {
  const { title = id, at, faces, flagWidth_m, flagHeight_m, isOff = false } = written;
  const lacks: LampLack[] = [];
  const lack = (what: string, key: string) => lacks.push({ title: `${what} of ${title}`, path: `${path}/${key}`, isUnread: isUnread(written, key) }); // prettier-ignore
  if (!at) lack('Place', 'at');
  if (flagWidth_m === undefined) lack('Width', 'width');
  if (flagHeight_m === undefined) lack('Height', 'height');
  if (isUnread(written, 'faces')) lack('What is faced', 'faces');
  const common = { id, title, isOff };
  const told = () => ({ ...common, lacks: isOff ? [] : lacks });
  if (!at || flagWidth_m === undefined || flagHeight_m === undefined || lacks.length > 0) return told();
  const centre = vecOf(at);
  const to: Vec3 = faces ? vecOf(faces) : [0, 0, 0];
  const facing: Vec3 = [to[0] - centre[0], to[1] - centre[1], to[2] - centre[2]];
  if (Math.hypot(...facing) === 0) {
    lacks.push({ title: `What is faced of ${title}`, path: `${path}/faces`, isUnread: false, what: 'it is square to the line to another place than its own' }); // prettier-ignore
    return told();
  }
  return { ...common, flag: flagAt({ centre, facing, width_m: flagWidth_m, height_m: flagHeight_m }), lacks: [] };
}

/** Flags that are in the way of light. */
export const standing = (flags: readonly PlacedFlag[]): readonly Flag[] =>
  flags.flatMap(({ flag, isOff }) => (flag && !isOff ? [flag] : []));

const SIDES = [
  ['left', 'doorLeft_deg', 'left_deg'],
  ['right', 'doorRight_deg', 'right_deg'],
  ['top', 'doorTop_deg', 'top_deg'],
  ['bottom', 'doorBottom_deg', 'bottom_deg'],
] as const;

export interface DoorsRead {
  /** On the axis it is asked for; empty where all are open. */
  readonly about: (axis: Vec3) => readonly Door[];
  readonly isAny: boolean;
  /** Sides that are written and cannot be read. */
  readonly unread: readonly string[];
}

/** The doors of a placed lamp. */
export function doorsRead({ doors }: PlacedLamp): DoorsRead {
  const written = SIDES.flatMap(([, read, asked]) => (doors[read] === undefined ? [] : [[asked, doors[read]] as const]));
  return {
    about: (axis) => doorsOf(acrossAxis(axis), Object.fromEntries(written)),
    isAny: written.length > 0,
    unread: SIDES.map(([key]) => key).filter((key) => isUnread(doors, key)),
  };
} // prettier-ignore
