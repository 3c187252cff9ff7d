/** What a plan is: for each shot the settings, every limit with its spare or shortfall, and how each number came about. */
import type { KindName } from '../base/kinds.ts';
import type { Rational } from '../base/rational.ts';
import type { Operation } from '../document/patch.ts';
import type { MAY_DIFFER } from '../document/schema.ts';
import type { SeenFlicker } from '../laws/flicker/seen.ts';
import type { Lamp as HeatKind } from '../laws/heat/irradiance.ts';
import type { ProductKind } from '../laws/heat/products.ts';
import type { FlickerVerdict } from '../laws/flicker/visible.ts';
import type { Assumption, Missing } from './lacks.ts';
import type { ShotTiming } from './timing/types.ts';

export type { Assumption, Missing };

/** Limits judged for one shot, in the order they are read. */
export const LIMITS = [
  'frame-rate',
  'screen-time',
  'shutter',
  'stop-range',
  'index-range',
  'light',
  'highlights',
  'noise',
  'depth',
  'blur',
  'diffraction',
  'picture-size',
  'in-the-picture',
  'coverage',
  'focus',
  'clearance',
  'flicker',
  'buffer',
  'trigger-catch',
  'meeting',
  'hero-life',
  'eye-distance',
  'heroes',
  'storage',
  'day',
] as const;

export type LimitId = (typeof LIMITS)[number];

/**
 * short: less than needed. tight: enough as figured, but not at the low end of its band. spare: enough even there.
 * unknown: an input is missing, and named.
 */
export type MarginState = 'short' | 'tight' | 'spare' | 'unknown';

/** A figure with its band: low to high holds eight cases in ten (P10 to P90). */
export interface Figure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface Margin {
  readonly id: LimitId;
  readonly title: string;
  /** Which of several it was judged for: the name of a deliverable, of a part. */
  readonly detail?: string;
  /** Law, safety or physics; otherwise a matter of taste. */
  readonly isHard: boolean;
  readonly state: MarginState;
  /** The kind both figures are of. */
  readonly kind: KindName;
  /** `at-least`: read "have for need". `at-most`: read "have of need", need being the ceiling. */
  readonly sense: 'at-least' | 'at-most';
  readonly have?: number;
  readonly need?: number;
  /** What is left over, in the kind's own unit; negative when short. */
  readonly spare?: number;
  /** The common measure: log2 of what there is over what there must be. */
  readonly stops?: Figure;
  /** JSON Pointer of what asks for it. */
  readonly path: string;
  /** Names of the two figures, for `explain`. */
  readonly haveName: string;
  readonly needName: string;
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
}

/** One setting of an answer. */
export interface Settings {
  readonly camera: string;
  readonly mode: string;
  readonly lens: string;
  readonly captureRate_fps: number;
  readonly exposureTime_s: number;
  readonly shutterAngle_deg: number;
  readonly stop: number;
  readonly isoSpeed: number;
  readonly widthCount: number;
  readonly heightCount: number;
  readonly focalLength_mm: number;
  readonly magnificationRatio: number;
  readonly sensorToSubject_m: number;
  readonly workingDistance_m: number;
}

export type SettingName = keyof Settings;

/** Why a setting is what it is, in half a sentence; `isFixed` when the person fixed it. */
export interface Reason {
  readonly says: string;
  readonly isFixed: boolean;
}

export interface Alternative {
  readonly settings: Settings;
  readonly margins: readonly Margin[];
  /** What differs from the answer, in words. */
  readonly differs: string;
  /** Written values that fix this alternative, as a JSON Patch. */
  readonly patch: readonly PatchOperation[];
}

/** One operation of a JSON Patch (RFC 6902) on the written shoot. */
export type PatchOperation = Operation;

/** The shot on its two clocks. */
export interface Clocks {
  /** Real time of the action alone, without handles. */
  readonly actionTime_s: number;
  readonly handles_s: number;
  readonly screenTime_s: number;
  /** Screen time against real time, from start to end: straight for one speed, bent for a profile. */
  readonly samples: readonly { readonly screenTime_s: number; readonly realTime_s: number }[];
  readonly playRate: Rational;
  readonly slowestFraction: number;
  readonly fastestFraction: number;
  /** How long the memory holds at these settings. */
  readonly recordTime_s?: number;
}

/** What one deliverable shows of the recorded picture, about its middle. */
export interface Crop {
  readonly deliverable: string;
  readonly title: string;
  readonly width_m: number;
  readonly height_m: number;
  /** Share of the crop that is sure to be seen. */
  readonly safeFraction?: number;
}

/** The recorded picture as the scene it shows, at the distance of the subject. */
export interface Picture {
  readonly fieldWidth_m: number;
  readonly fieldHeight_m: number;
  /** Width of the scene in one pixel of the first deliverable, in which blur is asked for. */
  readonly deliveredPixel_m?: number;
  /** Share of the crops' width and height held back for repositioning, outside them. */
  readonly reframeFraction: number;
  readonly crops: readonly Crop[];
  /** How far the action reaches, where somebody said. */
  readonly reachWidth_m?: number;
  readonly reachHeight_m?: number;
  readonly reachTowardsLens_m?: number;
  /** How far it is sharp before and behind the subject; a far side that is missing beside a near one has no end. */
  readonly sharpNear_m?: number;
  readonly sharpFar_m?: number;
  /** Distance wanted from the front of the lens to the subject. */
  readonly clearanceWanted_m?: number;
}

/** A plate or an element held against the shot that it must match. */
export interface Match {
  readonly shotId: string;
  readonly matchesId: string;
  readonly differences: readonly MatchDifference[];
}

export interface MatchDifference {
  readonly what: keyof typeof MAY_DIFFER;
  /** The two values in words: this shot's, and the other's. */
  readonly here: string;
  readonly there: string;
  /** Written values that make this shot the same, as a JSON Patch; empty where a setting alone cannot. */
  readonly patch: readonly PatchOperation[];
}

/** A reference roll owed before a shot's first take, and why. */
export interface ReferenceDue {
  readonly shotId: string;
  readonly what: string;
  readonly because: string;
}

/** What one lamp of the set-up gives the subject, on a surface that faces the camera. */
export interface LampGiven {
  readonly id: string;
  readonly title: string;
  readonly illuminance_lx: number;
  /** Of what all lamps give. */
  readonly shareFraction: number;
  readonly distance_m: number;
}

/** How one burning lamp of the set-up comes up and stays; what its kit does not say is left out. */
export interface LampTimes {
  readonly id: string;
  readonly title: string;
  /** From lit to steady light. */
  readonly warmUp_s?: number;
  /** From put out to when it can be lit again. */
  readonly restrike_s?: number;
  /** How far its light still changes in an hour once it is steady. */
  readonly drift_stops?: number;
}

/** How long the product lasts under the light, where that is worked out and not written: the shortest credible time. */
export interface HeroLife {
  /** What it warms and melts like. */
  readonly warms: ProductKind;
  /** The shortest is the value and the low end; what is as credible reaches up to the high end. */
  readonly life: Figure;
  /** Of one take, where it is written. */
  readonly lightOn_s?: number;
  /** Light on its warmest side by kind of lamp, the heat in it, and what it takes up of that. */
  readonly heat: readonly {
    readonly lamp: HeatKind;
    readonly illuminance_lx: number;
    readonly irradiance_W_per_m2: number;
    readonly absorbed_W_per_m2: number;
  }[];
  /** What the air brings to something colder. */
  readonly airHeat_W_per_m2: number;
  readonly start_degC: number;
  /** From where its change can be seen. */
  readonly changes_degC: number;
  readonly air_degC: number;
  readonly thickness_m: number;
  /** It goes by how long it holds with the lights off, which is shorter. */
  readonly isHeld: boolean;
  readonly assumed: readonly Assumption[];
}

/** One burning lamp of the set-up and how its light ripples. */
export interface FlickerLamp {
  readonly id: string;
  readonly title: string;
  /** Of the light at the subject. */
  readonly shareFraction: number;
  /** What it is taken for, in a few words: "tungsten, 2 kW on 50 Hz". */
  readonly says: string;
  readonly basis: 'measured' | 'stated' | 'assumed';
  readonly assumed: readonly Assumption[];
  readonly ripple_Hz: number;
  /** (Brightest − dimmest) over their sum, of the lamp alone. */
  readonly depthFraction: number;
  /** Why nobody knows how it ripples, where so: nothing measured at this level. */
  readonly unknown?: string;
}

/** What the lamps of the set-up do to the frames of a shot. */
export interface ShotFlicker {
  readonly lamps: readonly FlickerLamp[];
  /** Absent while a lamp that counts is unknown, or the rate or shutter is. */
  readonly seen?: SeenFlicker;
  readonly verdict?: FlickerVerdict;
}

export interface ShotPlan {
  readonly id: string;
  readonly title: string;
  /** Its place in the order, from 1. */
  readonly number: number;
  /** Absent when no camera, mode or lens could be tried; `missing` then says what is lacking. */
  readonly settings?: Settings;
  readonly reasons: Readonly<Partial<Record<SettingName, Reason>>>;
  readonly margins: readonly Margin[];
  readonly alternatives: readonly Alternative[];
  readonly clocks?: Clocks;
  readonly picture?: Picture;
  /** The lamps of its set-up that can be worked out, where some stand in it. */
  readonly lamps: readonly LampGiven[];
  /** Lamps of its set-up that take time to come up, to strike again, or that drift. */
  readonly lampTimes: readonly LampTimes[];
  /** Where its product's time under the light is worked out. */
  readonly heroLife?: HeroLife;
  /** Where lamps stand in its set-up. */
  readonly flicker?: ShotFlicker;
  /** Where cues or a trigger are written, and its rate and length are known. */
  readonly timing?: ShotTiming;
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
  /** Cautions for whoever stands by this shot: keys of the safety page, and the person's own words. */
  readonly cautions: readonly { readonly key: string; readonly says: string }[];
  /** What no limit says and the crew should know, in a sentence each. */
  readonly notes: readonly string[];
  readonly keptSize_B?: number;
  readonly saveTime_s?: number;
  /** Combinations tried to find the answer. */
  readonly triedCount: number;
}

export interface PlanTotals {
  readonly screenTime_s: number;
  readonly takeCount: number;
  readonly keptSize_B: number;
  readonly saveTime_s: number;
  readonly shortCount: number;
  readonly tightCount: number;
  readonly unknownCount: number;
}

export interface Plan {
  readonly title: string;
  readonly shots: readonly ShotPlan[];
  /** Limits of the whole shoot, such as storage. */
  readonly margins: readonly Margin[];
  /** Plates and elements held against the shots they are made for. */
  readonly matches: readonly Match[];
  /** Reference rolls in the order of the shots. */
  readonly references: readonly ReferenceDue[];
  readonly totals: PlanTotals;
}

/** One number of a plan and where it came from, down to what the person wrote. */
export interface Trace {
  readonly name: string;
  readonly title: string;
  readonly value: number | undefined;
  readonly kind: KindName | undefined;
  /** How a bare number is to be read. */
  readonly as?: string;
  readonly origin:
    | { readonly by: 'law'; readonly law: string; readonly title: string; readonly equation: string; readonly sources: readonly string[]; readonly refused?: string }
    | { readonly by: 'choice'; readonly says: string }
    | { readonly by: 'document'; readonly path: string; readonly spread?: number; readonly says?: string }
    | { readonly by: 'assumption'; readonly why: string; readonly path: string; readonly spread?: number };
  readonly inputs: readonly Trace[];
} // prettier-ignore

/** One change that closes a short margin, planned again in full. */
export interface Way {
  /** The move that proposed it. */
  readonly move: string;
  readonly title: string;
  /** What else it does, or what it touches that a person fixed. */
  readonly says: string;
  readonly patch: readonly PatchOperation[];
  /** Spare of the limit afterwards, in stops. */
  readonly stops: number;
  /** How much the limit gains. */
  readonly gain_stops: number;
  readonly closes: boolean;
  /** Hard limits that had enough and would be short for it. */
  readonly breaks: readonly { readonly id: LimitId; readonly title: string }[];
  /** Whether it changes what a person fixed. */
  readonly touchesFixed: boolean;
  /** Stops of what was asked for that it gives up, or of effort it costs. */
  readonly gives_stops: number;
  /** Every margin of the shot as it would be. */
  readonly margins: readonly Margin[];
  /** Limits that move by more than a twentieth of a stop, the target left out, largest first. */
  readonly effects: readonly { readonly id: LimitId; readonly title: string; readonly change_stops: number; readonly state: MarginState }[];
  readonly settings?: Settings;
  /** Lower is cheaper: what other limits lose, weighed by how near they are to short. */
  readonly cost: number;
} // prettier-ignore
