/** The product part of a morning sheet: pieces to have ready for every shot, and how long each lasts under the light. */
import type { ShotPlan } from '../../plan/types.ts';
import { cell, NOT_KNOWN, sayCount, sayNumber, strong, titleOf } from './say.ts';
import { effectiveShot, lifeWords, marginNamed, shotsBy, sideOf, takesOf } from './shotWords.ts';
import {
  heading,
  paragraph,
  subheading,
  unlessEmpty,
  type Block,
  type Cell,
  type Source,
  type TickItem,
} from './sheet.ts';

/** Pieces that the planned takes of a shot use up; one a take where nobody said. */
export function piecesFor(source: Source, shot: ShotPlan) {
  const { perTakeCount } = effectiveShot(source.shoot, shot).hero;
  const { plannedCount } = takesOf(source.shoot, shot);
  return { eachCount: perTakeCount ?? 1, isSaid: perTakeCount !== undefined, plannedCount, pieceCount: (perTakeCount ?? 1) * plannedCount };
} // prettier-ignore

function shotRow(source: Source, shot: ShotPlan): readonly Cell[] {
  const { hero } = effectiveShot(source.shoot, shot);
  const { eachCount, isSaid, plannedCount, pieceCount } = piecesFor(source, shot);
  const life = lifeWords(source, shot);
  const heroes = marginNamed(shot, 'heroes');
  const written = (name: string, value: number | undefined) => (value === undefined ? NOT_KNOWN : sayNumber(source, name, value));
  return [
    strong(String(shot.number)),
    strong(shot.title),
    cell(String(plannedCount)),
    cell(String(eachCount), isSaid ? undefined : 'assumed'),
    strong(String(pieceCount)),
    heroes ? { ...strong(sideOf(heroes, 'need', source) ?? NOT_KNOWN, heroes.have === undefined ? undefined : `${sideOf(heroes, 'have', source)} left for it`), state: heroes.state } : cell(NOT_KNOWN),
    cell(life?.life ?? NOT_KNOWN, life?.says),
    cell(written('lightOn_s', hero.lightOn_s)),
  ];
} // prettier-ignore

const COLUMNS = [
  { title: '', align: 'right' },
  { title: 'Shot', align: 'left' },
  { title: 'Takes', align: 'right' },
  { title: 'Each', align: 'right' },
  { title: 'In all', align: 'right' },
  { title: 'Enough nine days in ten', align: 'left' },
  { title: 'Life in the light', align: 'right' },
  { title: 'Light on, a take', align: 'right' },
] as const;

function product(source: Source, id: string, shots: readonly ShotPlan[]): readonly Block[] {
  const item = source.shoot.kit.products[id];
  const title = titleOf(item, id);
  const pieceCount = shots.reduce((sum, shot) => sum + piecesFor(source, shot).pieceCount, 0);
  const onHand = item?.pieceCount === undefined ? 'pieces on hand not written' : `${sayCount(item.pieceCount, 'piece')} on hand`;
  const blanks = Array.from({ length: 3 }, () => cell(''));
  return [
    subheading(title, onHand),
    { block: 'table', name: title, columns: COLUMNS, rows: shots.map((shot) => shotRow(source, shot)), total: [cell(''), strong('Planned takes use'), cell(''), cell(''), strong(String(pieceCount)), ...blanks] },
    ...(item?.note === undefined ? [] : [paragraph(item.note, 'small')]),
  ];
} // prettier-ignore

/** What is to stand ready for each shot, in their order. */
function toPrepare(source: Source): readonly TickItem[] {
  return source.plan.shots.flatMap((shot) => {
    const id = effectiveShot(source.shoot, shot).hero.product;
    if (id === undefined) return [];
    const { plannedCount, eachCount, pieceCount } = piecesFor(source, shot);
    const title = titleOf(source.shoot.kit.products[id], id);
    return [{ words: `Shot ${shot.number}: ${title}, ${sayCount(pieceCount, 'piece')}`, under: `${sayCount(plannedCount, 'take')} of ${eachCount}` }];
  });
} // prettier-ignore

export function productPart(source: Source): readonly Block[] {
  const groups = shotsBy(source, ({ hero }) => (hero.product === undefined ? [] : [hero.product]));
  const idle = Object.keys(source.shoot.kit.products).filter((id) => !groups.has(id));
  const unnamed = source.plan.shots.filter((shot) => {
    const { hero } = effectiveShot(source.shoot, shot);
    return hero.product === undefined && hero.life_s !== undefined;
  });
  const items = toPrepare(source);
  return [
    ...unlessEmpty(items, heading('To have ready')),
    ...unlessEmpty(items, { block: 'ticks', name: 'To have ready', items }),
    ...(groups.size === 0 ? [paragraph('No shot names a product.')] : []),
    ...[...groups].flatMap(([id, shots]) => product(source, id, shots)),
    ...unlessEmpty(unnamed, paragraph(`No product is named in ${unnamed.map(({ number }) => `shot ${number}`).join(', ')}, which says how long one lasts.`, 'small')),
    ...unlessEmpty(idle, paragraph(`No shot uses ${idle.map((id) => titleOf(source.shoot.kit.products[id], id)).join(', ')}.`, 'small')),
  ];
} // prettier-ignore
