/** What each kind of lamp is taken for: how its light ripples, from the figures that are written or assumed of it. */
import { sayShown, showQuantity } from '../base/quantity.ts';
import type { KindName } from '../base/kinds.ts';
import { dimmedFilamentOf } from '../laws/flicker/dimmed.ts';
import { FILM_LAMP_K, tungstenRipple } from '../laws/flicker/filament.ts';
import { FLICKER_DEFAULTS, type FlickerKind, type LampFlicker } from '../laws/flicker/lamp.ts';
import type { WaveReader } from './flickerFigures.ts';

/** A lamp as it is worked with. */
export interface Made {
  /** In a few words: "tungsten, 2 kW on 50 Hz". */
  readonly says: string;
  readonly lamp: LampFlicker;
  /** At the two ends of what its figures may be, where they are not sure. */
  readonly atBest?: LampFlicker;
  readonly atWorst?: LampFlicker;
  /** A rate that nobody knows: of those near it, an exposure is held against the worst. */
  readonly hasUnknownRate?: boolean;
}

export interface KindGiven extends WaveReader {
  readonly kitId: string;
  readonly mains_Hz: number;
  /** Volts of the supply, where written. */
  readonly supply_V: number | undefined;
  /** Share of its full light, with where that is written. */
  readonly level: { readonly value: number; readonly path: string; readonly title: string };
}

/** Reads the figures of a kind; what is returned is worked out once none is missing. */
type ReadKind = (given: KindGiven) => () => Made;

/**
 * Pulses of diodes that nobody described: at half duty and dark between, they begin to show at about 800 fps, as many of
 * these lamps are said to. @source flicker-practice
 */
const USUAL_PULSES = { value: 75_000, note: 'pulses that begin to show at about 800 fps, as many such lamps do' };

/** Channels that take turns, at least. */
const LEAST_CHANNELS = { value: 2, note: 'the fewest that take turns' };

/**
 * Handbooks print 0.45 to 0.83 of the ripple that a filament's heat balance gives, which leaves out coils and gas: it is
 * taken in the middle, and the balance itself for the worst. @source filament-handbook
 */
const OF_BOUND = { best: 0.45, usual: 0.6 } as const;

const say = (kind: KindName, value: number): string => sayShown(showQuantity(kind, value, { digits: 3 }));
const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`;
const hertz = (value: number): string => say('frequency', value);

/** A cosine at twice the mains, whatever makes it. */
const atTwiceMains = (mains_Hz: number, depthFraction: number): LampFlicker => ({
  kind: 'led-ripple',
  shape: 'sine',
  mains_Hz,
  depthFraction: Math.min(1, depthFraction),
});

const as = ({ value, note }: { readonly value: number; readonly note: string }) => ({ value, note });

/** Share of the most that is left at the least, for a depth. */
const floorOfDepth = (depth: number): number => (1 - depth) / (1 + depth);

/** A lamp whose depth is all that is known of it. */
function ofDepth(name: string, { mains_Hz, wave }: KindGiven): () => Made {
  const depth = wave('depth', 'depthFraction', 'Depth of the ripple');
  return () => ({ says: `${name}, ${percent(depth)} deep on ${hertz(mains_Hz)}`, lamp: atTwiceMains(mains_Hz, depth) });
}

/** Says that a level is taken not to change how a lamp ripples. */
function asDimmed({ level, put, kitId }: KindGiven, why: string): void {
  if (level.value < 1) put({ name: `${kitId}.levelFraction`, title: `Level of ${level.title}`, value: level.value, path: level.path, why }); // prettier-ignore
}

const AS_AT_FULL = 'dimmed it is taken to ripple as it does at full level: measure it';

const tungsten: ReadKind = (given) => {
  const { mains_Hz, supply_V, level, own, wave, has, put, kitId } = given;
  if (has('depth', 'depthFraction')) {
    asDimmed(given, AS_AT_FULL);
    return ofDepth('tungsten', given);
  }
  const power_W = own('power', 'power_W', 'Power');
  const usual_V = supply_V === undefined ? as(FLICKER_DEFAULTS.tungsten.supply_V) : { value: supply_V, note: 'made for the mains it burns on' }; // prettier-ignore
  const lamp_V = wave('supply', 'lampSupply_V', 'Voltage of the filament', usual_V);
  const colour_K = own('colour', 'colourTemperature_K', 'Colour', { value: FILM_LAMP_K, note: 'a film lamp at full voltage' }); // prettier-ignore
  asDimmed(given, 'a dimmer that cuts each half-wave, and a filament cooler by it');
  put({ name: `${kitId}.boundFraction`, title: 'Share of the ripple that the heat balance gives a filament', value: OF_BOUND.usual, path: `/kit/lamps/${kitId}/waveform/depth`, why: 'handbooks print 0.45 to 0.83 of it; its whole is the cautious end of the band' }); // prettier-ignore
  return () => {
    const { colourRatio, rippleRatio } = dimmedFilamentOf({ lightFraction: level.value });
    const { depthFraction } = tungstenRipple({ power_W, mains_Hz, supply_V: lamp_V, colour_K: colour_K * colourRatio });
    const at = (share: number) => atTwiceMains(mains_Hz, share * rippleRatio * depthFraction);
    const dimmed = level.value < 1 ? `, dimmed to ${percent(level.value)}` : '';
    return {
      says: `tungsten, ${say('power', power_W)} on ${hertz(mains_Hz)}${dimmed}`,
      lamp: at(OF_BOUND.usual),
      atBest: at(OF_BOUND.best),
      atWorst: at(1),
    };
  };
};

const magnetic: ReadKind = (given) => {
  const { mains_Hz, wave, has } = given;
  const { floorFraction, shapeExponent, imbalanceFraction } = FLICKER_DEFAULTS.magnetic;
  const hasDepth = has('depth', 'depthFraction');
  const floor = hasDepth
    ? floorOfDepth(wave('depth', 'depthFraction', 'Depth of the ripple'))
    : wave('floor', 'floorFraction', 'Least light over most', as(floorFraction));
  const exponent = wave('exponent', 'shapeFactor', 'Peak of the half cycles', as(shapeExponent));
  const imbalance = wave('imbalance', 'imbalanceFraction', 'Difference of the half cycles', as(imbalanceFraction));
  asDimmed(given, AS_AT_FULL);
  return () => ({
    says: `arc on a magnetic ballast, ${hertz(mains_Hz)}`,
    lamp: { kind: 'magnetic', mains_Hz, floorFraction: floor, shapeExponent: exponent, imbalanceFraction: imbalance },
  });
};

const square: ReadKind = (given) => {
  const { wave, has } = given;
  const usual = FLICKER_DEFAULTS.square;
  const square_Hz = wave('rate', 'ownRate_Hz', 'Square wave of the ballast', as(usual.square_Hz));
  const depth = has('depth', 'depthFraction') ? wave('depth', 'depthFraction', 'Depth of the ripple') : undefined;
  const notchFraction =
    depth === undefined
      ? wave('notch', 'notchFraction', 'Drop at each change of sign', as(usual.notchFraction))
      : (2 * depth) / (1 + depth);
  const recovery_s = wave('recovery', 'recovery_s', 'Recovery from that', as(usual.recovery_s));
  asDimmed(given, AS_AT_FULL);
  return () => ({
    says: `arc on a square-wave ballast, ${hertz(square_Hz)}`,
    lamp: { kind: 'square', square_Hz, notchFraction, recovery_s },
  });
};

const fluorescent: ReadKind = (given) => {
  const { mains_Hz, wave, has } = given;
  asDimmed(given, AS_AT_FULL);
  if (has('depth', 'depthFraction')) return ofDepth('tube on a magnetic ballast', given);
  const phosphorLag_s = wave('lag', 'phosphorLag_s', 'Glow of the phosphor', as(FLICKER_DEFAULTS.fluorescent.phosphorLag_s)); // prettier-ignore
  return () => ({
    says: `tube on a magnetic ballast, ${hertz(mains_Hz)}`,
    lamp: { kind: 'fluorescent', mains_Hz, phosphorLag_s },
  });
};

/** A lamp that lets the mains through by a depth. */
const mainsDepth =
  (kind: 'electronic-tube' | 'led-steady', name: string): ReadKind =>
  (given) => {
    const { mains_Hz, wave } = given;
    const depthFraction = wave('depth', 'depthFraction', 'Depth of the ripple', as(FLICKER_DEFAULTS[kind].depthFraction));
    asDimmed(given, AS_AT_FULL);
    return () => ({
      says: `${name}, ${percent(depthFraction)} deep on ${hertz(mains_Hz)}`,
      lamp: { kind, mains_Hz, depthFraction },
    });
  }; // prettier-ignore

const ledRipple =
  (shape: 'sine' | 'rectified'): ReadKind =>
  (given) => {
    const { mains_Hz, wave } = given;
    const depthFraction = wave('depth', 'depthFraction', 'Depth of the ripple', as(FLICKER_DEFAULTS['led-ripple'].depthFraction)); // prettier-ignore
    asDimmed(given, AS_AT_FULL);
    return () => ({
      says: `diodes that let the mains through, ${percent(depthFraction)} deep on ${hertz(mains_Hz)}`,
      lamp: { kind: 'led-ripple', mains_Hz, depthFraction, shape },
    });
  };

/** Least duty that pulses are worked with. */
const LEAST_DUTY = 0.001;

const pulses =
  (isInterleaved: boolean): ReadKind =>
  (given) => {
    const { wave, has, level } = given;
    const usual = FLICKER_DEFAULTS['led-pulses'];
    const hasUnknownRate = !has('rate', 'ownRate_Hz');
    const pulse_Hz = wave('rate', 'ownRate_Hz', 'Pulses', USUAL_PULSES);
    const channelCount = isInterleaved ? wave('channels', 'channelCount', 'Channels that take turns', LEAST_CHANNELS) : 1;
    const isStated = has('duty', 'dutyFraction');
    const dimmed = { value: level.value, note: 'dimmed by shorter pulses, to its level' };
    const duty = wave('duty', 'dutyFraction', 'Share of each pulse that is lit', level.value < 1 ? dimmed : as(usual.dutyFraction));
    if (isStated) asDimmed(given, 'dimmed by pulses shorter than the duty written for full level');
    const lowFraction = has('depth', 'depthFraction')
      ? floorOfDepth(wave('depth', 'depthFraction', 'Depth of the ripple'))
      : wave('low', 'lowFraction', 'Light between pulses', as(usual.lowFraction));
    return () => {
      const dutyFraction = Math.max(LEAST_DUTY, isStated ? duty * level.value : duty);
      const train = { pulse_Hz, dutyFraction, lowFraction };
      return {
        says: `${isInterleaved ? `${channelCount} channels pulsed in turn` : 'diodes pulsed'} at ${hertz(pulse_Hz)}, ${percent(dutyFraction)} lit`,
        lamp: isInterleaved ? { kind: 'led-interleaved', channelCount, ...train } : { kind: 'led-pulses', ...train },
        hasUnknownRate,
      };
    };
  }; // prettier-ignore

export type WaveKind = Exclude<FlickerKind, 'measured'>;

export const READ_KINDS: Readonly<Record<WaveKind, ReadKind>> = {
  steady: () => () => ({ says: 'steady light', lamp: { kind: 'steady' } }),
  tungsten,
  magnetic,
  square,
  fluorescent,
  'electronic-tube': mainsDepth('electronic-tube', 'tube on an electronic ballast'),
  'led-steady': mainsDepth('led-steady', 'diodes on a steady current'),
  'led-ripple': ledRipple('sine'),
  'led-pulses': pulses(false),
  'led-interleaved': pulses(true),
};

/** A rectified ripple in place of a sine. */
export const rectifiedRipple: ReadKind = ledRipple('rectified');
