/**
 * Lamps that burn a gas: arcs and tubes, which follow the mains almost at once unless a phosphor or a ballast holds them.
 *
 *     magnetic ballast       a + (1 − a)·|sin πx|^p, alternate halves 1 ± u
 *     square-wave ballast    1 − D·e^(−x/w) after each change of direction, twice a cycle of the square
 *     tube, magnetic         |sin πx| through a phosphor of lag τ
 *     tube, electronic       1 + m·cos 2πx at twice the mains
 *
 * x phase, share of the ripple's period      a light left at its dimmest      u how unlike the two electrodes are
 * D depth of the notch      w time it takes to fill, as a share of the ripple's period
 *
 * An arc also wanders at 1 to 10 Hz without a period, which no shutter cures and nothing here predicts. A tube's colours
 * lag differently, so its colour flickers too: give each colour's lag in turn. The 40 kHz and more that an electronic
 * ballast runs a tube at is left out; exposures below 50 µs need a measurement.
 *
 * @source flicker-practice shapes and depths
 * @source fluorescent-depth a depth of 0.2 to 0.4 for tubes on magnetic ballasts
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { sineWaveform, waveformOfLight, waveformOfSum, type Waveform } from './waveform.ts';

/** An arc on a magnetic ballast. Throws RangeError for shares beyond 0 to 1 or a power that is not positive. */
export function magneticWaveform(lamp: {
  readonly mains_Hz: number;
  readonly floorFraction: number;
  readonly shapeExponent: number;
  readonly imbalanceFraction: number;
}): Waveform {
  const { mains_Hz, floorFraction, shapeExponent, imbalanceFraction } = lamp;
  requirePositive({ mains_Hz, shapeExponent });
  requireWithin(0, 1, { floorFraction, imbalanceFraction });
  const pulse = (x: number) => (1 - floorFraction) * Math.abs(Math.sin(Math.PI * x)) ** shapeExponent;
  if (imbalanceFraction === 0)
    return waveformOfLight({ period_s: 1 / (2 * mains_Hz), lightAt: (x) => floorFraction + pulse(x) });
  return waveformOfLight({
    period_s: 1 / mains_Hz,
    lightAt: (x) => floorFraction + pulse(2 * x) * (x < 0.5 ? 1 + imbalanceFraction : 1 - imbalanceFraction),
  });
}

/** An arc on a square-wave ballast: a notch at each change of direction. Throws RangeError outside its domain. */
export function squareWaveform(lamp: {
  readonly square_Hz: number;
  readonly notchFraction: number;
  readonly recovery_s: number;
}): Waveform {
  const { square_Hz, notchFraction, recovery_s } = lamp;
  requirePositive({ square_Hz, recovery_s });
  requireWithin(0, 1, { notchFraction });
  const period_s = 1 / (2 * square_Hz);
  const width = recovery_s / period_s;
  return waveformOfSum({ period_s, sumTo: (x) => x + notchFraction * width * Math.expm1(-x / width) });
}

/** A tube on a magnetic ballast, behind one colour's phosphor. Throws RangeError for a lag below 0. */
export function fluorescentWaveform(lamp: { readonly mains_Hz: number; readonly phosphorLag_s: number }): Waveform {
  const { mains_Hz, phosphorLag_s } = lamp;
  requirePositive({ mains_Hz });
  requireNotNegative({ phosphorLag_s });
  const period_s = 1 / (2 * mains_Hz);
  const lag = phosphorLag_s / period_s;
  const turn = Math.PI * lag;
  const scale = 1 / (1 + turn ** 2);
  // What is left of the last half-wave when the next begins, so that the light repeats.
  const left = lag === 0 ? 0 : (-2 * turn * scale) / Math.expm1(-1 / lag);
  return waveformOfLight({
    period_s,
    lightAt: (x) =>
      scale * (Math.sin(Math.PI * x) - turn * Math.cos(Math.PI * x)) + (left === 0 ? 0 : left * Math.exp(-x / lag)),
  });
}

/** A tube on an electronic ballast, as deep as its supply lets the mains through. Throws RangeError beyond 0 to 1. */
export function electronicTubeWaveform(lamp: { readonly mains_Hz: number; readonly depthFraction: number }): Waveform {
  return sineWaveform({ ripple_Hz: 2 * lamp.mains_Hz, depthFraction: lamp.depthFraction });
}
