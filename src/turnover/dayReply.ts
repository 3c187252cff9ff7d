/** A day as a reply for programs. */
import type * as z from 'zod';
import type { Problem } from '../document/problem.ts';
import type { DayBlock, DayPlan, DayShot, Moment } from '../plan/day/types.ts';
import type { DAY_SCHEMA } from './daySchema.ts';
import { assumptionReply, missingReply, present, problemReply, rounded } from './planReply.ts';
import type { DayReply } from './planSchema.ts';

type Reply = z.infer<typeof DayReply>;

const moment = ({ early_s, middle_s, late_s }: Moment) => ({ early_s, middle_s, late_s });

function shotReply({ shotId, title, isDone, because, starts, ends, takes, piecesUsed, spent_s }: DayShot): Reply['shots'][number] {
  return {
    shotId,
    title,
    isDone,
    because,
    starts: moment(starts),
    ends: moment(ends),
    takes: { earlyCount: takes.early, middleCount: takes.middle, lateCount: takes.late },
    ...present({ piecesUsed: piecesUsed && { product: piecesUsed.product, middleCount: piecesUsed.middle, lateCount: piecesUsed.late } }),
    spent_s,
  };
} // prettier-ignore

function blockReply({ lane, work, shotId, take, from_s, to_s, says }: DayBlock): Reply['blocks'][number] {
  return { lane, work, ...present({ shotId, number: take }), from_s, to_s, says };
}

/** The day with the problems of its document, in the form of `docs/schema/day.schema.json`. */
export function dayReply(title: string, day: DayPlan, problems: readonly Problem[]): Reply {
  const schema: typeof DAY_SCHEMA = 'longsecond.day/1';
  const { dayCount, seedCount, says, warnings, starts_s, wrapsBy_s, wrap, copied, inTimeFraction, overtime } = day;
  const { order, orderBy, changes_s, changesAsWritten_s, shots, path, savings, drives, blocks, missing, assumed } = day;
  return rounded({
    schema,
    title,
    problems: problems.map(problemReply),
    dayCount,
    seedCount,
    says,
    warnings: warnings.map((warning) => ({ says: warning.says, path: warning.path })),
    starts_s,
    ...present({ wrapsBy_s }),
    wrap: moment(wrap),
    copied: moment(copied),
    ...present({ inTimeFraction, overtime: overtime && { middle_s: overtime.middle_s, late_s: overtime.late_s, ...present({ latePrice: overtime.latePrice }) } }),
    order,
    orderBy,
    changes_s,
    changesAsWritten_s,
    shots: shots.map(shotReply),
    path: path.map(({ work, time_s, shareFraction }) => ({ work, time_s, shareFraction })),
    savings: savings.map((saving) => ({ title: saving.title, says: saving.says, saves_s: saving.saves_s })),
    drives: drives.map(({ drive, title: name, holds, free_B, middle_B, late_B, isShort }) => ({ drive, title: name, holds, free_B, middle_B, late_B, isShort })),
    blocks: blocks.map(blockReply),
    missing: missing.map(missingReply),
    assumed: assumed.map(assumptionReply),
  });
} // prettier-ignore
