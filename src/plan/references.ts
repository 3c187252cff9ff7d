/** Reference rolls: which are owed before each shot, and which are due again because a setting changed since. */
import { sayList } from '../base/sayList.ts';
import type { Shoot } from '../document/schema.ts';
import { withDefaults } from './givens.ts';
import type { ReferenceDue, Settings, ShotPlan } from './types.ts';

/** What a camera does with its shutter closed or its lens capped, so that its own pattern can be taken off. */
export const DARK_REFERENCE = 'Dark reference';

/** What a roll was made with. */
interface Circumstances extends Pick<Settings, 'camera' | 'mode' | 'lens'> {
  readonly rate: number;
  readonly shutter: number;
  readonly index: number;
  readonly stop: number;
  readonly lighting: string | undefined;
}

type Circumstance = keyof Circumstances;

const WORDS: Readonly<Record<Circumstance, string>> = {
  camera: 'camera',
  mode: 'mode',
  lens: 'lens',
  rate: 'frame rate',
  shutter: 'shutter',
  index: 'exposure index',
  stop: 'stop',
  lighting: 'light',
};

/** A card or an empty set is read again when what it is seen with or lit by changes. */
const CARD_AGAIN: readonly Circumstance[] = ['camera', 'mode', 'lens', 'rate', 'shutter', 'index', 'stop', 'lighting'];

const isOther = (a: string | number | undefined, b: string | number | undefined): boolean =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) > 1e-6 * Math.abs(a) : a !== b;

interface Rolled {
  readonly title: string;
  readonly with: Circumstances;
}

/**
 * The reference rolls of a shoot, in the order its shots are read: those a shot asks for, unless the shot before was
 * rolled with the very same settings; and the dark reference of each body, first and after every change that its camera
 * says it is due again for. A shot without settings yet owes what it asks for.
 */
export function referencesOf(shoot: Shoot, shots: readonly ShotPlan[]): readonly ReferenceDue[] {
  const rolled = new Map<string, Rolled>();
  const due: ReferenceDue[] = [];
  for (const { id, title, settings } of shots) {
    const { shot } = withDefaults(shoot, id);
    if (!settings) {
      due.push(...shot.references.map((what) => ({ shotId: id, what, because: 'asked for by this shot' })));
      continue;
    }
    const now: Circumstances = {
      camera: settings.camera,
      mode: settings.mode,
      lens: settings.lens,
      rate: settings.captureRate_fps,
      shutter: settings.exposureTime_s,
      index: settings.isoSpeed,
      stop: settings.stop,
      lighting: shot.lighting,
    };
    const roll = (key: string, what: string, again: readonly Circumstance[], first: string) => {
      const before = rolled.get(key);
      const changed = before ? again.filter((name) => isOther(before.with[name], now[name])) : [];
      if (before && changed.length === 0) return;
      const because = before ? `${sayList(changed.map((name) => WORDS[name]))} changed since ${before.title}` : first;
      due.push({ shotId: id, what, because });
      rolled.set(key, { title, with: now });
    };
    const body = shoot.kit.cameras[settings.camera];
    const again = body?.darkReference ?? [];
    // A format belongs to its body: the same name on another body is another roll.
    if (again.length > 0) roll(`dark ${settings.camera}`, DARK_REFERENCE, again, `first roll of ${body?.title ?? settings.camera}`);
    for (const what of shot.references) roll(`card ${what}`, what, CARD_AGAIN, 'asked for by this shot');
  }
  return due;
} // prettier-ignore
