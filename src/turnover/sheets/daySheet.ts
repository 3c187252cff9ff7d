/** The day on paper: when each shot starts and ends nine days in ten, what the time goes on, and what would end it sooner. */
import { writeClock } from '../../document/write.ts';
import type { DayPlan, DayShot, DayWork, Moment } from '../../plan/day/types.ts';
import { capital, sayTime, WORK_NAMES } from '../../plan/day/words.ts';
import { missingWords } from '../words.ts';
import { sayShare } from './cueSheet.ts';
import { cell, dayFigures, ofShoot, sayNumber, strong } from './say.ts';
import { heading, paragraph, unlessEmpty, type Cell, type KeyFigure, type Sheet, type Source, type TableBlock } from './sheet.ts'; // prettier-ignore

/** A kind of work as a row of a table begins with it. */
export const workWord = (work: DayWork): string => capital(WORK_NAMES[work]);

const momentCell = ({ middle_s, late_s }: Moment): Cell =>
  strong(writeClock(middle_s), late_s - middle_s >= 60 ? `to ${writeClock(late_s)}` : undefined);

const sayRange = ({ early, middle, late }: DayShot['takes']): Cell =>
  strong(String(middle), early === late ? undefined : `${early} to ${late}`);

const column = (title: string, align: 'left' | 'right' = 'left') => ({ title, align });

function shotRow({ plan }: Source, shot: DayShot): readonly Cell[] {
  const number = plan.shots.find(({ id }) => id === shot.shotId)?.number;
  const done = shot.isDone ? 'done' : shot.because;
  const spent = Object.entries(shot.spent_s) as [DayWork, number][];
  const most = spent.toSorted(([, a], [, b]) => b - a).slice(0, 2);
  return [
    strong(number === undefined ? '' : String(number)),
    strong(shot.title, done),
    shot.isDone ? cell('–') : momentCell(shot.starts),
    shot.isDone ? cell('–') : momentCell(shot.ends),
    shot.isDone ? cell('–') : sayRange(shot.takes),
    cell(most.map(([work, time_s]) => `${WORK_NAMES[work]} ${sayTime(time_s)}`).join(', ')),
  ];
}

function shotTable(source: Source, day: DayPlan): TableBlock {
  return {
    block: 'table',
    name: 'Shots in the order of the day',
    columns: [
      column('', 'right'),
      column('Shot'),
      column('Starts', 'right'),
      column('Ends', 'right'),
      column('Takes', 'right'),
      column('Most of it is'),
    ],
    rows: day.shots.map((shot) => shotRow(source, shot)),
  };
}

function endFigures(day: DayPlan): readonly KeyFigure[] {
  const { wrap, copied, wrapsBy_s, inTimeFraction, overtime } = day;
  const price = overtime?.latePrice === undefined ? '' : `, ${Math.round(overtime.latePrice)} at the price given`;
  return [
    { label: 'Wrap, nine days in ten by', number: writeClock(wrap.late_s), unit: '', note: `half the days by ${writeClock(wrap.middle_s)}` },
    { label: 'Last copy verified by', number: writeClock(copied.late_s), unit: '', note: `half the days by ${writeClock(copied.middle_s)}` },
    ...(wrapsBy_s === undefined || inTimeFraction === undefined ? [] : [{ label: `Days that end by ${writeClock(wrapsBy_s)}`, number: sayShare(inTimeFraction), unit: '' }]),
    ...(overtime && overtime.late_s > 0 ? [{ label: 'Overtime, one day in ten more than', number: sayTime(overtime.late_s), unit: '', note: `half the days ${sayTime(overtime.middle_s)}${price}` }] : []),
  ];
} // prettier-ignore

function pathTable(day: DayPlan): TableBlock {
  return {
    block: 'table',
    name: 'Where the time goes',
    columns: [column('Work'), column('Time', 'right'), column('Share', 'right')],
    rows: day.path.map(({ work, time_s, shareFraction }) => [
      strong(workWord(work)),
      cell(sayTime(time_s)),
      cell(sayShare(shareFraction)),
    ]),
  };
}

function savingTable(day: DayPlan): TableBlock {
  return {
    block: 'table',
    name: 'What would end it sooner',
    columns: [column('Change'), column('Ends sooner by', 'right')],
    rows: day.savings.map(({ title, says, saves_s }) => [strong(title, says), cell(sayTime(saves_s))]),
  };
}

function driveTable(source: Source, day: DayPlan): TableBlock {
  return {
    block: 'table',
    name: 'Drives at the end of the day',
    columns: [column('Drive'), column('Holds'), column('Free now', 'right'), column('From this day', 'right')],
    rows: day.drives.map(({ title, holds, free_B, middle_B, late_B, isShort }) => [
      strong(title),
      cell(holds === 'saves' ? 'what leaves the camera' : 'copies'),
      cell(sayNumber(source, 'free_B', free_B)),
      {
        ...cell(
          sayNumber(source, 'middle_B', middle_B),
          `${sayNumber(source, 'late_B', late_B)} one day in ten${isShort ? ': it will not do' : ''}`,
        ),
        state: isShort ? 'short' : 'spare',
      },
    ]),
  };
}

const ORDER: Readonly<Record<DayPlan['orderBy'], string>> = {
  fixed: 'in the order that was fixed',
  proven: 'in the order with the least time for changing over, proven',
  found: 'in the best order found, not proven to be the best',
};

/** The day plan. */
export function daySheet(source: Source, day: DayPlan): Sheet {
  const lacks = [...new Set(day.missing.map((one) => missingWords(one).title))];
  const assumed = [...new Set(day.assumed.map(({ title }) => title))];
  const days = dayFigures(source);
  return {
    id: 'day',
    kind: 'day',
    over: 'Day plan',
    ...ofShoot(source),
    title: 'The day',
    under: `${day.dayCount} days drawn by chance from seed ${day.seedCount}, ${ORDER[day.orderBy]}`,
    blocks: [
      ...unlessEmpty(days, { block: 'figures', size: 'small', figures: days }),
      ...unlessEmpty(day.shots, { block: 'figures', size: 'large', figures: endFigures(day) }),
      ...unlessEmpty(day.says, paragraph(day.says.join(' '))),
      ...day.warnings.map(({ says }) => paragraph(says, 'strong')),
      ...unlessEmpty(day.shots, heading('Shots', 'the first time holds half the days, the second nine in ten')),
      ...unlessEmpty(day.shots, shotTable(source, day)),
      ...unlessEmpty(day.path, heading('Where the time goes')),
      ...unlessEmpty(day.path, pathTable(day)),
      ...unlessEmpty(day.savings, heading('What would end it sooner', 'each found by drawing the same days again')),
      ...unlessEmpty(day.savings, savingTable(day)),
      ...unlessEmpty(day.drives, heading('Drives')),
      ...unlessEmpty(day.drives, driveTable(source, day)),
      ...unlessEmpty(lacks, paragraph(`Missing: ${lacks.join('; ')}.`)),
      ...unlessEmpty(assumed, paragraph(`Taken as usual, because nobody wrote it: ${assumed.join('; ')}.`, 'small')),
    ],
  };
}
