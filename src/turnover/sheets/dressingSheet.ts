/** The stylist's sheet: what must be camera-ready when, how many in all, and how long each may stand. */
import { writeClock } from '../../document/write.ts';
import type { DayPlan, DayShot } from '../../plan/day/types.ts';
import type { ShotPlan } from '../../plan/types.ts';
import { cell, NOT_KNOWN, ofShoot, sayCount, sayLong, strong, titleOf } from './say.ts';
import { effectiveShot, marginNamed, sideOf } from './shotWords.ts';
import { heading, paragraph, subheading, unlessEmpty, type Block, type Cell, type Sheet, type Source, type TickItem } from './sheet.ts'; // prettier-ignore

interface Dressed {
  readonly shot: ShotPlan;
  readonly day: DayShot;
  readonly product: string;
}

/** Shots that use a product, in the order of the day, what is done left out. */
function dressed({ shoot, plan }: Source, { shots }: DayPlan): readonly Dressed[] {
  return shots.flatMap((day) => {
    const shot = plan.shots.find(({ id }) => id === day.shotId);
    const product = shot && effectiveShot(shoot, shot).hero.product;
    return shot && product !== undefined && !day.isDone ? [{ shot, day, product }] : [];
  });
}

function row(source: Source, { shot, day, product }: Dressed): readonly Cell[] {
  const item = source.shoot.kit.products[product];
  const { perTakeCount = 1 } = effectiveShot(source.shoot, shot).hero;
  const pieces = day.piecesUsed ?? { middle: day.takes.middle * perTakeCount, late: day.takes.late * perTakeCount };
  const hold_s = item?.hold_s;
  return [
    strong(writeClock(day.starts.early_s), `half the days by ${writeClock(day.starts.middle_s)}`),
    strong(titleOf(item, product), `shot ${shot.number}, ${shot.title}`),
    strong(sayCount(perTakeCount, 'piece'), 'a take'),
    strong(String(pieces.middle), `${pieces.late} nine days in ten`),
    cell(hold_s === undefined ? NOT_KNOWN : sayLong(hold_s)),
    cell(sideOf(marginNamed(shot, 'hero-life'), 'have', source) ?? NOT_KNOWN),
  ];
}

/** Jobs of the reset that fall to whoever looks after the product. */
function resets(source: Source, { shot }: Dressed): readonly Block[] {
  const jobs = Object.entries(effectiveShot(source.shoot, shot).reset).filter(([, { by }]) => by === 'product');
  const items = jobs.map(([id, job]): TickItem => {
    const used = job.uses === undefined ? '' : `${sayCount(job.pieceCount ?? 1, 'piece')} of ${titleOf(source.shoot.kit.products[job.uses], job.uses)}`;
    const time = job.duration_s === undefined ? '' : sayLong(job.duration_s);
    return { words: titleOf(job, id), under: [time, used].filter((part) => part !== '').join(', ') };
  }); // prettier-ignore
  return [
    ...unlessEmpty(items, subheading(`Between takes of shot ${shot.number}`, shot.title)),
    ...unlessEmpty(items, { block: 'ticks', name: `Between takes of shot ${shot.number}`, items }),
  ];
}

export function dressingSheet(source: Source, day: DayPlan): Sheet {
  const all = dressed(source, day);
  return {
    id: 'dressing',
    kind: 'dressing',
    over: 'Stylist’s sheet',
    ...ofShoot(source),
    title: 'Camera-ready',
    under: 'The first time is early: one day in ten the shot starts by then, so have the first pieces ready for it.',
    blocks: [
      ...(all.length === 0 ? [paragraph('No shot of the day names a product.')] : []),
      ...unlessEmpty(all, {
        block: 'table',
        name: 'What must be camera-ready when',
        columns: [
          { title: 'Ready by', align: 'right' },
          { title: 'Product', align: 'left' },
          { title: 'Each', align: 'left' },
          { title: 'In all', align: 'right' },
          { title: 'Stands dressed', align: 'right' },
          { title: 'Life in the light', align: 'right' },
        ],
        rows: all.map((one) => row(source, one)),
      }),
      ...unlessEmpty(all, heading('Resets')),
      ...all.flatMap((one) => resets(source, one)),
      {
        block: 'blank',
        name: 'Notes',
        columns: [{ title: 'Notes', share: 1 }],
        rowCount: 3,
        fills: true,
        isOptional: true,
      },
    ],
  };
}
