/** How bright lamps are to look into, in words that alert and assess nothing. */
import { showQuantity, type UnitSystem } from '../../../base/quantity.ts';
import type { Glare } from '../../../plan/eyes.ts';
import { said } from '../../../turnover/words.ts';
import { lengthWords } from '../shot/pictureWords.ts';

/** A working day: no published time is longer. */
const DAY_s = 8 * 3600;

export interface GlareSaid {
  readonly isNear: boolean;
  readonly brightness: string;
  /** How long, and from where. */
  readonly says: string;
}

export function glareSaid({ luminance_cd_per_m2, lookTime_s, eyeDistance_m, distance_m, infraredDistance_m, blueDistance_m }: Glare, system: UnitSystem): GlareSaid {
  const brightness = said(showQuantity('luminance', Number(luminance_cd_per_m2.toPrecision(2)), { system, digits: 2 }));
  const time = lookTime_s >= DAY_s ? 'all of a day' : `${said(showQuantity('time', lookTime_s, { digits: 2 }))} of a day`;
  const isNear = eyeDistance_m > distance_m;
  const because = infraredDistance_m > blueDistance_m ? 'infrared' : 'blue light';
  return {
    isNear,
    brightness,
    says: isNear
      ? `From the subject, ${lengthWords(distance_m, system)} off, the published limits let an eye rest on it for ${time}. For the hundred seconds that people look in all, keep ${lengthWords(eyeDistance_m, system)} off, for its ${because}.`
      : `From the subject, ${lengthWords(distance_m, system)} off, the published limits let an eye rest on it for ${time}.`,
  };
} // prettier-ignore
