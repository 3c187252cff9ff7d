/**
 * Finding light: which lamps, where and at which level, so that every shot of a set-up has what it needs. A solver
 * chooses; the plan, made again with the patch, decides. Deterministic, and never writes anything itself.
 */
import { Fault } from '../base/fault.ts';
import type { Lamp, Shoot } from '../document/schema.ts';
import type { Position } from '../document/shape.ts';
import type { Written } from '../document/written.ts';
import { lightOfSetup, withSetup } from '../plan/lighting.ts';
import { candidatesOf, handOf, USUAL_BOUNDS, worthTrying, type Candidate, type PlaceBounds } from './lampPlaces.ts';
import { chosenOf, kindOf, leastProblem, levelsProblem, nearestProblem, type Choice, type Chosen, type LampCost, type Likeness, type Raisable, type RatioWanted, type Unlike, type Wish } from './lampProgram.ts'; // prettier-ignore
import { answerOf, efficacyOfLamp_lm_per_W, sayLight, shortfallOf, shortTitles, trialOf, type LightAnswer, type Setting, type Trial } from './lightAnswer.ts'; // prettier-ignore
import { lightNeeds, type LightNeed, type LightNeeds } from './lightNeeds.ts';
import { solveProblem, type LoadHighs, type Solver } from './milp.ts';

export interface FindLight {
  readonly shoot: Shoot;
  /** What the shoot was read from: patches are made on it. */
  readonly written: Written;
  readonly setupId: string;
  /** Only these of the shots that it lights; left out, all of them. */
  readonly shots?: readonly string[];
  readonly bounds?: PlaceBounds;
  readonly wish: Wish;
  /** Light on the key side over that on the fill side, as the first camera sees left and right. */
  readonly keyToFillRatio?: number;
  /** Spare at the low end of the band; 0 left out. */
  readonly spare_stops?: number;
  /** Whether lamps that stand in the set-up stay; true left out. */
  readonly keepStanding?: boolean;
  /** `MOST_ANSWERS` left out. */
  readonly mostAnswers?: number;
  readonly loadHighs: LoadHighs;
  readonly onProgress?: (done: number, total: number) => void;
  readonly isCancelled?: () => boolean;
}

export interface LightFound {
  readonly needs: LightNeeds;
  /** Different lamps or sides, best first by the wish; those that need no hire alone where there are such. */
  readonly answers: readonly LightAnswer[];
  /** Where none reaches: what comes nearest. */
  readonly closest?: LightAnswer;
  /** What is missing, and what was left aside, a sentence each. */
  readonly says: readonly string[];
}

export const MOST_ANSWERS = 5;

/** Rounds of raising what the solver is asked for until the plan has its spare. */
const MOST_ROUNDS = 5;

/** A hair above, so that a target met to the solver's tolerance is met. */
const HAIR_stops = 2e-3;

interface Kit {
  readonly here: readonly string[];
  readonly hire: readonly string[];
  readonly costs: ReadonlyMap<string, LampCost>;
  readonly says: readonly string[];
}

function kitOf({ shoot, setupId, wish, keepStanding = true }: FindLight): Kit {
  const standing = Object.values(shoot.lighting[setupId]!.lamps);
  const costs = new Map<string, LampCost>();
  const [here, hire, says]: string[][] = [[], [], []];
  for (const [id, lamp] of Object.entries(shoot.kit.lamps)) {
    const title = lamp.title ?? id;
    const isHired = lamp.availability === 'hire';
    const used = keepStanding ? standing.filter((placed) => placed.lamp === id).length : 0;
    const pieceCount = Math.max(0, (lamp.pieceCount ?? 1) - used);
    if (lamp.availability === 'unwanted' || lamp.unread?.includes('availability') || pieceCount === 0) continue;
    if (lacksFor(wish, lamp, isHired)) {
      says!.push(`${title} is left aside: ${wish === 'least-money' ? 'no price of a day' : 'no power'} is written for it.`);
      continue;
    }
    (isHired ? hire! : here!).push(id);
    costs.set(id, { pieceCount, isHired, power_W: lamp.power_W ?? NaN, efficacy_lm_per_W: efficacyOfLamp_lm_per_W(lamp), dayPrice: lamp.dayPrice ?? NaN });
  }
  return { here: here!, hire: hire!, costs, says: says! };
} // prettier-ignore

/** Shares that were read of the lamps as they stand. */
function sharesSaid({ shoot, setupId, keepStanding = true }: FindLight): readonly string[] {
  if (!keepStanding) return [];
  const read = Object.entries(shoot.lighting[setupId]!.lamps).filter(([, { isOff, shareFraction = 0 }]) => isOff !== true && shareFraction > 0);
  return read.map(([id, { title, lamp }]) => `${title ?? shoot.kit.lamps[lamp ?? '']?.title ?? id} is taken to keep the share of the light that was read of it: read that again beside other lamps.`);
} // prettier-ignore

const lacksFor = (wish: Wish, { power_W, dayPrice }: Lamp, isHired: boolean): boolean =>
  (wish === 'least-power' && power_W === undefined) || (wish === 'least-money' && isHired && dayPrice === undefined);

/** What stays, for each need: light, and lamps behind that may be turned up. */
interface Standing {
  readonly gives: readonly number[];
  readonly raisable: readonly Raisable[];
  /** Views before which a lit face stands already: another would hide behind it. */
  readonly faces: readonly boolean[];
  readonly key_lx: (hand: -1 | 1) => number;
}

function standingIn({ shoot, setupId, keepStanding = true }: FindLight, needs: readonly LightNeed[], ratioNeed: number): Standing {
  const lights = needs.map(({ view }) => lightOfSetup(shoot, setupId, view));
  const { lacks = [], flags = [] } = lights[0] ?? {};
  const [ofFlag] = flags.flatMap((flag) => flag.lacks);
  const lack = ofFlag ?? (keepStanding ? lacks[0] : undefined);
  if (lack)
    throw new Fault({
      code: 'light.lamp-lacks',
      what: `A ${ofFlag ? 'flag' : 'lamp'} that stands in the set-up cannot be worked out: ${lack.title} is ${lack.isUnread ? 'written, but cannot be read' : (lack.what ?? 'missing')}`,
      where: lack.path,
      mend: ofFlag ? 'Write it, or take the flag away.' : 'Write it, or let the lamps that stand there be replaced.',
    });
  if (!keepStanding) return { gives: needs.map(() => 0), raisable: [], faces: needs.map(() => false), key_lx: () => 0 };
  const seen = lights.map(({ luminance }) => luminance);
  const raisableIds = [...new Set(needs.flatMap(({ kind }, i) => (kind === 'luminance' && seen[i] ? [seen[i].lamp] : [])))];
  const raisable = raisableIds.flatMap((id): readonly Raisable[] => {
    const { levelFraction = 1 } = shoot.lighting[setupId]!.lamps[id]!;
    if (!(levelFraction < 1 && levelFraction > 0)) return [];
    const gives = needs.map(({ kind }, i) => (kind === 'luminance' ? (seen[i]?.lamp === id ? seen[i].luminance_cd_per_m2 : 0) : lights[i]!.lamps.find((lamp) => lamp.id === id)!.illuminance_lx) / levelFraction);
    const power_W = shoot.kit.lamps[shoot.lighting[setupId]!.lamps[id]!.lamp ?? '']?.power_W ?? NaN;
    return [{ id, levelFraction, gives, power_W }];
  });
  const gives = needs.map(({ kind }, i) => {
    const all = kind === 'luminance' ? (seen[i]?.luminance_cd_per_m2 ?? 0) : lights[i]!.illuminance_lx;
    return all - raisable.reduce((sum, { gives: full, levelFraction }) => sum + full[i]! * levelFraction, 0);
  });
  const key_lx = (hand: -1 | 1) =>
    lights[ratioNeed]?.lamps.reduce((sum, { id, illuminance_lx }) => {
      const { at } = shoot.lighting[setupId]!.lamps[id]!;
      return sum + (at && handOf(at, needs[0]!) === hand ? illuminance_lx : 0);
    }, 0) ?? 0;
  return { gives, raisable, faces: seen.map((luminance) => luminance !== undefined), key_lx };
} // prettier-ignore

interface Search {
  readonly asked: FindLight;
  readonly needs: readonly LightNeed[];
  readonly solver: Solver;
  readonly setting: Setting;
  readonly choice: Omit<Choice, 'targets' | 'unlike'>;
}

const targetsOf = ({ needs, setting }: Search): readonly number[] =>
  needs.map(({ need }) => need * 2 ** setting.spare_stops);

const handIn =
  ({ needs }: Search) =>
  (at: Position): number =>
    handOf(at, needs[0]!);

interface Reached {
  readonly trial: Trial;
  readonly targets: readonly number[];
}

/** One answer by a solver's optimum, its targets raised until the plan has the spare; undefined where nothing does. */
function reached(search: Search, unlike: Choice['unlike'], from: readonly number[]): Reached | undefined {
  const { solver, setting } = search;
  let targets = from;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const choice: Choice = { ...search.choice, targets, unlike };
    const solution = solveProblem(solver, leastProblem(choice));
    if (solution.is === 'impossible') return undefined;
    const dimmed = solveProblem(solver, levelsProblem(choice, solution.values));
    const { values } = dimmed.is === 'found' ? dimmed : solution;
    const trial = trialOf(setting, chosenOf(choice, values), solution.isProven);
    if (trial.reaches) return { trial, targets };
    targets = raisedBy(trial, targets, setting.spare_stops);
    if (!targets.every(Number.isFinite)) return undefined;
  }
  return undefined;
}

/** Targets raised above what was reached, by what the low end of each band still lacks. */
const raisedBy = ({ shots }: Trial, targets: readonly number[], spare_stops: number): readonly number[] =>
  targets.map((target, i) => {
    const { light, stops } = shots[i]!;
    const lack_stops = spare_stops - stops.low;
    return lack_stops > 0 ? Math.max(target, light.value) * 2 ** (lack_stops + HAIR_stops) : target;
  });

/** What lamps further down the list are first asked for: nearly what the best one had to be. */
const EASED = 2 ** -0.02;

/** An answer's lamps, of which a later answer must have fewer. */
const unlikeTo = ({ placed }: Chosen, by: Likeness): Unlike => ({ by, kinds: new Set(placed.map(({ candidate }) => kindOf(candidate, by))), count: placed.length }); // prettier-ignore

/** Up to so many answers: first each of other lamps than those before, then the same lamps on other sides. */
function answersOf(search: Search): readonly LightAnswer[] {
  const found: Reached[] = [];
  const { onProgress, isCancelled = () => false, mostAnswers = MOST_ANSWERS } = search.asked;
  let targets = targetsOf(search);
  for (const by of ['lamp', 'side'] as const)
    while (found.length < mostAnswers && !isCancelled()) {
      const unlike = found.map(({ trial }) => unlikeTo(trial.chosen, by));
      // What stands already was enough, and nothing is unlike nothing.
      if (unlike.some(({ count }) => count === 0)) break;
      const next = reached(search, unlike, targets);
      if (!next) break;
      found.push(next);
      onProgress?.(found.length, mostAnswers);
      targets = targetsOf(search).map((least, i) => Math.max(least, found[0]!.targets[i]! * EASED));
    }
  return found.map(({ trial }) => answerOf(search.setting, trial, handIn(search)));
}

/** What an answer costs by the wish: lower is better. */
export function costOf({ power_W = Infinity, heat_W_per_m2, lampCount, hirePrice = Infinity, toHire }: LightAnswer, wish: Wish): readonly number[] {
  const hired = toHire.reduce((sum, { pieceCount }) => sum + pieceCount, 0);
  switch (wish) {
    case 'least-power':
      return [hired, power_W];
    case 'least-heat':
      return [hired, heat_W_per_m2, power_W];
    case 'fewest':
      return [hired, lampCount, power_W];
    case 'least-money':
      return [hirePrice, power_W];
  }
} // prettier-ignore

function cheaperFirst(wish: Wish) {
  return (a: LightAnswer, b: LightAnswer): number => {
    const [one, other] = [costOf(a, wish), costOf(b, wish)];
    for (let i = 0; i < one.length; i += 1) if (one[i] !== other[i]) return one[i]! < other[i]! ? -1 : 1;
    return 0;
  };
}

/** What comes nearest to every need, the low end of its band counted; undefined where the rows cannot be kept at all. */
function nearestOf(search: Search): LightAnswer | undefined {
  const { spare_stops } = search.setting;
  let best: Trial | undefined;
  let targets = targetsOf(search);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const choice: Choice = { ...search.choice, targets, unlike: [] };
    const solution = solveProblem(search.solver, nearestProblem(choice));
    if (solution.is === 'impossible') break;
    const trial = trialOf(search.setting, chosenOf(choice, solution.values), solution.isProven);
    if (best && worst(trial) <= worst(best)) break;
    best = trial;
    targets = raisedBy(trial, targets, spare_stops);
    if (trial.reaches || !targets.every(Number.isFinite)) break;
  }
  return best && answerOf(search.setting, best, handIn(search));
}

const HANDS = [-1, 1] as const;

function requireAsked({ shoot, setupId, keyToFillRatio, spare_stops = 0 }: FindLight): void {
  if (!Object.hasOwn(shoot.lighting, setupId))
    throw new Fault({ code: 'light.unknown-setup', what: `There is no set-up "${setupId}"`, where: `/lighting/${setupId}`, mend: 'Name one of the set-ups of this shoot.' });
  if (keyToFillRatio !== undefined && !(keyToFillRatio >= 1 && keyToFillRatio <= 64)) throw new RangeError(`keyToFillRatio must be from 1 to 64, got ${keyToFillRatio}`);
  if (!(spare_stops >= 0 && spare_stops <= 10)) throw new RangeError(`spare_stops must be from 0 to 10, got ${spare_stops}`);
} // prettier-ignore

/**
 * Finds lamps for a set-up. Throws Fault `light.unknown-setup`, `light.lamp-lacks` where a lamp that stays cannot be
 * worked out, `solve.failed`; RangeError for bounds, a ratio or a spare without meaning.
 */
export async function findLight(asked: FindLight): Promise<LightFound> {
  requireAsked(asked);
  const { shoot, written, setupId, bounds = USUAL_BOUNDS, wish, keyToFillRatio, spare_stops = 0, keepStanding = true } = asked;
  const found = lightNeeds(shoot, setupId, asked.shots);
  const { needs } = found;
  const says = found.unknown.map(({ title, says: why }) => `${title} is left aside. ${why}`);
  if (needs.length === 0) return { needs: found, answers: [], says: says.length > 0 ? says : ['No shot is lit by this set-up.'] };
  const kit = kitOf(asked);
  says.push(...kit.says, ...sharesSaid(asked));
  const ratioNeed = needs.findIndex(({ kind }) => kind === 'illuminance');
  const standing = standingIn(asked, needs, ratioNeed);
  const solver = await asked.loadHighs();
  const cleared = withSetup(shoot, setupId, ({ illuminance_lx: _e, luminance_cd_per_m2: _l, ...rest }) => rest);
  const setting: Setting = { shoot, written, setupId, needs, shortNow: needs.map(({ shotId }) => shortTitles(shoot, shotId)), isKept: keepStanding, spare_stops };
  const asItStands = answerOf(setting, trialOf(setting, { placed: [], raised: [] }, true), (at) => handOf(at, needs[0]!));
  if (asItStands.reaches && keyToFillRatio === undefined) return { needs: found, answers: [asItStands], says };
  const searches = (lamps: readonly string[]): readonly Search[] => {
    const all = candidatesOf({ shoot: cleared, setupId, needs, bounds, lamps });
    const isOfUse = ({ gives }: Candidate) => !gives.some((value, i) => value > 0 && needs[i]!.kind === 'luminance' && standing.faces[i]);
    const candidates = worthTrying(all.filter(isOfUse), { isDimmingOfUse: keyToFillRatio !== undefined });
    const hands = keyToFillRatio === undefined || ratioNeed < 0 ? [undefined] : HANDS;
    return hands.map((keyHand): Search => {
      const ratio: RatioWanted | undefined = keyHand === undefined ? undefined : { keyToFillRatio: keyToFillRatio!, keyHand, need: ratioNeed, standingKey_lx: standing.key_lx(keyHand), standingFill_lx: standing.key_lx(keyHand === 1 ? -1 : 1) };
      return { asked, needs, solver, setting: keyHand === undefined ? setting : { ...setting, keyHand }, choice: { candidates, costs: kit.costs, raisable: standing.raisable, wish, standing: standing.gives, ...(ratio ? { ratio } : {}) } };
    }).filter(({ choice }) => choice.candidates.length + choice.raisable.length > 0);
  };
  for (const lamps of kit.hire.length > 0 ? [kit.here, [...kit.here, ...kit.hire]] : [kit.here]) {
    const answers = searches(lamps).flatMap(answersOf).sort(cheaperFirst(wish)).slice(0, asked.mostAnswers ?? MOST_ANSWERS);
    if (answers.length > 0) return { needs: found, answers, says };
  }
  const nearest = [asItStands, ...searches([...kit.here, ...kit.hire]).flatMap((search) => nearestOf(search) ?? [])].sort((a, b) => worst(b) - worst(a))[0]!;
  return { needs: found, answers: [], ...(Number.isFinite(worst(nearest)) ? { closest: nearest } : {}), says: [...says, ...missingWords(nearest, needs, spare_stops, keyToFillRatio)] };
} // prettier-ignore

const worst = ({ shots }: Pick<Trial, 'shots'>): number => Math.min(...shots.map(({ stops }) => stops.low));

function missingWords(closest: LightAnswer, needs: readonly LightNeed[], spare_stops: number, ratio: number | undefined): readonly string[] {
  const without = ratio === undefined ? [] : ['Without the ratio of key to fill more may be within reach.'];
  const nothing = needs.some(({ kind }) => kind === 'luminance')
    ? 'No lamp here or to hire has a glowing face that fills the picture from behind within these places, and only such a face lights a shot that is lit through.'
    : 'No lamp here or to hire can be worked out, stand within these places out of the picture, and light it from edge to edge.';
  const lack = shortfallOf(closest, spare_stops);
  if (!lack || !Number.isFinite(lack.lack_stops)) return [nothing, ...without];
  const { worst: shot, lack_stops } = lack;
  const light = `${sayLight(shot.kind, shot.light.value)} for ${sayLight(shot.kind, shot.need)}`;
  const short = `the low end of its band is ${lack_stops < 0.1 ? 'less than 0.1' : lack_stops.toFixed(1)} stops short, ${sayLight(shot.kind, lack.lack)}`;
  const isAsItStands = closest.placed.length === 0 && closest.raised.length === 0;
  return [
    ...(isAsItStands ? [nothing, `As it stands ${shot.title} has ${light}: ${short}.`] : [`Nothing here or to hire reaches it. The closest gives ${shot.title} ${light}: ${short}.`]),
    ...without,
  ];
} // prettier-ignore
