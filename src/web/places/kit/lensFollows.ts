/** What follows from the figures of a lens on a camera, by the laws; what lacks a figure is left out. */
import type { UnitSystem } from '../../../base/quantity.ts';
import type { Camera, Lens } from '../../../document/schema.ts';
import { fNumberOfLens, fNumberOfT } from '../../../laws/exposure/tStop.ts';
import { angleOfView, angleOfView_deg, fieldWidth, fieldWidth_m } from '../../../laws/lens/field.ts';
import { magnificationAtDistance, magnificationReached, objectDistance_m } from '../../../laws/lens/magnification.ts';
import { windowWidth_m } from '../../../laws/lens/window.ts';
import { showNamed, type Numbered } from '../shot/showValue.ts';

export interface Follows {
  readonly id: string;
  readonly title: string;
  readonly number: string;
  readonly unit: string;
  readonly says: string;
  /** The law that says it. */
  readonly lawId: string;
}

/** A value, or undefined where the figures lie outside what the law holds for. */
function tried<Of>(work: () => Of): Of | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Width of all the photosites that form a picture. */
export function sensorWidth_m({ activeArea, pixelPitch_m }: Camera): number | undefined {
  if (!activeArea || pixelPitch_m === undefined) return undefined;
  return tried(() => windowWidth_m({ pixelCount: activeArea.widthCount, pixelPitch_m }));
}

export interface LensOn {
  readonly lens: Lens;
  /** Width of the picture on the sensor, where a camera says one. */
  readonly imageWidth_m: number | undefined;
  readonly system: UnitSystem;
}

export function lensFollows({ lens, imageWidth_m, system }: LensOn): readonly Follows[] {
  const { focalLength_mm, closeFocus_m, widestStop, transmittanceFraction, pupilMagnificationRatio } = lens;
  const fNumber = tried(() =>
    widestStop === undefined || transmittanceFraction === undefined
      ? undefined
      : fNumberOfT({ tStop: widestStop, transmittanceFraction }),
  );
  const magnificationRatio = tried(() =>
    focalLength_mm === undefined || closeFocus_m === undefined
      ? undefined
      : magnificationAtDistance({ focalLength_mm, sensorToSubject_m: closeFocus_m }),
  );
  const angle_deg = tried(() =>
    focalLength_mm === undefined || imageWidth_m === undefined
      ? undefined
      : angleOfView_deg({ focalLength_mm, imageWidth_m, ...(pupilMagnificationRatio === undefined ? {} : { pupilMagnificationRatio }) }),
  );
  const field_m = tried(() =>
    focalLength_mm === undefined || imageWidth_m === undefined || magnificationRatio === undefined
      ? undefined
      : fieldWidth_m({ focalLength_mm, imageWidth_m, objectDistance_m: objectDistance_m({ focalLength_mm, magnificationRatio }) }),
  );
  const line = (of: Omit<Follows, 'number' | 'unit'>, named: Numbered): Follows => ({ ...of, ...showNamed(named) });
  return [
    fNumber !== undefined &&
      line(
        { id: 'f-number', title: 'Widest f-number', lawId: fNumberOfLens.id, says: 'The stop that depth and diffraction go by at the widest marking.' },
        { name: 'fNumber', value: fNumber, kind: 'fStop', system },
      ),
    angle_deg !== undefined &&
      line(
        { id: 'angle', title: 'Angle of view', lawId: angleOfView.id, says: 'Across the whole sensor, focused far away.' },
        { name: 'angleOfView_deg', value: angle_deg, kind: 'angle', system },
      ),
    magnificationRatio !== undefined && {
      id: 'magnification',
      title: 'Largest picture',
      number: `${Number(magnificationRatio.toPrecision(3))} ×`,
      unit: '',
      lawId: magnificationReached.id,
      says: `Size on the sensor over size on the set, at close focus; by a lens that moves out as a whole, which one that focuses inside outdoes.`,
    },
    field_m !== undefined &&
      line(
        { id: 'field', title: 'Narrowest field', lawId: fieldWidth.id, says: 'Width of the set across the whole sensor at close focus, without tubes.' },
        { name: 'fieldWidth_m', value: field_m, kind: 'length', system },
      ),
  ].filter((follows) => follows !== false);
} // prettier-ignore
