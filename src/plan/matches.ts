/** Plates and elements held against the shots that they must match. */
import { showQuantity, showShutter, writeQuantity } from '../base/quantity.ts';
import { printStopNumber } from '../base/stop.ts';
import { type MAY_DIFFER, type Shoot } from '../document/schema.ts';
import { withDefaults } from './givens.ts';
import type { Match, MatchDifference, PatchOperation, Settings, ShotPlan } from './types.ts';

type Matched = keyof typeof MAY_DIFFER;

/** Distances further apart than this, of themselves, are another framing. */
const SAME_PLACE = 0.005;

/** Settings nearer than this are the same mark. */
const SAME_MARK = 1e-6;

interface Side {
  readonly shoot: Shoot;
  readonly settings: Settings;
  readonly lighting: string | undefined;
  readonly frameWidth_m: number | undefined;
}

interface Comparison {
  readonly isSame: (here: Side, there: Side) => boolean;
  readonly says: (side: Side) => string;
  /** Key of the shot and the written value that would make it the same; undefined where none alone does. */
  readonly sets: (there: Side, here: Side) => readonly [key: string, value: string] | undefined;
}

const near = (a: number, b: number, within: number): boolean => Math.abs(a - b) <= within * Math.max(Math.abs(a), Math.abs(b)); // prettier-ignore
const words = ({ number, unit }: { readonly number: string; readonly unit: string }) => `${number} ${unit}`.trim();

const COMPARED: Readonly<Record<Matched, Comparison>> = {
  camera: {
    isSame: (a, b) => a.settings.camera === b.settings.camera,
    says: ({ shoot, settings }) => shoot.kit.cameras[settings.camera]?.title ?? settings.camera,
    sets: ({ settings }) => ['camera', settings.camera],
  },
  mode: {
    isSame: (a, b) => a.settings.camera !== b.settings.camera || a.settings.mode === b.settings.mode,
    says: ({ settings }) => `${settings.widthCount} × ${settings.heightCount}`,
    sets: ({ settings }) => ['mode', settings.mode],
  },
  lens: {
    isSame: (a, b) => a.settings.lens === b.settings.lens,
    says: ({ shoot, settings }) => shoot.kit.lenses[settings.lens]?.title ?? settings.lens,
    sets: ({ settings }) => ['lens', settings.lens],
  },
  distance: {
    isSame: (a, b) => near(a.settings.sensorToSubject_m, b.settings.sensorToSubject_m, SAME_PLACE),
    says: ({ shoot, settings }) =>
      words(showQuantity('length', settings.sensorToSubject_m, { digits: 4, system: shoot.shoot.units ?? 'metric' })),
    sets: (there, here) =>
      there.settings.lens === here.settings.lens && there.frameWidth_m !== undefined
        ? ['frameWidth', writeQuantity('length', there.frameWidth_m)]
        : undefined,
  },
  stop: {
    isSame: (a, b) => near(a.settings.stop, b.settings.stop, SAME_MARK),
    says: ({ settings }) => `T${printStopNumber(settings.stop)}`,
    sets: ({ settings }) => ['stop', writeQuantity('tStop', settings.stop)],
  },
  rate: {
    isSame: (a, b) => near(a.settings.captureRate_fps, b.settings.captureRate_fps, SAME_MARK),
    says: ({ settings }) => words(showQuantity('rate', settings.captureRate_fps, { digits: 6 })),
    sets: ({ settings }) => ['rate', writeQuantity('rate', settings.captureRate_fps)],
  },
  shutter: {
    isSame: (a, b) => near(a.settings.exposureTime_s, b.settings.exposureTime_s, SAME_MARK),
    says: ({ settings }) => words(showShutter(settings.exposureTime_s)),
    sets: ({ settings }) => ['shutter', writeQuantity('time', settings.exposureTime_s)],
  },
  index: {
    isSame: (a, b) => a.settings.isoSpeed === b.settings.isoSpeed,
    says: ({ settings }) => `EI ${settings.isoSpeed}`,
    sets: ({ settings }) => ['index', String(settings.isoSpeed)],
  },
  lighting: {
    isSame: (a, b) => a.lighting === b.lighting,
    says: ({ shoot, lighting }) => (lighting === undefined ? 'none' : (shoot.lighting[lighting]?.title ?? lighting)),
    sets: ({ lighting }) => (lighting === undefined ? undefined : ['lighting', lighting]),
  },
};

const ALL = Object.keys(COMPARED) as readonly Matched[];

/** Every plate of a shoot with what keeps it from matching; one whose shot, or whose settings, are unknown is left out. */
export function matchesOf(shoot: Shoot, shots: readonly ShotPlan[]): readonly Match[] {
  const planned = new Map(shots.map((shot) => [shot.id, shot]));
  const sideOf = (id: string): Side | undefined => {
    const settings = planned.get(id)?.settings;
    if (!settings) return undefined;
    const { shot } = withDefaults(shoot, id);
    return { shoot, settings, lighting: shot.lighting, frameWidth_m: shot.frameWidth_m };
  };
  return shots.flatMap(({ id }) => {
    const { matches, mayDiffer } = withDefaults(shoot, id).shot;
    if (matches === undefined || matches === id) return [];
    const [here, there] = [sideOf(id), sideOf(matches)];
    if (!here || !there) return [];
    const compared = ALL.filter((what) => !mayDiffer.includes(what) && !COMPARED[what].isSame(here, there));
    return [{ shotId: id, matchesId: matches, differences: compared.map((what) => difference(id, what, here, there)) }];
  });
}

function difference(shotId: string, what: Matched, here: Side, there: Side): MatchDifference {
  const { says, sets } = COMPARED[what];
  const set = sets(there, here);
  const patch: readonly PatchOperation[] = set ? [{ op: 'add', path: `/shots/${shotId}/${set[0]}`, value: set[1] }] : [];
  return { what, here: says(here), there: says(there), patch };
} // prettier-ignore
