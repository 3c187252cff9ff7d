/** What clips of a rig being fired teach of it: its latency and jitter, in place of what was written or is usual. */
import { sayList } from '../../base/sayList.ts';
import { showNumber } from '../../base/quantity.ts';
import { writtenValueAt } from '../../document/patch.ts';
import { readShoot } from '../../document/read.ts';
import type { Rig } from '../../document/schema.ts';
import type { Written } from '../../document/written.ts';
import { FEW_TAKES, rigTimesOf, type RigTimes } from '../../measure/learn/rigTimes.ts';
import { CAUTION_WORDS } from '../../plan/cautions.ts';
import { measuredJitterRatio, usualRig } from '../../plan/timing/usual.ts';
import type { MeasuredClip } from '../measureReply.ts';
import { isSynthetic, learning, notePatch, SYNTHETIC_NOTICE, type Learning, type LearntChange } from './learnt.ts';
import { withoutSpread, withSpread } from './sayFigure.ts';

export interface LearnRigGiven {
  readonly written: Written;
  readonly rigId: string;
  readonly clips: readonly Pick<MeasuredClip, 'name' | 'measurement'>[];
  /** YYYY-MM-DD. */
  readonly date: string;
}

const time = (value: number, spread: number): string => withoutSpread({ kind: 'time', value, spread });

/** What the plan takes of the rig now, and where from. */
function before(written: Written, path: string, rig: Rig, key: 'latency' | 'jitter'): Pick<LearntChange, 'before' | 'says'> {
  const text = writtenValueAt(written, `${path}/${key}`);
  if (typeof text === 'string') return { before: text, says: rig.isMeasured === true ? 'measured before' : 'as written' };
  const usual = usualRig(rig.kind)?.[key === 'latency' ? 'latency_s' : 'jitter_s'];
  return usual ? { before: time(usual.value, usual.spread), says: usual.why } : { before: '', says: '' };
} // prettier-ignore

function jitterWords({ jitter_s, jitterLow_s, jitterHigh_s, isJitterTold, takes }: RigTimes): string {
  if (!isJitterTold) return `Jitter: too small to be told at these frame rates; no more than ${time(jitter_s, jitter_s)}, one standard deviation, and that is what is taken.`; // prettier-ignore
  return `Jitter: ${time(jitter_s, jitter_s)}, one standard deviation; with ${takes.length} takes it may be anything from ${time(jitterLow_s, jitterLow_s)} to ${time(jitterHigh_s, jitterHigh_s)} in eight cases of ten.`; // prettier-ignore
}

function noticesOf({ takes, leftOut, latency_s, quantised_s }: RigTimes): readonly string[] {
  const far = takes.filter(({ isFar }) => isFar);
  const off = far.map(({ name, latency_s: own }) => `${name} lies ${time(Math.abs(own - latency_s), quantised_s)} ${own > latency_s ? 'late' : 'early'}`); // prettier-ignore
  return [
    ...(takes.length < FEW_TAKES ? [`${takes.length} takes are few: ${FEW_TAKES} or more tell a spread, thirty to an eighth.`] : []),
    ...(far.length > 0 ? [`${sayList(off)}, far from the others, and counts all the same. Where it misfired, leave it out.`] : []),
    ...leftOut.map(({ name, why }) => `${name} is left out: ${why}.`),
    'Counted from the light that shows the firing to the first movement that can be seen: a slow start is seen late.',
    `The plan takes the jitter as known to ${showNumber(100 * measuredJitterRatio(takes.length), 2)} %, as ${takes.length} takes tell it.`,
  ];
} // prettier-ignore

/** What is said before anybody fires anything again. */
const RIG_CAUTIONS = [CAUTION_WORDS['moving-rigs']!, 'Longsecond fires nothing. A rig that was measured is no reason to stand nearer: local codes, the maker’s instructions and the person responsible on the set come first.']; // prettier-ignore

/** The edit that writes a rig’s latency and jitter as clips show them. */
export function learnRig({ written, rigId, clips, date }: LearnRigGiven): Learning {
  const { shoot } = readShoot(written);
  const rig = Object.hasOwn(shoot.kit.rigs, rigId) ? shoot.kit.rigs[rigId] : undefined;
  if (!rig) return { ok: false, notices: [], refusal: { code: 'learn.unknown-rig', what: `There is no rig "${rigId}"`, mend: Object.keys(shoot.kit.rigs).length === 0 ? 'The kit has no rigs yet.' : `The rigs are ${sayList(Object.keys(shoot.kit.rigs).slice(0, 40))}.` } };
  const names = clips.map(({ name }) => name);
  const synthetic = isSynthetic(names) ? [SYNTHETIC_NOTICE] : [];
  const reading = rigTimesOf(clips);
  if (!reading.ok) return { ok: false, refusal: reading.refusal, notices: [...synthetic, ...reading.leftOut.map(({ name, why }) => `${name}: ${why}.`)] };
  const times = reading.rig;
  const { takes, latency_s, latencyReach_s, jitter_s, ninetieth_s, isJitterTold } = times;
  const latency = withSpread({ kind: 'time', value: latency_s, spread: latencyReach_s });
  const jitter = time(jitter_s, jitter_s);
  const rates = [...new Set(takes.map(({ frameRate_fps }) => frameRate_fps))].sort((a, b) => a - b);
  const path = `/kit/rigs/${rigId}`;
  const title = rig.title ?? rigId;
  const note = `Measured ${date} from ${takes.length} takes at ${sayList(rates.map((rate) => showNumber(rate, 5)))} fps (${sayList(takes.map(({ name }) => name))}): latency ${latency}, jitter ${isJitterTold ? '' : 'at most '}${jitter}, nine in ten by ${time(ninetieth_s, latencyReach_s)}.${synthetic.length > 0 ? ' SYNTHETIC.' : ''}`;
  return learning(written, {
    kind: 'rig',
    summary: `${title}: latency and jitter from ${takes.length} takes`,
    says: [
      `Latency of ${title}: ${latency}, the middle of ${takes.length} takes; eight times in ten the true middle lies this far either way.`,
      jitterWords(times),
      `Half of the takes have moved by ${time(latency_s, latencyReach_s)}, nine in ten by ${time(ninetieth_s, latencyReach_s)}.`,
    ],
    notices: [...synthetic, ...noticesOf(times)],
    cautions: RIG_CAUTIONS,
    changes: [
      { path: `${path}/latency`, title: `Latency of ${title}`, ...before(written, path, rig, 'latency'), after: latency },
      { path: `${path}/jitter`, title: `Jitter of ${title}`, ...before(written, path, rig, 'jitter'), after: jitter },
    ],
    patch: [
      { op: 'add', path: `${path}/latency`, value: latency },
      { op: 'add', path: `${path}/jitter`, value: jitter },
      { op: 'add', path: `${path}/measured`, value: true },
      { op: 'add', path: `${path}/firings`, value: takes.length },
      notePatch(written, `${path}/note`, note),
    ],
  });
} // prettier-ignore
