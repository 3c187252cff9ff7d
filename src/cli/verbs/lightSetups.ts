/** The light of a shoot by set-up, as `longsecond light` tells of it. */
import { showQuantity, showSigned, type UnitSystem } from '../../base/quantity.ts';
import type { Shoot } from '../../document/schema.ts';
import { viewOf, withDefaults } from '../../plan/givens.ts';
import { flagTakes } from '../../plan/flagTakes.ts';
import { lightOfSetup, type SetupLight, type View } from '../../plan/lighting.ts';
import { correctionSaid, meteredLight } from '../../plan/meter.ts';
import { planShot } from '../../plan/planShot.ts';
import type { Figure, MarginState } from '../../plan/types.ts';
import type { LightAnswer } from '../../solve/lightAnswer.ts';
import type { LightFound } from '../../solve/findLight.ts';
import { lightMargin, shotsLitBy } from '../../solve/lightNeeds.ts';
import { onOneLine, padded, wrapped, type Ink } from '../../turnover/lines.ts';
import { marginWords, said } from '../../turnover/words.ts';

/** One set-up in the form of `longsecond.light/1`. */
export interface SetupReply {
  readonly id: string;
  readonly title: string;
  /** Where the light that plans use comes from. */
  readonly from: 'metered' | 'stated' | 'lamps' | 'nothing';
  readonly view: View;
  /** As the lamps give it on the surface that counts, P10 to P90; absent while a lamp lacks something or none stands. */
  readonly illuminance_lx?: Figure;
  /** Of the face behind the subject. */
  readonly luminance_cd_per_m2?: Figure;
  readonly power_W?: number;
  readonly lamps: readonly { readonly id: string; readonly title: string; readonly isOff: boolean; readonly illuminance_lx?: number; readonly shareFraction?: number; readonly distance_m?: number; readonly levelFraction: number; readonly power_W?: number }[];
  /** Those that stand, with what each takes off the light at the subject; absent where there are none. */
  readonly flags?: readonly { readonly id: string; readonly title: string; readonly isOff: boolean; readonly taken_lx?: number; readonly hidesFace: boolean }[];
  readonly shots: readonly { readonly id: string; readonly title: string; readonly state: MarginState; readonly have?: number; readonly need?: number; readonly kind: string; readonly stops?: Figure; readonly missing: readonly { readonly title: string; readonly path: string }[]; readonly figures: string }[];
  readonly lacks: readonly { readonly title: string; readonly path: string; readonly what?: string }[];
  readonly notices: readonly string[];
  readonly cautions: readonly string[];
  readonly found?: LightFound;
} // prettier-ignore

const band = (value: number, spread: number): Figure => ({ value, low: value - spread, high: value + spread });

function figuresOf({ illuminance_lx, spread_lx, luminance, lamps }: SetupLight): Partial<SetupReply> {
  const powers = lamps.filter(({ isOff }) => !isOff).map(({ power_W }) => power_W);
  const isKnown = Number.isFinite(illuminance_lx) && lamps.length > 0;
  return {
    ...(isKnown ? { illuminance_lx: band(illuminance_lx, spread_lx) } : {}),
    ...(luminance ? { luminance_cd_per_m2: band(luminance.luminance_cd_per_m2, luminance.spread_cd_per_m2) } : {}),
    ...(lamps.length > 0 && powers.every((power) => power !== undefined)
      ? { power_W: powers.reduce((sum, power) => sum + power, 0) }
      : {}),
  };
}

/** A set-up as its first shot sees it; as from in front where it lights none. */
export function setupReply(shoot: Shoot, id: string, found: LightFound | undefined): SetupReply {
  const setup = shoot.lighting[id]!;
  const shotIds = shotsLitBy(shoot, id);
  const plans = shotIds.map((shotId) => planShot(shoot, shotId, 1));
  const view = shotIds.length > 0 ? viewOf(withDefaults(shoot, shotIds[0]!).shot) : { azimuth_deg: 0, elevation_deg: 0 };
  const light = lightOfSetup(shoot, id, view);
  const isRead = setup.illuminance_lx !== undefined || setup.luminance_cd_per_m2 !== undefined;
  return {
    id,
    title: setup.title ?? id,
    from: isRead ? (setup.reading === 'metered' ? 'metered' : 'stated') : light.lamps.length > 0 ? 'lamps' : 'nothing',
    view,
    ...figuresOf(light),
    lamps: light.lamps.map(({ id: lampId, title, isOff, illuminance_lx, shareFraction, distance_m, power_W }) => ({
      id: lampId, title, isOff, levelFraction: setup.lamps[lampId]!.levelFraction ?? 1,
      ...(Number.isFinite(illuminance_lx) ? { illuminance_lx } : {}), ...(Number.isFinite(shareFraction) ? { shareFraction } : {}), ...(Number.isFinite(distance_m) ? { distance_m } : {}),
      ...(power_W === undefined ? {} : { power_W }),
    })),
    ...(light.flags.length === 0 ? {} : { flags: light.flags.map(({ id: flagId, title, isOff }) => {
      const { taken_lx, hidesFace } = flagTakes({ shoot, setupId: id, flagId, view });
      return { id: flagId, title, isOff, hidesFace, ...(Number.isFinite(taken_lx) ? { taken_lx } : {}) };
    }) }),
    shots: plans.flatMap((plan) => {
      const margin = lightMargin(plan);
      if (!margin) return [];
      const { state, have, need, kind, stops, missing } = margin;
      return [{ id: plan.id, title: plan.title, state, kind, ...(have === undefined ? {} : { have }), ...(need === undefined ? {} : { need }), ...(stops ? { stops } : {}), missing: missing.map(({ title, path }) => ({ title, path })), figures: marginWords(margin, shoot.shoot.units ?? 'metric').figures }];
    }),
    lacks: light.lacks.map(({ title, path, what }) => ({ title, path, ...(what === undefined ? {} : { what }) })),
    notices: [
      ...meteredLight(shoot, id, view).meters.map(({ kind, stops }) => `The ${kind} that was read counts; plans and maps take ${kind === 'illuminance' ? 'the lamps' : 'the face behind'} ${correctionSaid({ stops })}`),
      ...light.lamps.flatMap(({ notices }) => notices),
    ],
    cautions: [...new Set(plans.flatMap(({ cautions }) => cautions.filter(({ key }) => key === 'intense-light' || key === 'heat').map(({ says }) => says)))],
    ...(found ? { found } : {}),
  };
} // prettier-ignore

const FROM: Readonly<Record<SetupReply['from'], string>> = {
  metered: 'read on the set: the reading counts, the lamps are beside it',
  stated: 'intended, not yet read: the figure counts, the lamps are beside it',
  lamps: 'worked out from its lamps',
  nothing: 'no lamp and no reading yet',
};

const MARKS: Readonly<Record<MarginState, string>> = { short: '!', tight: '~', unknown: '?', spare: ' ' };

const percent = (share: number): string => `${Math.round(share * 100)} %`;

interface Page {
  readonly ink: Ink;
  readonly system: UnitSystem;
}

function quantity({ system }: Page, kind: 'illuminance' | 'luminance' | 'length' | 'power', value: number): string {
  return said(showQuantity(kind, value, { system, digits: 2 }));
}

function bandWords(page: Page, kind: 'illuminance' | 'luminance', { value, low, high }: Figure): string {
  return `${quantity(page, kind, value)}, ${quantity(page, kind, Math.max(0, low))} to ${quantity(page, kind, high)}`;
}

/** A set-up for eyes. */
export function setupLines(reply: SetupReply, page: Page): readonly string[] {
  const { ink } = page;
  const { illuminance_lx, luminance_cd_per_m2, power_W, lamps, flags = [], shots, lacks, notices, cautions, view, found } = reply;
  const from = `${FROM[reply.from]}; seen from ${Math.round(view.azimuth_deg)}°, ${Math.round(view.elevation_deg)}° up`;
  const name = Math.max(0, ...[...lamps, ...flags].map(({ title }) => onOneLine(title).length));
  const shotName = Math.max(0, ...shots.map(({ title }) => onOneLine(title).length));
  return [
    `${ink.strong(onOneLine(reply.title))}  ${ink.faint(reply.id)}`,
    ...wrapped(from, 3),
    ...lamps.map((lamp) => `   ${padded(onOneLine(lamp.title), name)}  ${lampWords(page, lamp)}`),
    ...flags.map((flag) => `   ${padded(onOneLine(flag.title), name)}  ${flagSaid(page, flag)}`),
    ...(illuminance_lx ? [`   ${ink.strong('Together')} ${bandWords(page, 'illuminance', illuminance_lx)}${power_W === undefined ? '' : `, ${quantity(page, 'power', power_W)}`}`] : []),
    ...(luminance_cd_per_m2 ? [`   ${ink.strong('Behind the subject')} ${bandWords(page, 'luminance', luminance_cd_per_m2)}`] : []),
    ...shots.map((shot) => ` ${ink[shot.state](`${MARKS[shot.state]} ${padded(onOneLine(shot.title), shotName)}`)}  ${shotWords(shot)}`),
    ...(shots.length === 0 ? ['   It lights no shot.'] : []),
    ...lacks.flatMap(({ title, path, what }) => wrapped(onOneLine(`Missing: ${title}${what === undefined ? '' : `: ${what}`}, at ${path}`), 3, 5)),
    ...notices.flatMap((says) => wrapped(onOneLine(`Note: ${says.replace(/\.$/, '')}.`), 3, 5)),
    ...cautions.flatMap((says) => wrapped(onOneLine(`Take care: ${says}`), 3, 5)),
    ...(found ? ['', ...foundLines(reply.id, found, page)] : []),
  ].map((line) => line.trimEnd());
} // prettier-ignore

function lampWords(page: Page, lamp: SetupReply['lamps'][number]): string {
  const { isOff, illuminance_lx, shareFraction, distance_m, levelFraction, power_W } = lamp;
  if (isOff) return 'off';
  const light = illuminance_lx === undefined ? 'unknown' : quantity(page, 'illuminance', illuminance_lx);
  return [
    light,
    ...(shareFraction === undefined ? [] : [percent(shareFraction)]),
    ...(distance_m === undefined ? [] : [`at ${quantity(page, 'length', distance_m)}`]),
    ...(levelFraction < 1 ? [`level ${percent(levelFraction)}`] : []),
    ...(power_W === undefined ? [] : [quantity(page, 'power', power_W)]),
  ].join(', ');
}

function flagSaid(page: Page, { isOff, taken_lx, hidesFace }: NonNullable<SetupReply['flags']>[number]): string {
  if (isOff) return 'flag, taken away';
  const light = taken_lx === undefined ? 'what it takes is unknown' : taken_lx > 0 ? `takes ${quantity(page, 'illuminance', taken_lx)}` : 'takes nothing at the subject';
  return `flag, ${light}${hidesFace ? ', and hides the face behind' : ''}`;
} // prettier-ignore

function shotWords({ state, figures, stops, missing }: SetupReply['shots'][number]): string {
  if (!stops) return `unknown: ${missing.map(({ title }) => onOneLine(title)).join(', ') || 'no answer'}`;
  return `${figures}, ${showSigned(stops.value)} stops (${showSigned(stops.low)} to ${showSigned(stops.high)}), ${state}`;
}

/** What was found, with what to write. */
function foundLines(setupId: string, { answers, closest, says }: LightFound, page: Page): readonly string[] {
  const { ink } = page;
  const answer = (of: LightAnswer, head: string) => [
    ...wrapped(`${head} ${onOneLine(of.says)}`, 3, 6),
    ...wrapped(sumWords(page, of), 6),
    ...of.shots.map(({ title, kind, light, need, stops, thenShort }) => `      ${onOneLine(title)}: ${quantity(page, kind, light.value)} for ${quantity(page, kind, need)}, ${showSigned(stops.value)} stops (${showSigned(stops.low)} to ${showSigned(stops.high)})${thenShort.length > 0 ? `; then short: ${thenShort.join(', ').toLowerCase()}` : ''}`),
    ...of.notices.flatMap((words) => wrapped(onOneLine(`Note: ${words}`), 6, 8)),
    ...yamlLines(setupId, of).map((line) => `      ${ink.faint(line)}`),
  ];
  const cautions = [...new Set([...answers, ...(closest ? [closest] : [])].flatMap((of) => of.cautions.map((caution) => caution.says)))];
  return [
    ...answers.flatMap((of, i) => answer(of, `${i + 1}.`)),
    ...says.flatMap((words) => wrapped(onOneLine(words), 3, 5)),
    ...(closest ? answer(closest, 'Closest:') : []),
    ...cautions.flatMap((words) => wrapped(onOneLine(`Take care: ${words}`), 3, 5)),
  ];
} // prettier-ignore

function sumWords(page: Page, { power_W, heat_W_per_m2, toHire, hirePrice, keyToFillRatio, lampCount }: LightAnswer): string {
  const hire = toHire.map(({ title, pieceCount }) => `${pieceCount} × ${onOneLine(title)}`).join(', ');
  return [
    lampCount === 1 ? '1 lamp' : `${lampCount} lamps`,
    ...(power_W === undefined ? [] : [`${quantity(page, 'power', power_W)} in all`]),
    `${Math.round(heat_W_per_m2)} W/m² on the subject`,
    ...(keyToFillRatio === undefined ? [] : [`key to fill ${keyToFillRatio.toFixed(1)}`]),
    hire === '' ? 'all here' : `to hire: ${hire}${hirePrice === undefined ? ', no price written' : `, ${hirePrice} a day`}`,
  ].join('; ');
} // prettier-ignore

const isPlain = (value: unknown): value is string | number => typeof value === 'string' || typeof value === 'number';

/** A place has commas, which would end the value in a map on one line. */
const quoted = (value: string | number): string => (String(value).includes(',') ? `'${value}'` : String(value));

/** What to write and to take out, as YAML under the set-up. */
export function yamlLines(setupId: string, { patch }: Pick<LightAnswer, 'patch'>): readonly string[] {
  const start = `/lighting/${setupId}/`;
  const keys = (path: string) => path.slice(start.length).replaceAll('/', ': ');
  const removed = patch.flatMap(({ op, path }) => (op === 'remove' && path.startsWith(start) ? [`take out lighting: ${setupId}: ${keys(path)}`] : []));
  const levels = patch.flatMap((of) => (of.op === 'add' && isPlain(of.value) ? [`lighting: ${setupId}: ${keys(of.path)}: ${of.value}`] : []));
  const lamps = patch.flatMap((of) => {
    const id = new RegExp(`^${start}lamps/([^/]+)$`).exec(of.path)?.[1];
    if (of.op !== 'add' || id === undefined || typeof of.value !== 'object' || of.value === null) return [];
    const values = Object.entries(of.value).flatMap(([key, value]: [string, unknown]) => (isPlain(value) ? [`${key}: ${quoted(value)}`] : []));
    return [`      ${id}: { ${values.join(', ')} }`];
  });
  return [...removed, ...levels, ...(lamps.length > 0 ? ['lighting:', `  ${setupId}:`, '    lamps:', ...lamps] : [])];
} // prettier-ignore
