/** Lists of angles of a photometric file: read, held to ascend, and brought to the planes that symmetry asks for. */
import type { Notice, Symmetry } from './photometry.ts';
import { refuse } from './refusal.ts';
import type { Numbers } from './words.ts';

/** Reads angles that must ascend within bounds. */
export function readAngles(
  numbers: Numbers,
  {
    what,
    count,
    least,
    most,
  }: { readonly what: string; readonly count: number; readonly least: number; readonly most: number },
): Float64Array {
  const angles = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const angle = numbers.number(`${what} ${i + 1} of ${count}`);
    const before = angles[i - 1];
    if (angle < least || angle > most)
      refuse({
        code: 'photometry.angle-out-of-range',
        what: `${what} ${i + 1} is ${angle}°, outside ${least}° to ${most}°`,
        line: numbers.line(),
        mend: 'Check that no value before it is missing or written twice.',
      });
    if (before !== undefined && angle <= before)
      refuse({
        code: 'photometry.angles-not-ascending',
        what: `${what} ${i + 1} is ${angle}°, not above the ${before}° before it`,
        line: numbers.line(),
        mend: 'Check that no value before it is missing or written twice; angles must ascend.',
      });
    angles[i] = angle;
  }
  return angles;
}

/** Holds γ to begin at 0 or 90 and tells where it ends elsewhere than at 90 or 180. */
export function gammaNotices(gammas_deg: Float64Array, line: number): readonly Notice[] {
  const [first_deg, last_deg] = [gammas_deg[0]!, gammas_deg.at(-1)!];
  if (first_deg !== 0 && first_deg !== 90)
    refuse({
      code: 'photometry.axis-missing',
      what: `Vertical angles begin at ${first_deg}°, so the light nearer the axis is not known`,
      line,
      mend: 'Ask for a file whose vertical angles begin at 0°, or at 90° for light that only goes up.',
    });
  if (last_deg === 90 || last_deg === 180) return [];
  return [
    {
      code: 'photometry.gamma-ends-early',
      what: `Vertical angles end at ${last_deg}°; beyond it the lamp is taken as dark.`,
      line,
    },
  ];
}

export interface Planes {
  readonly symmetry: Symmetry;
  readonly planes_deg: Float64Array;
  readonly intensities_cd: Float64Array;
  readonly notices: readonly Notice[];
}

interface Given {
  readonly planes_deg: Float64Array;
  readonly intensities_cd: Float64Array;
  /** Line of the last angle. */
  readonly line: number;
}

/** A 360° plane that differs from the 0° plane by more than this share of the peak is told of. */
const SEAM_SHARE = 0.01;

/** Makes the last of a full turn's planes the same as the first. */
function closed({ planes_deg, intensities_cd, line }: Given): Planes {
  const count = intensities_cd.length / planes_deg.length;
  const first = intensities_cd.subarray(0, count);
  const last = intensities_cd.subarray(intensities_cd.length - count);
  const peak_cd = intensities_cd.reduce((most, value) => Math.max(most, value), 0);
  const differs = first.some((value, i) => Math.abs(value - last[i]!) > SEAM_SHARE * peak_cd);
  const joined = intensities_cd.slice();
  joined.set(first, intensities_cd.length - count);
  return {
    symmetry: 'none',
    planes_deg,
    intensities_cd: joined,
    notices: differs
      ? [
          {
            code: 'photometry.seam',
            what: 'The plane at 360° is the plane at 0°, yet gives other values; those at 0° were kept.',
            line,
          },
        ]
      : [],
  };
}

function refuseRange(planes_deg: Float64Array, line: number): never {
  return refuse({
    code: 'photometry.plane-range',
    what: `Planes run from ${planes_deg[0]!}° to ${planes_deg.at(-1)!}°, which says of no symmetry how the rest follows`,
    line,
    mend: 'They must run 0–90, 0–180, 90–270 or 0–360, or be 0 alone. Ask for a file with the whole turn.',
  });
}

/** The widest step between planes, with room for rounding. */
const widestStep_deg = (planes_deg: Float64Array): number =>
  1.001 * planes_deg.reduce((most, angle, i) => (i === 0 ? most : Math.max(most, angle - planes_deg[i - 1]!)), 0);

/**
 * Planes of a whole turn with the one at 360° added where it is left out. Refuses planes that leave a wider gap before 360°
 * than any between them.
 */
export function closeTurn({ planes_deg, intensities_cd, line }: Given): Planes {
  const last_deg = planes_deg.at(-1)!;
  if (last_deg === 360) return closed({ planes_deg, intensities_cd, line });
  if (360 - last_deg > widestStep_deg(planes_deg)) refuseRange(planes_deg, line);
  const count = intensities_cd.length / planes_deg.length;
  const whole = new Float64Array(intensities_cd.length + count);
  whole.set(intensities_cd);
  whole.set(intensities_cd.subarray(0, count), intensities_cd.length);
  const turn_deg = new Float64Array(planes_deg.length + 1);
  turn_deg.set(planes_deg);
  turn_deg[planes_deg.length] = 360;
  return { symmetry: 'none', planes_deg: turn_deg, intensities_cd: whole, notices: [] };
}

/**
 * The symmetry that a list of horizontal angles stands for, with the grid closed: 0; 0–90; 0–180; 90–270; 0–360, or a
 * full turn that leaves out 360. Any other range is refused.
 */
export function planesByRange(given: Given): Planes {
  const { planes_deg, intensities_cd, line } = given;
  const [first_deg, last_deg] = [planes_deg[0]!, planes_deg.at(-1)!];
  if (planes_deg.length === 1)
    return {
      symmetry: 'rotational',
      planes_deg: Float64Array.of(0),
      intensities_cd,
      notices:
        first_deg === 0
          ? []
          : [
              {
                code: 'photometry.one-plane',
                what: `The only plane stands at ${first_deg}°; it was taken as the same all round.`,
                line,
              },
            ],
    };
  if (first_deg === 0 && last_deg === 90) return { symmetry: 'quadrants', planes_deg, intensities_cd, notices: [] };
  if (first_deg === 0 && last_deg === 180) return { symmetry: 'about-c0', planes_deg, intensities_cd, notices: [] };
  if (first_deg === 90 && last_deg === 270) return { symmetry: 'about-c90', planes_deg, intensities_cd, notices: [] };
  if (first_deg === 0 && last_deg === 360) return closed(given);
  if (first_deg !== 0 || last_deg <= 180) refuseRange(planes_deg, line);
  const turn = closeTurn(given);
  const told = {
    code: 'photometry.turn-not-closed',
    what: `Planes end at ${last_deg}°; 360° was taken from 0°.`,
    line,
  };
  return { ...turn, notices: [...turn.notices, told] };
}
