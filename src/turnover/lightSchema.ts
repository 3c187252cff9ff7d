/**
 * The form of the reply to `longsecond light --json`: a photometric file, or the set-ups of a shoot with lamps found for
 * them. Within one major version keys may be added; none is removed, renamed or changed in meaning.
 */
import * as z from 'zod';

export const LIGHT_SCHEMA = 'longsecond.light/1';

interface Parts {
  readonly Missing: z.ZodType;
  readonly Settings: z.ZodType;
  readonly State: z.ZodType;
  readonly Operation: z.ZodType;
  readonly Path: z.ZodType<string>;
}

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const KIND = z.enum(['illuminance', 'luminance']);

const Figure = z
  .strictObject({ value: z.number(), low: z.number(), high: z.number() })
  .describe('A figure with its band: low to high holds eight cases in ten.');

const View = z.strictObject({ azimuth_deg: z.number(), elevation_deg: z.number() }).meta({ id: 'view' });

const Angles = z.strictObject({ c0_deg: z.number().optional(), c90_deg: z.number().optional() });

const Photometric = z
  .strictObject({
    name: z.string(),
    format: z.string(),
    symmetry: z.string(),
    planeCount: z.int(),
    gammaCount: z.int(),
    flux_lm: z.number().describe('Summed over all directions.'),
    ratedFlux_lm: z.number().describe('Of its lamps, as the file states it.').optional(),
    inputPower_W: z.number().optional(),
    efficacy_lm_per_W: z.number().optional(),
    peak: z.strictObject({ intensity_cd: z.number(), plane_deg: z.number(), gamma_deg: z.number() }),
    onAxis_cd: z.number(),
    beam: Angles.describe('Full angle down to half of the peak.'),
    field: Angles.describe('Full angle down to a tenth.'),
    opening: z.strictObject({ shape: z.string(), width_m: z.number(), length_m: z.number(), height_m: z.number() }),
    pointFrom_m: z.number().describe('From here on it may be taken for a point, to one per cent.'),
    labels: list(z.strictObject({ keyword: z.string(), text: z.string() })),
    notices: list(z.strictObject({ code: z.string(), what: z.string(), line: z.int().optional() })),
  })
  .describe('What a photometric file comes to.')
  .meta({ id: 'photometricFile' });

function answerSchema({ State, Operation }: Parts) {
  const Placed = z.strictObject({
    id: z.string().describe('It stands in the set-up under this id once the patch is made.'),
    lamp: z.string(),
    title: z.string(),
    isHired: z.boolean(),
    at: z.strictObject({ right_m: z.number(), away_m: z.number(), up_m: z.number() }),
    distance_m: z.number(),
    levelFraction: z.number(),
    floodFraction: z.number().optional(),
    power_W: z.number().optional(),
    illuminance_lx: z.number(),
  });
  const Lit = z
    .strictObject({
      shotId: z.string(),
      title: z.string(),
      kind: KIND,
      light: Figure,
      need: z.number(),
      stops: Figure,
      state: State,
      thenShort: list(z.string()).describe('Limits that are short once its free settings are chosen anew.'),
    })
    .describe('What it gives one shot, planned again; figures in lx or cd/m² by kind.');
  return z
    .strictObject({
      patch: list(Operation),
      placed: list(Placed),
      raised: list(z.strictObject({ id: z.string(), levelFraction: z.number() })),
      shots: list(Lit),
      reaches: z.boolean().describe('Every shot has the spare that was asked for.'),
      power_W: z.number().optional(),
      heat_W_per_m2: z.number(),
      lampCount: z.int(),
      hirePrice: z.number().describe('A day of what is hired.').optional(),
      toHire: list(z.strictObject({ lamp: z.string(), title: z.string(), pieceCount: z.int() })),
      keyToFillRatio: z.number().optional(),
      says: z.string(),
      notices: list(z.string()),
      cautions: list(z.strictObject({ key: z.string(), says: z.string() })),
      isProven: z.boolean().describe('The solver proved that nothing costs less.'),
    })
    .meta({ id: 'lightAnswer' });
}

function foundSchema(parts: Parts) {
  const Answer = answerSchema(parts);
  const Need = z.strictObject({
    shotId: z.string(),
    title: z.string(),
    kind: KIND,
    need: z.number(),
    view: View,
    settings: parts.Settings,
    fieldWidth_m: z.number().optional(),
    fieldHeight_m: z.number().optional(),
  });
  const Unknown = z.strictObject({ shotId: z.string(), title: z.string(), says: z.string(), missing: list(parts.Missing) }); // prettier-ignore
  return z
    .strictObject({
      needs: z.strictObject({ needs: list(Need), unknown: list(Unknown) }),
      answers: list(Answer).describe('Best first by the wish.'),
      closest: Answer.describe('Where none reaches: what comes nearest.').optional(),
      says: list(z.string()),
    })
    .describe('With --find: lamps for what the shots need.');
}

function setupSchema(parts: Parts) {
  const { State, Path } = parts;
  const Lamp = z.strictObject({
    id: z.string(),
    title: z.string(),
    isOff: z.boolean(),
    illuminance_lx: z.number().optional(),
    shareFraction: z.number().optional(),
    distance_m: z.number().optional(),
    levelFraction: z.number(),
    power_W: z.number().optional(),
  });
  const Flag = z.strictObject({
    id: z.string(),
    title: z.string(),
    isOff: z.boolean(),
    taken_lx: z.number().describe('Off the light at the subject.').optional(),
    hidesFace: z.boolean().describe('The camera would see a glowing face behind the subject without it.'),
  });
  const Shot = z
    .strictObject({
      id: z.string(),
      title: z.string(),
      state: State,
      have: z.number().optional(),
      need: z.number().optional(),
      kind: z.string(),
      stops: Figure.optional(),
      missing: list(z.strictObject({ title: z.string(), path: Path })),
      figures: z.string(),
    })
    .describe('The margin of light of one shot; figures in lx or cd/m² by kind.');
  return z
    .strictObject({
      id: z.string(),
      title: z.string(),
      from: z.enum(['metered', 'stated', 'lamps', 'nothing']).describe('Where the light that plans use comes from.'),
      view: View,
      illuminance_lx: Figure.optional(),
      luminance_cd_per_m2: Figure.optional(),
      power_W: z.number().optional(),
      lamps: list(Lamp),
      flags: list(Flag).describe('What keeps light off.').optional(),
      shots: list(Shot),
      lacks: list(z.strictObject({ title: z.string(), path: Path, what: z.string().optional() })),
      notices: list(z.string()),
      cautions: list(z.string()),
      found: foundSchema(parts).optional(),
    })
    .meta({ id: 'setup' });
}

/** The form, around those that other replies share. */
export function lightReplySchema(parts: Parts) {
  const schema = z.literal(LIGHT_SCHEMA);
  return z
    .union([
      z.strictObject({ schema, file: Photometric }),
      z.strictObject({ schema, setups: list(setupSchema(parts)).describe('All set-ups, or with --setup that one.') }),
    ])
    .meta({ title: 'Reply of longsecond light --json' });
}
