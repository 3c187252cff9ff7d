/** The form of the reply to `longsecond day --json`. Times that end in `_s` beside no other word are seconds of the day: 27000 is 07:30. */
import * as z from 'zod';
import { WORKS } from '../plan/day/dayRuns.ts';

export const DAY_SCHEMA = 'longsecond.day/1';

interface Parts {
  readonly Missing: z.ZodType;
  readonly Assumption: z.ZodType;
  readonly Path: z.ZodType<string>;
  readonly Problem: z.ZodType;
}

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const Work = z.enum(WORKS).describe('What time is spent on.').meta({ id: 'work' });

const Moment = z
  .strictObject({ early_s: z.number(), middle_s: z.number(), late_s: z.number() })
  .describe('Seconds of the day that one, five and nine days in ten do not exceed.')
  .meta({ id: 'moment' });

const DayShot = z
  .strictObject({
    shotId: z.string(),
    title: z.string(),
    isDone: z.boolean().describe('Nothing more is shot of it.'),
    because: z.string().describe('Why it stands where it does: what it shares with the shot before.'),
    starts: Moment,
    ends: Moment,
    takes: z.strictObject({ earlyCount: z.int(), middleCount: z.int(), lateCount: z.int() }),
    piecesUsed: z.strictObject({ product: z.string(), middleCount: z.number(), lateCount: z.number() }).optional(),
    spent_s: z.partialRecord(Work, z.number()).describe('Mean time spent on each kind of work.'),
  })
  .meta({ id: 'dayShot' });

const Block = z
  .strictObject({
    lane: z.enum(['floor', 'save', 'copy']),
    work: Work,
    shotId: z.string().optional(),
    number: z.int().describe('Which take of the shot, from 1.').optional(),
    from_s: z.number(),
    to_s: z.number(),
    says: z.string(),
  })
  .meta({ id: 'block' });

const Drive = z
  .strictObject({
    drive: z.string(),
    title: z.string(),
    holds: z.enum(['saves', 'copies']),
    free_B: z.number(),
    middle_B: z.number().describe('From this day on it at the end, on half of all days.'),
    late_B: z.number(),
    isShort: z.boolean(),
  })
  .meta({ id: 'drive' });

const Overtime = z.strictObject({
  middle_s: z.number(),
  late_s: z.number(),
  latePrice: z.number().describe('What the late overtime costs at the price given.').optional(),
});

/** The whole reply, made of the parts that it shares with the reply of a plan. */
export function dayReplySchema({ Missing, Assumption, Path, Problem }: Parts) {
  return z
    .strictObject({
      schema: z.literal(DAY_SCHEMA),
      title: z.string(),
      problems: list(Problem).describe('In the order of the text.'),
      dayCount: z.int().describe('Days drawn.'),
      seedCount: z.int().describe('The seed they were drawn from.'),
      says: list(z.string()).describe('In plain words, the end first.'),
      warnings: list(z.strictObject({ says: z.string(), path: Path })),
      starts_s: z.number(),
      wrapsBy_s: z.number().describe('The wrap that was set.').optional(),
      wrap: Moment,
      copied: Moment.describe('When the last copy is verified.'),
      inTimeFraction: z.number().describe('Share of days that end by the wrap that was set.').optional(),
      overtime: Overtime.optional(),
      order: list(z.string()).describe('Ids of the shots in the order judged.'),
      orderBy: z.enum(['fixed', 'proven', 'found']).describe('Fixed by a person, proven best, or the best found.'),
      changes_s: z.number().describe('Time that changing over takes in this order.'),
      changesAsWritten_s: z.number(),
      shots: list(DayShot),
      path: list(z.strictObject({ work: Work, time_s: z.number(), shareFraction: z.number() })).describe(
        'Where the time of a late day goes, most first.',
      ),
      savings: list(z.strictObject({ title: z.string(), says: z.string(), saves_s: z.number() })).describe(
        'What would end the late day sooner, each found by drawing the same days again.',
      ),
      drives: list(Drive),
      blocks: list(Block).describe('The drawn day whose wrap is nearest the middle, stretch by stretch.'),
      missing: list(Missing),
      assumed: list(Assumption),
    })
    .meta({ title: 'Reply of longsecond day --json' });
}
