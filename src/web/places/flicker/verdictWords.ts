/** The judgement on a shot's flicker in the figures and words of its panel. */
import { showNumber, type Shown } from '../../../base/quantity.ts';
import type { SeenFlicker } from '../../../laws/flicker/seen.ts';
import type { FlickerVerdict } from '../../../laws/flicker/visible.ts';
import type { Standing } from '../../parts/StateWord.tsx';

const WORDS: Readonly<Record<FlickerVerdict['verdict'], { readonly word: string; readonly standing: Standing }>> = {
  invisible: { word: 'not seen', standing: 'spare' },
  marginal: { word: 'may be seen', standing: 'tight' },
  visible: { word: 'seen', standing: 'short' },
};

const REMEDIES: Readonly<Record<FlickerVerdict['remedy'], string>> = {
  'none needed': '',
  'look at plain backgrounds': 'Look at plain backgrounds.',
  'can be repaired': 'The grade can repair it.',
  'shoot again': 'Beyond what a grade repairs well: change it before it is shot.',
};

/** What can be done about it; empty where nothing need be. */
export const remedyWords = ({ remedy }: FlickerVerdict) => REMEDIES[remedy];

export const verdictWord = ({ verdict }: FlickerVerdict) => WORDS[verdict];

export interface VerdictFigure {
  readonly title: string;
  readonly shown: Shown;
  readonly says?: string;
}

const stops = (value: number): Shown =>
  value === Infinity
    ? { number: 'no limit', unit: '' }
    : { number: value < 0.001 ? 'under 0.001' : showNumber(value, 2), unit: 'stop' };

const percent = (ratio: number) => (ratio < 1e-4 ? 'under 0.01' : showNumber(100 * ratio, 2));

/** Swing in stops and in per cent, and how fast it beats on the screen. */
export function verdictFigures({ worst, best, dominant, looksLike }: SeenFlicker): readonly VerdictFigure[] {
  const spread = best.peakToPeak_stops < 0.9 * worst.peakToPeak_stops ? { says: `${sayStops(best.peakToPeak_stops)} where the first frame falls best` } : {};
  const beat: VerdictFigure =
    dominant && looksLike !== 'steady'
      ? { title: 'Beat on screen', shown: { number: showNumber(dominant.screen_Hz, 2), unit: 'Hz' }, says: beatWords(dominant.screen_Hz) }
      : { title: 'Beat on screen', shown: { number: 'none', unit: '' } };
  return [
    { title: 'Dimmest frame to brightest', shown: stops(worst.peakToPeak_stops), ...spread },
    { title: 'Of the mean light', shown: { number: percent(worst.peakToPeakRatio), unit: '%' } },
    beat,
  ];
} // prettier-ignore

const sayStops = (value: number) => {
  const { number, unit } = stops(value);
  return unit === '' ? number : `${number} ${unit}`;
};

/** "one every 8.3 s" of what beats slower than once a second. */
function beatWords(screen_Hz: number): string {
  if (screen_Hz >= 1) return `${showNumber(screen_Hz, 2)} times a second`;
  return `once in ${showNumber(1 / screen_Hz, 2)} s`;
}
