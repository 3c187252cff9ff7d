/**
 * A lamp described in a few words, and the light it gives over a period. What the description leaves out is assumed, and
 * can be asked for with its reason and source.
 */
import { assertNever } from '../../base/domain.ts';
import { magneticWaveform, squareWaveform, fluorescentWaveform, electronicTubeWaveform } from './discharge.ts';
import { FILM_LAMP_K, tungstenWaveform } from './filament.ts';
import { interleavedWaveform, ledRippleWaveform, pulseWaveform } from './led.ts';
import { steadyWaveform, type Waveform } from './waveform.ts';

export type LampFlicker =
  | { readonly kind: 'steady' }
  | {
      readonly kind: 'tungsten';
      readonly power_W: number;
      readonly mains_Hz: number;
      readonly supply_V?: number;
      readonly colour_K?: number;
    }
  | {
      readonly kind: 'magnetic';
      readonly mains_Hz: number;
      readonly floorFraction?: number;
      readonly shapeExponent?: number;
      readonly imbalanceFraction?: number;
    }
  | {
      readonly kind: 'square';
      readonly square_Hz?: number;
      readonly notchFraction?: number;
      readonly recovery_s?: number;
    }
  | { readonly kind: 'fluorescent'; readonly mains_Hz: number; readonly phosphorLag_s?: number }
  | { readonly kind: 'electronic-tube'; readonly mains_Hz: number; readonly depthFraction?: number }
  | { readonly kind: 'led-steady'; readonly mains_Hz: number; readonly depthFraction?: number }
  | {
      readonly kind: 'led-ripple';
      readonly mains_Hz: number;
      readonly depthFraction?: number;
      readonly shape?: 'sine' | 'rectified';
    }
  | {
      readonly kind: 'led-pulses';
      readonly pulse_Hz: number;
      readonly dutyFraction?: number;
      readonly lowFraction?: number;
    }
  | {
      readonly kind: 'led-interleaved';
      readonly pulse_Hz: number;
      readonly channelCount: number;
      readonly dutyFraction?: number;
      readonly lowFraction?: number;
    }
  | { readonly kind: 'measured'; readonly waveform: Waveform; readonly isMainsLocked: boolean };

export type FlickerKind = LampFlicker['kind'];

/** A figure that stands in for one not given. */
export interface AssumedFigure {
  readonly value: number | string;
  readonly note: string;
  /** Key of docs/sources.yaml. */
  readonly source: string;
}

function practice<const Value extends number | string>(value: Value, note: string) {
  return { value, note, source: 'flicker-practice' } as const;
}

/** What each kind of lamp is taken to be where its description does not say; a cautious guess, not a typical one. */
export const FLICKER_DEFAULTS = {
  steady: {},
  tungsten: {
    supply_V: practice(230, 'a lamp for 230 V ripples more than one for 120 V'),
    colour_K: practice(FILM_LAMP_K, 'a film lamp at full voltage'),
  },
  magnetic: {
    floorFraction: practice(0.2, 'light left at the dimmest, 0.1 to 0.4'),
    shapeExponent: practice(1, 'light in step with the size of the current'),
    imbalanceFraction: practice(0, 'both electrodes alike; an old lamp’s differ and add the mains rate itself'),
  },
  square: {
    square_Hz: practice(75, 'the slowest square in use, so that the notch is recorded whole'),
    notchFraction: practice(0.1, 'the deepest of 0.02 to 0.10'),
    recovery_s: practice(1.5e-4, 'between 50 and 300 µs'),
  },
  fluorescent: {
    phosphorLag_s: {
      value: 0.003,
      note: 'gives the depth of 0.2 to 0.4 that is quoted',
      source: 'fluorescent-depth',
    },
  },
  'electronic-tube': {
    depthFraction: { value: 0.15, note: 'the deepest of 0.02 to 0.15', source: 'fluorescent-depth' },
  },
  'led-steady': { depthFraction: practice(0.01, 'below 1 % for a driver of constant current') },
  'led-ripple': {
    depthFraction: practice(1, 'anything from 0.05 to 1: the worst until it is measured'),
    shape: practice('sine', 'a driver with a small reservoir'),
  },
  'led-pulses': {
    dutyFraction: practice(0.5, 'half dimmed'),
    lowFraction: practice(0, 'dark between pulses'),
  },
  'led-interleaved': {
    dutyFraction: practice(0.5, 'half dimmed'),
    lowFraction: practice(0, 'dark between pulses'),
  },
  measured: {},
} as const satisfies Record<FlickerKind, Readonly<Record<string, AssumedFigure>>>;

/** The figures that a description leaves to be assumed, by name. */
export function assumedOf(lamp: LampFlicker): Readonly<Record<string, AssumedFigure>> {
  const defaults: Readonly<Record<string, AssumedFigure>> = FLICKER_DEFAULTS[lamp.kind];
  const given: Readonly<Record<string, unknown>> = { ...lamp };
  return Object.fromEntries(Object.entries(defaults).filter(([name]) => given[name] === undefined));
}

/** The light of a lamp over one period. Throws RangeError, by name, for figures no lamp has. */
export function waveformOf(lamp: LampFlicker): Waveform {
  switch (lamp.kind) {
    case 'steady':
      return steadyWaveform();
    case 'tungsten': {
      const { supply_V, colour_K } = FLICKER_DEFAULTS.tungsten;
      return tungstenWaveform({ supply_V: supply_V.value, colour_K: colour_K.value, ...lamp });
    }
    case 'magnetic': {
      const { floorFraction, shapeExponent, imbalanceFraction } = FLICKER_DEFAULTS.magnetic;
      return magneticWaveform({
        floorFraction: floorFraction.value,
        shapeExponent: shapeExponent.value,
        imbalanceFraction: imbalanceFraction.value,
        ...lamp,
      });
    }
    case 'square': {
      const { square_Hz, notchFraction, recovery_s } = FLICKER_DEFAULTS.square;
      return squareWaveform({
        square_Hz: square_Hz.value,
        notchFraction: notchFraction.value,
        recovery_s: recovery_s.value,
        ...lamp,
      });
    }
    case 'fluorescent':
      return fluorescentWaveform({ phosphorLag_s: FLICKER_DEFAULTS.fluorescent.phosphorLag_s.value, ...lamp });
    case 'electronic-tube':
      return electronicTubeWaveform({ depthFraction: FLICKER_DEFAULTS[lamp.kind].depthFraction.value, ...lamp });
    case 'led-steady':
      return ledRippleWaveform({
        depthFraction: FLICKER_DEFAULTS[lamp.kind].depthFraction.value,
        shape: 'sine',
        ...lamp,
      });
    case 'led-ripple': {
      const { depthFraction, shape } = FLICKER_DEFAULTS[lamp.kind];
      return ledRippleWaveform({ depthFraction: depthFraction.value, shape: shape.value, ...lamp });
    }
    case 'led-pulses':
      return pulseWaveform({ dutyFraction: FLICKER_DEFAULTS[lamp.kind].dutyFraction.value, ...lamp });
    case 'led-interleaved':
      return interleavedWaveform({ dutyFraction: FLICKER_DEFAULTS[lamp.kind].dutyFraction.value, ...lamp });
    case 'measured':
      return lamp.waveform;
    default:
      return assertNever(lamp);
  }
}

/** Whether a lamp's ripple keeps step with the mains, and so with other lamps on it; others run at a rate of their own. */
export function isMainsLocked(lamp: LampFlicker): boolean {
  switch (lamp.kind) {
    case 'square':
    case 'led-pulses':
    case 'led-interleaved':
      return false;
    case 'measured':
      return lamp.isMainsLocked;
    default:
      return true;
  }
}
