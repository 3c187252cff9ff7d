/** What a measurer has seen so far, so that it can be put away and gone on from: typed arrays and plain values alone. */
import { Fault } from '../base/fault.ts';
import type { ActivityState } from './activity.ts';
import type { BandState } from './bands.ts';
import type { BlemishState } from './blemishes.ts';
import type { ColourState } from './colour/meter.ts';
import type { MotionState } from './motion.ts';
import type { NoiseState } from './noise.ts';
import type { OrderState } from './order.ts';
import type { ReachState } from './reach.ts';

/** To be raised when what is measured of a frame changes its meaning under the same name. */
export const STATE_FORM = 1;

export interface MeasurerState {
  readonly form: number;
  readonly frameCount: number;
  /** Frames that were there. */
  readonly looked: number;
  readonly missing: readonly number[];
  readonly repeated: readonly number[];
  readonly sampleBefore: Uint16Array;
  readonly clippedMost: Float32Array;
  readonly crushedSum: Float64Array;
  /** Rows kept of every frame, and what stands in `kept`, in words. */
  readonly rows: Readonly<
    Record<'light' | 'gradient' | 'laplacian' | 'activity' | 'brightest' | 'windows' | 'kept', Float32Array>
  >;
  readonly keptNames: string;
  /** By meter, as each gives it. */
  readonly meters: {
    readonly activity: ActivityState;
    readonly motion: MotionState;
    readonly noise: NoiseState;
    readonly blemishes: BlemishState;
    readonly bands: BandState;
    readonly order: OrderState;
    readonly reach: ReachState;
    /** Where colour is sampled. */
    readonly colour?: ColourState;
  };
}

const kindOf = (value: unknown): string => Object.prototype.toString.call(value);
const SAME = ['form', 'keptNames'];

/** Where a state differs in its form from that of a measurer that has seen nothing; lists of that are empty where they grow. */
function misfit(saved: unknown, fresh: unknown, path: string): string | undefined {
  const name = path.slice(path.lastIndexOf('.') + 1);
  if (kindOf(saved) !== kindOf(fresh) || (SAME.includes(name) && saved !== fresh)) return path;
  if (typeof fresh !== 'object' || fresh === null) return undefined;
  const [of, like] = [saved as Record<string, unknown>, fresh as Record<string, unknown>];
  if ('length' in like) {
    if (like['length'] === 0 || ArrayBuffer.isView(like)) return like['length'] === 0 || of['length'] === like['length'] ? undefined : path; // prettier-ignore
  }
  if (Object.keys(of).length !== Object.keys(like).length) return path;
  return Object.keys(like)
    .map((key) => misfit(of[key], like[key], `${path}.${key}`))
    .find((found) => found !== undefined);
}

/** Throws Fault `measure.other-state` for a state of another program, or of frames of another size or coding. */
export function requireState(saved: MeasurerState, fresh: MeasurerState): void {
  const where = misfit(saved, fresh, 'state');
  if (where !== undefined) throw new Fault({ code: 'measure.other-state', what: 'What was measured so far is of another form, and cannot be gone on from', where, mend: 'Measure it anew.' }); // prettier-ignore
}
