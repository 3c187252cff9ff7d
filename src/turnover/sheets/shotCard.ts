/** The card of one shot, to be pinned beside the set: what to set, how every limit stands, and room to write. */
import { sayList } from '../../base/sayList.ts';
import { servedFrames } from './boardFrames.ts';
import { barsOf } from './bars.ts';
import { clocksOf } from './clocks.ts';
import { missingWords, numberWords } from '../words.ts';
import { MAY_DIFFER, type Shot } from '../../document/schema.ts';
import type { Margin, ShotPlan } from '../../plan/types.ts';
import { NOT_KNOWN, ofShoot, sayCount, sayNumber, titleOf } from './say.ts';
import {
  effectiveShot,
  fittedWords,
  latencyWords,
  lifeWords,
  marginNamed,
  settingsOf,
  sideOf,
  takesOf,
} from './shotWords.ts';
import { heading, paragraph, unlessEmpty, type Block, type KeyFigure, type Sheet, type Source, type TickItem } from './sheet.ts'; // prettier-ignore

/** Where a caution stands, it stands with this: the sheet reminds, it does not allow. */
export const DEFERS =
  'A reminder, not an approval: local codes, the maker’s instructions and the person responsible on the set come first.';

/** Said of a margin that rests on what nobody wrote. */
export const ASSUMED_SAYS = '≈ rests on something nobody measured or wrote.';

function settingFigures(source: Source, shot: ShotPlan, own: Shot): readonly Block[] {
  const words = settingsOf(source, shot);
  if (!words || !shot.settings) return [paragraph('No settings yet: what is missing stands below.', 'strong')];
  const { settings } = shot;
  const fitted = fittedWords(source, own);
  const shown = (name: 'captureRate_fps' | 'exposureTime_s') =>
    numberWords({ name, value: settings[name], kind: undefined, system: source.system });
  const large: readonly KeyFigure[] = [
    { label: 'Frame rate', ...shown('captureRate_fps') },
    { label: 'Shutter', ...shown('exposureTime_s'), note: words.angle },
    { label: 'Stop', number: words.stop, unit: '' },
    { label: 'Index', number: words.index, unit: '' },
  ];
  const small: readonly KeyFigure[] = [
    { label: 'Camera', number: words.camera, unit: '', note: words.format },
    { label: 'Lens', number: words.lens, unit: '', ...(fitted === '' ? {} : { note: `with ${fitted}` }) },
    { label: 'Sensor to subject', number: words.distance, unit: '', note: `${words.clear} clear of the lens` },
    { label: 'Frame width', number: sayNumber(source, 'frameWidth_m', own.frameWidth_m), unit: '' },
  ];
  return [
    { block: 'figures', size: 'large', figures: large },
    { block: 'figures', size: 'small', figures: small },
  ];
}

/** Everything the shot lacks, once. */
export function lacksOf({ missing, margins }: ShotPlan): readonly string[] {
  const all = [...missing, ...margins.flatMap((margin) => margin.missing)];
  return [...new Set(all.map((one) => missingWords(one).title))];
}

function productFigures(source: Source, shot: ShotPlan, own: Shot): readonly KeyFigure[] {
  const { product, perTakeCount, life_s, lightOn_s } = own.hero;
  if (product === undefined && life_s === undefined) return [];
  const name = product === undefined ? 'Product' : titleOf(source.shoot.kit.products[product], product);
  const margin = marginNamed(shot, 'hero-life');
  const life = lifeWords(source, shot);
  const lit = lightOn_s === undefined ? undefined : `a take lights it for ${sideOf(margin, 'need', source) ?? sayNumber(source, 'lightOn_s', lightOn_s)}`;
  const notes = [life?.says, lit].filter((note) => note !== undefined);
  const used = sayCount(perTakeCount ?? 1, 'piece');
  return [
    { label: 'Product', number: name, unit: '', note: `${used} a take` },
    {
      label: 'Life under the light',
      number: life?.life ?? NOT_KNOWN,
      unit: '',
      ...(notes.length === 0 ? {} : { note: notes.join('; ') }),
    },
  ];
} // prettier-ignore

function takesFigures(source: Source, shot: ShotPlan, own: Shot): readonly KeyFigure[] {
  const { plannedCount, keptCount } = takesOf(source.shoot, shot);
  const { lighting } = own;
  return [
    { label: 'Takes', number: String(plannedCount), unit: '', note: `${keptCount} to keep` },
    {
      label: 'A take kept',
      number: sayNumber(source, 'keptSize_B', shot.keptSize_B),
      unit: '',
      note: `saves in ${sayNumber(source, 'saveTime_s', shot.saveTime_s)}`,
    },
    ...(lighting === undefined
      ? []
      : [{ label: 'Light', number: titleOf(source.shoot.lighting[lighting], lighting), unit: '' }]),
    ...productFigures(source, shot, own),
  ];
}

/** Reference rolls owed before the first take, with why again where that was worked out. */
export function referenceItems({ plan }: Source, { id }: ShotPlan): readonly TickItem[] {
  const owed = plan.references.filter(({ shotId }) => shotId === id);
  return owed.map(({ what, because }) => ({ words: what, ...(because === '' ? {} : { under: because }) }));
}

/** What differs from the shot that this one is a plate or an element for. */
function matchItems({ plan }: Source, { id }: ShotPlan): readonly TickItem[] {
  return plan.matches
    .filter(({ shotId }) => shotId === id)
    .map(({ matchesId, differences }) => {
      const other = plan.shots.find((shot) => shot.id === matchesId);
      const says = differences.map(({ what, here, there }) => `${MAY_DIFFER[what]}: ${here} here, ${there} there`);
      return {
        words: `Match ${other ? `shot ${other.number}, ${other.title}` : matchesId}`,
        under: says.length === 0 ? 'as planned it does' : says.join('; '),
      };
    });
}

const rigItems = (source: Source, own: Shot): readonly TickItem[] =>
  own.rigs.map((id) => ({
    words: titleOf(source.shoot.kit.rigs[id], id),
    under: `moves ${latencyWords(source, id)} after its signal`,
  }));

function owedItems(source: Source, shot: ShotPlan, own: Shot): readonly TickItem[] {
  return [
    ...rigItems(source, own),
    ...referenceItems(source, shot),
    ...own.elements.map((element) => ({ words: element, under: 'an element of this set-up, to match it' })),
    ...matchItems(source, shot),
  ];
}

/** From this much to spare, at the low end of its band, a limit is named and not drawn. */
const AMPLE_stops = 2;

/** Limits to draw, and those with more than enough. */
function byRoom(margins: readonly Margin[]): { readonly drawn: readonly Margin[]; readonly ample: readonly Margin[] } {
  const isAmple = ({ state, stops }: Margin) => state === 'spare' && (stops?.low ?? 0) >= AMPLE_stops;
  return { drawn: margins.filter((margin) => !isAmple(margin)), ample: margins.filter(isAmple) };
}

const owedTitle = ({ rigs }: Shot): string => (rigs.length > 0 ? 'Rigs, and rolls owed' : 'Rolls owed');

/** The card of a shot. Its notes table takes what room the page leaves. */
export function shotCard(source: Source, shot: ShotPlan): Sheet {
  const own = effectiveShot(source.shoot, shot);
  const frames = servedFrames(source, own);
  const lacks = lacksOf(shot);
  const owed = owedItems(source, shot, own);
  const says = shot.cautions.map((caution) => caution.says);
  const { drawn, ample } = byRoom(shot.margins);
  const hasAssumed = shot.margins.some(({ assumed }) => assumed.length > 0);
  return {
    id: `card-${shot.id}`,
    kind: 'card',
    over: 'Shot card',
    ...ofShoot(source),
    number: String(shot.number),
    title: shot.title,
    ...(own.action.what === undefined ? {} : { under: own.action.what }),
    ...(frames ? { served: frames } : {}),
    blocks: [
      ...settingFigures(source, shot, own),
      ...clocksOf(shot.clocks, source),
      ...unlessEmpty(shot.margins, heading('Margins', `in stops, short ones first${hasAssumed ? `; ${ASSUMED_SAYS}` : ''}`)),
      ...unlessEmpty(drawn, barsOf(`Margins of shot ${shot.number}`, drawn, source)),
      ...unlessEmpty(ample, paragraph(`More than two stops to spare: ${sayList(ample.map(({ title }) => title.toLowerCase()))}.`, 'small')),
      ...unlessEmpty(lacks, paragraph(`Missing: ${lacks.join('; ')}.`)),
      { block: 'figures', size: 'small', figures: takesFigures(source, shot, own) },
      ...unlessEmpty(owed, heading(owedTitle(own))),
      ...unlessEmpty(owed, { block: 'ticks', name: 'Rigs, reference rolls and elements', items: owed }),
      ...unlessEmpty(says, { block: 'caution', title: 'Take care', says: [...says, DEFERS] }),
      ...shot.notes.map((note) => paragraph(note, 'small')),
      { block: 'blank', name: 'Notes by hand', columns: [{ title: 'Take', share: 0.1 }, { title: 'Clip', share: 0.24 }, { title: 'Remarks', share: 0.66 }], rowCount: 3, fills: true },
    ],
  }; // prettier-ignore
}

/** What stands where cards are asked for and there is no shot. */
export function emptyCard(source: Source): Sheet {
  return {
    id: 'cards',
    kind: 'card',
    over: 'Shot cards',
    ...ofShoot(source),
    title: 'No shots yet',
    blocks: [paragraph('A card is printed for each shot. Write the first shot, then print again.')],
  };
}
