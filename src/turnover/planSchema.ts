/**
 * The form of the reply to `longsecond plan --json`: numbers stand under keys that end in their unit, exact rates are
 * `{ num, den }`, numbers are rounded to nine significant digits, and keys come in the order given here. Within one
 * major version keys may be added; none is removed, renamed or changed in meaning.
 */
import * as z from 'zod';
import { PRODUCTS } from '../laws/heat/products.ts';
import { LAMP_EFFICACY_lm_per_W } from '../laws/heat/irradiance.ts';
import { LIMITS } from '../plan/types.ts';
import { dayReplySchema } from './daySchema.ts';
import { FlickerReply } from './flickerFactsSchema.ts';
import { flickerSchema } from './flickerSchema.ts';
import { MeasureReply } from './measureSchema.ts';
import { lightReplySchema } from './lightSchema.ts';
import { Sampled, timingSchemas } from './timingSchema.ts';

export const PLAN_SCHEMA = 'longsecond.plan/1';
export const TRACE_SCHEMA = 'longsecond.trace/1';

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const UNIT = 'Unit of the figures, as it would end their key; empty for a plain number.';

const Path = z.string().describe('JSON Pointer into the written shoot, such as /shots/pour-1/shutter.');

const Rate = z.strictObject({ num: z.int(), den: z.int() }).describe('An exact ratio.').meta({ id: 'rate' });

const Problem = z
  .strictObject({
    code: z.string().describe('Stable name of the kind of problem, such as unit.missing.'),
    path: Path,
    what: z.string().describe('What was found and what was expected.'),
    near: z.string().describe('The valid name nearest to what was found.').optional(),
    line: z.int().describe('Counted from 1.').optional(),
    column: z.int().describe('Counted from 1.').optional(),
  })
  .describe('What is written but cannot be used.')
  .meta({ id: 'problem' });

const Missing = z
  .strictObject({
    name: z.string(),
    title: z.string(),
    path: Path,
    because: z.enum(['absent', 'unread', 'refused']),
    what: z.string().describe('What a law said, where it refused.').optional(),
  })
  .describe('What a number lacks.')
  .meta({ id: 'missing' });

const Assumption = z
  .strictObject({
    name: z.string(),
    title: z.string(),
    value: z.number(),
    unit: z.string().describe(UNIT),
    why: z.string(),
    path: Path,
  })
  .describe('An input that nobody measured or published, used all the same.')
  .meta({ id: 'assumption' });

const State = z.enum(['short', 'tight', 'spare', 'unknown']).meta({ id: 'state' });

const Margin = z
  .strictObject({
    id: z.enum(LIMITS),
    title: z.string(),
    detail: z.string().describe('Which of several it was judged for.').optional(),
    isHard: z.boolean().describe('Law, safety or physics; otherwise a matter of taste.'),
    state: State,
    kind: z.string().describe('What both figures are.'),
    unit: z.string().describe(UNIT),
    sense: z.enum(['at-least', 'at-most']).describe('Whether need is a floor or a ceiling.'),
    have: z.number().optional(),
    need: z.number().optional(),
    spare: z.number().describe('What is left over, in the unit of the figures; negative when short.').optional(),
    stops: z
      .strictObject({ value: z.number(), low: z.number(), high: z.number() })
      .describe('The spare in stops; low to high holds eight cases in ten.')
      .optional(),
    path: Path,
    haveName: z.string().describe('Name of the figure, for --explain.'),
    needName: z.string().describe('Name of the figure, for --explain.'),
    missing: list(Missing),
    assumed: list(Assumption),
  })
  .describe('One limit: what there is against what there must be.')
  .meta({ id: 'margin' });

const Settings = z
  .strictObject({
    camera: z.string(),
    mode: z.string(),
    lens: z.string(),
    captureRate_fps: z.number(),
    exposureTime_s: z.number(),
    shutterAngle_deg: z.number(),
    stop: z.number().describe('T-number.'),
    isoSpeed: z.number().describe('Exposure index.'),
    widthCount: z.int(),
    heightCount: z.int(),
    focalLength_mm: z.number(),
    magnificationRatio: z.number(),
    sensorToSubject_m: z.number(),
    workingDistance_m: z.number().describe('Front of the lens to the subject.'),
  })
  .describe('What to set. Camera, mode and lens are ids of the kit.')
  .meta({ id: 'settings' });

const Operation = z
  .discriminatedUnion('op', [
    z.strictObject({ op: z.enum(['add', 'replace', 'test']), path: Path, value: z.unknown() }),
    z.strictObject({ op: z.literal('remove'), path: Path }),
    z.strictObject({ op: z.enum(['move', 'copy']), from: Path, path: Path }),
  ])
  .describe('One operation of a JSON Patch (RFC 6902) on the written shoot.')
  .meta({ id: 'operation' });

const Alternative = z
  .strictObject({ settings: Settings, margins: list(Margin), differs: z.string(), patch: list(Operation) })
  .meta({ id: 'alternative' });

const Clocks = z
  .strictObject({
    actionTime_s: z.number().describe('Real time of the action alone.'),
    handles_s: z.number().describe('Real time kept before, and again after.'),
    screenTime_s: z.number(),
    samples: list(z.strictObject({ screenTime_s: z.number(), realTime_s: z.number() })),
    playRate: Rate,
    slowestFraction: z.number(),
    fastestFraction: z.number(),
    recordTime_s: z.number().describe('How long the memory holds at these settings.').optional(),
  })
  .describe('The shot on its two clocks.')
  .meta({ id: 'clocks' });

const Picture = z
  .strictObject({
    fieldWidth_m: z.number(),
    fieldHeight_m: z.number(),
    reframeFraction: z.number().describe('Share held back for repositioning, outside the crops.'),
    crops: list(
      z.strictObject({
        deliverable: z.string(),
        title: z.string(),
        width_m: z.number(),
        height_m: z.number(),
        safeFraction: z.number().describe('Share of the crop that is sure to be seen.').optional(),
      }),
    ),
    reachWidth_m: z.number().describe('How wide the action reaches.').optional(),
    reachHeight_m: z.number().optional(),
  })
  .describe('The recorded picture as the scene it shows, at the distance of the subject; crops lie about its middle.')
  .meta({ id: 'picture' });

const HeroLife = z
  .strictObject({
    warms: z.enum(Object.keys(PRODUCTS) as [keyof typeof PRODUCTS]).describe('What the product warms and melts like.'),
    shortestLife_s: z.number().describe('The shortest credible time, which limits go by.'),
    longestLife_s: z.number().describe('Up to this is as credible.'),
    lightOn_s: z.number().describe('Light-on time of one take.').optional(),
    heat: list(
      z.strictObject({
        lamp: z.enum(Object.keys(LAMP_EFFICACY_lm_per_W) as [keyof typeof LAMP_EFFICACY_lm_per_W]),
        illuminance_lx: z.number(),
        irradiance_W_per_m2: z.number(),
        absorbed_W_per_m2: z.number().describe('What the product takes up of it.'),
      }),
    ).describe('On its warmest side, by kind of lamp.'),
    airHeat_W_per_m2: z.number().describe('What the air brings to something colder.'),
    start_degC: z.number(),
    changes_degC: z.number().describe('From where its change can be seen.'),
    air_degC: z.number(),
    thickness_m: z.number(),
    isHeld: z.boolean().describe('It goes by how long it holds with the lights off, which is shorter.'),
    assumed: list(Assumption),
  })
  .describe('How long the product lasts under the light, worked out: a cautious estimate, not a measurement.')
  .meta({ id: 'heroLife' });

const Match = z
  .strictObject({
    shotId: z.string(),
    matchesId: z.string(),
    differences: list(
      z.strictObject({ what: z.string(), here: z.string(), there: z.string(), patch: list(Operation) }),
    ),
  })
  .describe('A plate or an element held against the shot that it must match.')
  .meta({ id: 'match' });

const Way = z
  .strictObject({
    move: z.string(),
    title: z.string(),
    says: z.string(),
    patch: list(Operation),
    stops: z.number().describe('Spare of the limit afterwards, in stops.'),
    gain_stops: z.number(),
    closes: z.boolean(),
    breaks: list(z.strictObject({ id: z.enum(LIMITS), title: z.string() })).describe(
      'Hard limits that had enough and would be short for it.',
    ),
    touchesFixed: z.boolean(),
    gives_stops: z.number().describe('Stops of what was asked for that it gives up, or of effort it costs.'),
    margins: list(Margin),
    effects: list(z.strictObject({ id: z.enum(LIMITS), title: z.string(), change_stops: z.number(), state: State })),
    settings: Settings.optional(),
    cost: z.number().describe('Lower is cheaper: what other limits lose, weighed by how near they are to short.'),
  })
  .describe('One change that closes a short margin or helps it, planned again in full.')
  .meta({ id: 'way' });

/** Schemas of a shot's timing, for whoever builds its reply. */
export const TIMING = timingSchemas({ Missing, Assumption, Path });

const Reason = z.strictObject({ says: z.string(), isFixed: z.boolean() });

const Shot = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    number: z.int().describe('Its place in the order, from 1.'),
    settings: Settings.optional(),
    reasons: z.record(z.string(), Reason).describe('Why a setting is what it is, by its name.'),
    margins: list(Margin),
    alternatives: list(Alternative),
    clocks: Clocks.optional(),
    picture: Picture.optional(),
    lamps: list(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        illuminance_lx: z.number(),
        shareFraction: z.number(),
        distance_m: z.number(),
      }),
    ).describe('What each lamp of the set-up gives the subject, on a surface that faces the camera.'),
    lampTimes: list(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        warmUp_s: z.number().describe('From lit to steady light.').optional(),
        restrike_s: z.number().describe('From put out to when it can be lit again.').optional(),
        drift_stops: z.number().describe('Change of its light in an hour once it is steady.').optional(),
      }),
    ).describe('Lamps of the set-up that take time to come up or to strike again, or that drift.'),
    heroLife: HeroLife.optional(),
    flicker: flickerSchema(Assumption).optional(),
    timing: TIMING.Timing.optional(),
    sampled: Sampled.describe('With --rolls.').optional(),
    missing: list(Missing).describe('What keeps the settings from being worked out.'),
    assumed: list(Assumption),
    cautions: list(
      z.strictObject({ key: z.string().describe('Heading of docs/safety.md, or own.'), says: z.string() }),
    ),
    notes: list(z.string()).describe('What no limit says and the crew should know.'),
    keptSize_B: z.number().describe('What one take weighs.').optional(),
    saveTime_s: z.number().describe('How long one take takes to save.').optional(),
    triedCount: z.int(),
    ways: z
      .record(z.string(), list(Way))
      .describe('With --ways: for each short limit, by its id, what closes it, cheapest first.')
      .optional(),
  })
  .meta({ id: 'shot' });

export const PlanReply = z
  .strictObject({
    schema: z.literal(PLAN_SCHEMA),
    title: z.string(),
    problems: list(Problem).describe('In the order of the text.'),
    shots: list(Shot).describe('All shots in their order, or with --shot that one.'),
    margins: list(Margin).describe('Limits of the whole shoot, also with --shot.'),
    matches: list(Match).describe('Plates and elements, also with --shot.'),
    references: list(z.strictObject({ shotId: z.string(), what: z.string(), because: z.string() })).describe(
      'Reference rolls owed before the first take of a shot, in the order of the shots.',
    ),
    totals: z
      .strictObject({
        screenTime_s: z.number(),
        takeCount: z.int(),
        keptSize_B: z.number(),
        saveTime_s: z.number(),
        shortCount: z.int(),
        tightCount: z.int(),
        unknownCount: z.int(),
      })
      .describe('Of the whole shoot, also with --shot; limits are counted over the shots.'),
  })
  .meta({ title: 'Reply of longsecond plan --json' });

const Origin = z
  .discriminatedUnion('by', [
    z.strictObject({
      by: z.literal('law'),
      law: z.string(),
      title: z.string(),
      equation: z.string(),
      sources: list(z.string().describe('Key of docs/sources.yaml.')),
      refused: z.string().optional(),
    }),
    z.strictObject({ by: z.literal('choice'), says: z.string() }),
    z.strictObject({
      by: z.literal('document'),
      path: Path,
      spread: z.number().optional(),
      says: z.string().optional(),
    }),
    z.strictObject({ by: z.literal('assumption'), why: z.string(), path: Path, spread: z.number().optional() }),
  ])
  .describe('What gave the number. A spread is half the width of its band, in the unit of the number.')
  .meta({ id: 'origin' });

const Trace = z
  .strictObject({
    name: z.string(),
    title: z.string(),
    value: z.number().describe('Absent where it is not known.').optional(),
    unit: z.string().describe(UNIT),
    origin: Origin,
    get inputs() {
      return list(Trace);
    },
  })
  .describe('One number and what it was made from, down to what somebody wrote.')
  .meta({ id: 'trace' });

export const TraceReply = z
  .strictObject({
    schema: z.literal(TRACE_SCHEMA),
    shot: z.string(),
    traces: list(Trace).describe(
      'One for a number asked by its name, two for a limit: what there is and what is needed.',
    ),
  })
  .meta({ title: 'Reply of longsecond plan --explain --json' });

export const DayReply = dayReplySchema({ Missing, Assumption, Path, Problem });

export const LightReply = lightReplySchema({ Missing, Settings, State, Operation, Path });

/** JSON Schemas of the replies by the name of their file. */
export function replySchemas(): Readonly<Record<string, object>> {
  const of = (reply: z.ZodType): object =>
    z.toJSONSchema(reply, {
      override: ({ jsonSchema }) => {
        // Keys may be added within a major version, so a reader must let unknown ones pass.
        delete jsonSchema.additionalProperties;
        // Every reply is only read: the mark would say nothing.
        delete jsonSchema.readOnly;
      },
    });
  return { plan: of(PlanReply), trace: of(TraceReply), day: of(DayReply), light: of(LightReply), flicker: of(FlickerReply), measure: of(MeasureReply) }; // prettier-ignore
}
