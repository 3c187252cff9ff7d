/** The whole plan on paper: every shot with its settings and the limit that binds, what is short, and the board. */
import { showNumber } from '../../base/quantity.ts';
import type { Margin, ShotPlan } from '../../plan/types.ts';
import { marginWords } from '../words.ts';
import { barsOf, sayMargin, worstFirst, worstOf } from './bars.ts';
import { boardFrames, sayFilm } from './boardFrames.ts';
import { cell, dayFigures, NOT_KNOWN, ofShoot, sayLong, sayNumber, strong } from './say.ts';
import { settingsOf, takesOf } from './shotWords.ts';
import { heading, paragraph, unlessEmpty, type Block, type Cell, type KeyFigure, type Sheet, type Source, type TableBlock } from './sheet.ts'; // prettier-ignore

/** Totals of the shoot as key figures. */
export function totalFigures({ plan, system }: Source): readonly KeyFigure[] {
  const { screenTime_s, takeCount, keptSize_B, saveTime_s, shortCount, tightCount, unknownCount } = plan.totals;
  const long = (label: string, time_s: number): KeyFigure => ({ label, number: sayLong(time_s), unit: '' });
  const also = [
    ...(tightCount > 0 ? [`${tightCount} tight`] : []),
    ...(unknownCount > 0 ? [`${unknownCount} ${NOT_KNOWN}`] : []),
  ];
  return [
    { label: 'Shots', number: String(plan.shots.length), unit: '' },
    long('On screen', screenTime_s),
    { label: 'Takes', number: showNumber(takeCount, 6), unit: '' },
    { label: 'Kept', number: sayNumber({ system }, 'keptSize_B', keptSize_B), unit: '' },
    long('Time to save', saveTime_s),
    { label: 'Limits short', number: String(shortCount), unit: '', ...(also.length === 0 ? {} : { note: also.join(', ') }) },
  ];
} // prettier-ignore

function worstCell(margins: readonly Margin[]): Cell {
  const worst = worstOf(margins);
  if (!worst) return cell('nothing to judge yet');
  const also = margins.filter(({ state }) => state === 'short').length - 1;
  return { ...cell(sayMargin(worst), also > 0 ? `and ${also} more short` : undefined), state: worst.state };
}

function shotRow(source: Source, shot: ShotPlan): readonly Cell[] {
  const words = settingsOf(source, shot);
  const { plannedCount, keptCount } = takesOf(source.shoot, shot);
  const none = cell('–');
  return [
    strong(String(shot.number)),
    strong(shot.title, sayNumber(source, 'screenTime_s', shot.clocks?.screenTime_s) + ' on screen'),
    words ? cell(words.rate) : none,
    words ? cell(words.shutter, words.angle) : none,
    words ? cell(words.stop, words.index) : none,
    words ? cell(words.lens, `at ${words.distance}`) : none,
    words ? cell(words.format, words.camera) : none,
    cell(String(plannedCount), `keep ${keptCount}`),
    worstCell(shot.margins),
  ];
}

function shotsTable(source: Source): TableBlock {
  const column = (title: string, align: 'left' | 'right' = 'left') => ({ title, align });
  return {
    block: 'table',
    name: 'All shots',
    columns: [
      column('', 'right'),
      column('Shot'),
      column('Rate', 'right'),
      column('Shutter', 'right'),
      column('Stop, index'),
      column('Lens'),
      column('Picture'),
      column('Takes', 'right'),
      column('Worst limit'),
    ],
    rows: source.plan.shots.map((shot) => shotRow(source, shot)),
  };
}

/** Every short margin of the shoot, the shots in their order, the shortest of each first. */
export function shortfallTable(source: Source): readonly TableBlock[] {
  const { plan, system } = source;
  const rowOf = (margin: Margin, of: string): readonly Cell[] => {
    const { name, figures, spare } = marginWords(margin, system);
    return [
      cell(of),
      { ...strong(name), state: 'short' },
      cell(figures),
      strong(spare),
      cell(margin.isHard ? 'hard' : 'taste'),
    ];
  };
  const short = (margins: readonly Margin[]) => worstFirst(margins).filter(({ state }) => state === 'short');
  const rows = [
    ...plan.shots.flatMap((shot) => short(shot.margins).map((margin) => rowOf(margin, `${shot.number} ${shot.title}`))),
    ...short(plan.margins).map((margin) => rowOf(margin, 'The whole shoot')),
  ];
  return unlessEmpty(rows, {
    block: 'table',
    name: 'Limits that are short',
    columns: [
      { title: 'Shot', align: 'left' },
      { title: 'Limit', align: 'left' },
      { title: 'Have, need', align: 'left' },
      { title: 'Stops', align: 'right' },
      { title: 'Kind', align: 'left' },
    ],
    rows,
  });
}

export function shortfalls(source: Source): readonly Block[] {
  const table = shortfallTable(source);
  const { unknownCount } = source.plan.totals;
  const unknown = unknownCount === 0 ? '' : ` ${unknownCount} ${unknownCount === 1 ? 'limit is' : 'limits are'} not known yet.`;
  if (table.length > 0) return [...table, ...(unknown === '' ? [] : [paragraph(unknown.trim(), 'small')])];
  return [paragraph(`No limit is short as planned.${unknown}`)];
} // prettier-ignore

const SETUP_SAYS = 'Nothing is planned yet: write the first shot, then print again.';

export function planSheet(source: Source): Sheet {
  const { plan } = source;
  const frames = boardFrames(source);
  const hasShots = plan.shots.length > 0;
  const figures = [...dayFigures(source), ...(hasShots ? totalFigures(source) : [])];
  return {
    id: 'plan',
    kind: 'plan',
    over: 'The plan',
    ...ofShoot(source),
    title: plan.title,
    blocks: [
      ...unlessEmpty(figures, { block: 'figures', size: 'small', figures }),
      ...(hasShots
        ? [
            heading('Shots'),
            shotsTable(source),
            heading('Short'),
            ...shortfalls(source),
            ...unlessEmpty(plan.margins, heading('The whole shoot', 'in stops')),
            ...unlessEmpty(plan.margins, barsOf('Limits of the whole shoot', plan.margins, source)),
          ]
        : [paragraph(SETUP_SAYS)]),
      ...unlessEmpty(frames, heading('Board')),
      ...unlessEmpty(frames, paragraph(sayFilm(source))),
      ...frames,
    ],
  };
}
