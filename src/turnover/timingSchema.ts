/** The form of a shot's timing in the reply to `longsecond plan --json`: cues, meeting, trigger, memory, and takes drawn by chance. */
import * as z from 'zod';

interface Parts {
  readonly Missing: z.ZodType;
  readonly Assumption: z.ZodType;
  readonly Path: z.ZodType<string>;
}

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const RIG_KINDS = ['relay', 'latch', 'solenoid', 'valve', 'pneumatic', 'motor', 'person'] as const;
const DOES = ['acts', 'falls', 'flies', 'swings', 'pours', 'moves', 'lights'] as const;
const TRIGGERS = ['person', 'electric', 'beam', 'sound', 'contact', 'picture'] as const;

const Catching = z
  .strictObject({
    postTriggerFraction: z.number().describe('Share of the memory kept after the trigger.'),
    caughtFraction: z.number(),
    headLostFraction: z.number(),
    tailLostFraction: z.number(),
  })
  .describe('What a setting of the trigger keeps, as shares of the takes in which it fires as it should.')
  .meta({ id: 'catching' });

export const Share = z
  .strictObject({ shareFraction: z.number(), standardErrorFraction: z.number() })
  .describe('A share of takes drawn by chance, with its standard error.')
  .meta({ id: 'share' });

export const Sampled = z
  .strictObject({
    sampleCount: z.int(),
    seedCount: z.int(),
    meets: Share.optional(),
    inTheFrame: Share.optional(),
    inDepth: Share.optional(),
    inMemory: Share.optional(),
    all: Share.describe('All of them in the same take.'),
    takesAllowedCount: z.int().describe('Takes to allow for one good one, nine days in ten.').optional(),
  })
  .describe('The same shot rolled many times by chance.')
  .meta({ id: 'sampled' });

/** The schemas of a shot's timing, made with what the rest of the reply has of its own. */
export function timingSchemas({ Missing, Assumption, Path }: Parts) {
  const Cue = z
    .strictObject({
      id: z.string(),
      prefix: z.string().describe('Start of the names of its numbers for --explain: cue0 of cue0Fire_s.'),
      title: z.string(),
      rig: z.string().optional(),
      rigTitle: z.string(),
      rigKind: z.enum(RIG_KINDS).optional(),
      does: z.enum(DOES),
      latency_s: z.number().optional(),
      travel_s: z.number().optional(),
      settle_s: z.number(),
      fire_s: z.number().describe('When its signal is given, after the action starts; negative before.').optional(),
      moves_s: z.number().optional(),
      arrives_s: z.number().optional(),
      rests_s: z.number().optional(),
      afterFirst_s: z.number().describe('When its signal is given, after the first signal.').optional(),
      spread_s: z.number().describe('Of its arrival, one standard deviation.').optional(),
      shareOfSpreadFraction: z.number().describe('Of the variance of all that must meet.'),
      arrivalSpeed_m_per_s: z.number().optional(),
      millisecondMoves_m: z.number().describe('How far a millisecond of delay moves it at the meeting.').optional(),
      centimetreDelays_s: z.number().describe('What a centimetre more of its path delays it by.').optional(),
      isApart: z.boolean(),
      missing: list(Missing),
      assumed: list(Assumption),
    })
    .describe('One cue; a time that rests on what is missing is absent.')
    .meta({ id: 'cue' });

  const Meeting = z
    .strictObject({
      at_s: z.number(),
      tolerance_s: z.number(),
      chanceFraction: z.number().optional(),
      wantedFraction: z.number(),
      dominant: z.string().describe('Id of the cue whose spread counts most.').optional(),
      dominantSpreadNeeded_s: z.number().describe('How small its spread would have to be.').optional(),
      isAssumed: z.boolean().describe('Whether a spread behind it was neither measured nor stated.'),
    })
    .meta({ id: 'meeting' });

  const Trigger = z
    .strictObject({
      by: z.enum(TRIGGERS),
      answers_s: z.number(),
      comes_s: z.number().describe('Median; low and high are P10 and P90.'),
      comesLow_s: z.number(),
      comesHigh_s: z.number(),
      set: Catching,
      best: Catching,
      isFixed: z.boolean(),
      chanceFraction: z.number().describe('Share of all takes whose whole action is kept.'),
      falseFireFraction: z.number(),
      noFireFraction: z.number(),
      wantedFraction: z.number(),
      keepsFrom_s: z.number(),
      keepsTo_s: z.number(),
      assumed: list(Assumption),
    })
    .meta({ id: 'trigger' });

  const Memory = z
    .strictObject({
      recordTime_s: z.number().describe('One partition.'),
      frameCount: z.int(),
      partitionCount: z.number(),
      trimFrom_s: z.number(),
      trimTo_s: z.number(),
      trimmedFrameCount: z.int(),
      trimmedSize_B: z.number(),
      saveTime_s: z.number().optional(),
      reset_s: z.number(),
      waits_s: z.number().describe('How long the next roll waits for the save, beyond the reset.').optional(),
      marks: list(
        z.strictObject({
          title: z.string(),
          at_s: z.number(),
          frameCount: z.int().describe('Frames from the start of what is kept.'),
        }),
      ),
      assumed: list(Assumption),
    })
    .meta({ id: 'memory' });

  const Safety = z.strictObject({
    rig: z.string(),
    arms: z.string().optional(),
    clears: z.string().optional(),
    disarm: z.string().optional(),
    shield: z.string().optional(),
  });

  const Timing = z
    .strictObject({
      action_s: z.number(),
      handle_s: z.number(),
      captureRate_fps: z.number(),
      screenStretchRatio: z.number().describe('Screen seconds for each real second.').optional(),
      cues: list(Cue).describe('In the order in which they fire.'),
      meeting: Meeting.optional(),
      trigger: Trigger.optional(),
      memory: Memory.optional(),
      impossible: list(z.strictObject({ says: z.string(), path: Path })),
      safety: list(Safety).describe('Who arms and who calls clear, what disarms and what shields, rig by rig.'),
    })
    .describe('The shot in time; its zero is the start of the action.')
    .meta({ id: 'timing' });

  return { Timing, Cue, Meeting, Trigger, Memory, Safety };
}
