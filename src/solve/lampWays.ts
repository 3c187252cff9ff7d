/** Ways to close a short light margin that a search among all lamps of the kit finds, beside those the plan knows itself. */
import { Fault } from '../base/fault.ts';
import type { Shoot } from '../document/schema.ts';
import type { Written } from '../document/written.ts';
import { planShot } from '../plan/planShot.ts';
import type { Way } from '../plan/types.ts';
import { lampSetupOf } from '../plan/ways/lampSetup.ts';
import { alsoLights, LAMP_SEARCH } from '../plan/ways/move.ts';
import { waysAmong, type Proposed } from '../plan/ways/ways.ts';
import { say } from '../plan/ways/words.ts';
import { findLight, type FindLight } from './findLight.ts';
import { counted, type LightAnswer } from './lightAnswer.ts';
import { lightMargin } from './lightNeeds.ts';

/** More of them would hide the plan's own. */
const MOST_WAYS = 3;

export interface LampWays extends Pick<FindLight, 'loadHighs' | 'onProgress' | 'isCancelled'> {
  readonly shoot: Shoot;
  /** What the shoot was read from: patches are made on it. */
  readonly written: Written;
  readonly shotId: string;
}

const CARE: Readonly<Record<string, string>> = {
  electricity: 'whoever holds the licence says what its circuit carries',
  'intense-light': 'nobody looks into it',
  heat: 'mind its heat on the set',
};

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

function proposed({ shoot, shotId }: LampWays, setupId: string, answer: LightAnswer): Proposed {
  const { placed, raised, power_W, hirePrice, toHire, patch, cautions } = answer;
  const { lamps } = shoot.lighting[setupId]!;
  const titleOf = (id: string) => lamps[id]?.title ?? shoot.kit.lamps[lamps[id]?.lamp ?? '']?.title ?? id;
  const up = raised.map(({ id, levelFraction }) => `bring ${titleOf(id)} up to ${Math.round(levelFraction * 100)} %`);
  const added = placed.length === 0 ? [] : [`add ${counted(placed.map(({ title }) => title))}`];
  const from = [...new Set(placed.map(({ distance_m }) => say('length', distance_m)))].join(' and ');
  const hire = hirePrice === undefined ? 'no price written' : `${hirePrice} a day`;
  const says = [
    ...(from === '' ? [] : [`from ${from}`]),
    power_W === undefined ? 'power not written' : `${say('power', power_W)} in all`,
    ...(toHire.length === 0 ? [] : [`to hire, ${hire}`]),
    ...cautions.flatMap(({ key }) => CARE[key] ?? []),
  ].join('; ');
  return {
    move: LAMP_SEARCH,
    title: capital([...added, ...up].join(', and ')),
    says: `${says}${alsoLights({ shoot, shotId }, setupId)}`,
    patch,
    // Lamps are carried, rigged and plugged: half a stop of effort each, no source.
    gives_stops: (placed.length + raised.length) / 2,
    touchesFixed: patch.some(({ op }) => op === 'remove'),
  };
}

/**
 * The lamps that a search finds for a shot short of light, as ways planned again in full; none where its set-up is not lit
 * by lamps or was read on the set. Throws Fault `solve.failed`.
 */
export async function lampWays(asked: LampWays): Promise<readonly Way[]> {
  const { shoot, written, shotId, loadHighs, onProgress, isCancelled } = asked;
  const setupId = lampSetupOf(shoot, shotId);
  if (setupId === undefined || lightMargin(planShot(shoot, shotId, 1))?.state !== 'short') return [];
  const isPowerWritten = Object.values(shoot.kit.lamps).some(({ power_W }) => power_W !== undefined);
  try {
    const { answers } = await findLight({
      shoot,
      written,
      setupId,
      shots: [shotId],
      wish: isPowerWritten ? 'least-power' : 'fewest',
      mostAnswers: MOST_WAYS,
      loadHighs,
      ...(onProgress ? { onProgress } : {}),
      ...(isCancelled ? { isCancelled } : {}),
    });
    const changing = answers.filter(({ placed, raised }) => placed.length + raised.length > 0);
    const changes = changing.map((answer) => proposed(asked, setupId, answer));
    return waysAmong(shoot, written, shotId, 'light', changes);
  } catch (error) {
    // What stands there cannot be worked out: the margin says what is missing.
    if (error instanceof Fault && error.code === 'light.lamp-lacks') return [];
    throw error;
  }
}
