/** What takes of a shot teach of its event: how long, how fast and how far it really was, in place of the library's figure. */
import { sayList } from '../../base/sayList.ts';
import { showNumber } from '../../base/quantity.ts';
import { writtenValueAt } from '../../document/patch.ts';
import { readShoot } from '../../document/read.ts';
import type { Written } from '../../document/written.ts';
import {
  eventFiguresOf,
  type EventFigure,
  type EventFigureName,
  type EventReading,
} from '../../measure/learn/eventFigures.ts';
import { explain } from '../../plan/explain.ts';
import { planShoot } from '../../plan/plan.ts';
import type { PatchOperation } from '../../plan/types.ts';
import { pixelSize_m, plannedShot } from '../measureAgainst.ts';
import type { MeasuredClip } from '../measureReply.ts';
import { isSynthetic, learning, notePatch, SYNTHETIC_NOTICE, type Learning, type LearntChange } from './learnt.ts';
import { withoutSpread, withSpread, type Figured } from './sayFigure.ts';

export interface LearnEventGiven {
  readonly written: Written;
  readonly shotId: string;
  readonly clips: readonly Pick<MeasuredClip, 'name' | 'measurement' | 'isWhole'>[];
  /** YYYY-MM-DD. */
  readonly date: string;
}

interface Field {
  readonly title: string;
  readonly kind: Figured['kind'];
  /** Its name in the plan. */
  readonly planned: string;
  readonly takesSpread: boolean;
}

const FIELDS: Readonly<Record<EventFigureName, Field>> = {
  duration: { title: 'Duration of the action', kind: 'time', planned: 'actionTime_s', takesSpread: true },
  speed: { title: 'Speed across the picture', kind: 'speed', planned: 'speed_m_per_s', takesSpread: true },
  width: { title: 'Width it reaches', kind: 'length', planned: 'reachWidth_m', takesSpread: false },
  height: { title: 'Height it reaches', kind: 'length', planned: 'reachHeight_m', takesSpread: false },
};

/** A figure that may be off by more than this share of itself is told too loosely to plan with. */
const MOST_LOOSE = 0.5;

const asFigured = ({ name, value, spread }: EventFigure): Figured => ({ kind: FIELDS[name].kind, value, spread });

/** What the plan takes now, and where from. */
function plannedFigure(written: Written, shotId: string, { planned, kind }: Field): Pick<LearntChange, 'before' | 'says'> {
  const trace = explain(readShoot(written).shoot, shotId, planned);
  if (trace?.value === undefined) return { before: '', says: '' };
  const { origin } = trace;
  if (origin.by === 'assumption') return { before: withoutSpread({ kind, value: trace.value, spread: 0 }), says: origin.why };
  const text = origin.by === 'document' ? writtenValueAt(written, origin.path) : undefined;
  const before = typeof text === 'string' ? text : withoutSpread({ kind, value: trace.value, spread: 0 });
  return { before, says: origin.by === 'document' ? 'as written' : '' };
} // prettier-ignore

const changeOf = (written: Written, shotId: string, figure: EventFigure): LearntChange => {
  const field = FIELDS[figure.name];
  return {
    path: `/shots/${shotId}/action/${figure.name}`,
    title: field.title,
    ...plannedFigure(written, shotId, field),
    after: field.takesSpread ? withSpread(asFigured(figure)) : withoutSpread(asFigured(figure)),
  };
};

function sayFigure(figure: EventFigure): string {
  const { title } = FIELDS[figure.name];
  const takes = figure.clips.length;
  const how = takes === 1 ? 'one take; give or take what it may be off' : `the middle of ${takes} takes; eight in ten lie this far either way`; // prettier-ignore
  return `${title}: ${withSpread(asFigured(figure))}, ${how}.`;
}

/** Why figures were not taken, the same reason once for all its clips. */
function leftOutWords({ leftOut }: EventReading): readonly string[] {
  const reasons = new Map<string, string[]>();
  for (const { name, clip, why } of leftOut) {
    const key = `${FIELDS[name].title}|${why}`;
    reasons.set(key, [...(reasons.get(key) ?? []), clip]);
  }
  return [...reasons].map(([key, clips]) => `${key.slice(0, key.indexOf('|'))} is not taken from ${sayList(clips)}: ${key.slice(key.indexOf('|') + 1)}.`);
} // prettier-ignore

/** The edit that puts measured figures in the place of those the shot was planned with. */
export function learnEvent({ written, shotId, clips, date }: LearnEventGiven): Learning {
  const { shoot } = readShoot(written);
  const plan = planShoot(shoot).shots.find(({ id }) => id === shotId);
  if (!plan) return { ok: false, notices: [], refusal: { code: 'learn.unknown-shot', what: `There is no shot "${shotId}"`, mend: `The shots are ${sayList(Object.keys(shoot.shots).slice(0, 40))}.` } }; // prettier-ignore
  const planned = plannedShot(shoot, plan);
  const reading = eventFiguresOf(clips.map(({ name, measurement }) => ({ name, measurement, pixel_m: pixelSize_m(planned, measurement) })));
  const loose = reading.figures.filter(({ value, spread }) => spread > MOST_LOOSE * value);
  const figures = reading.figures.filter((figure) => !loose.includes(figure));
  const names = clips.map(({ name }) => name);
  const { fieldWidth_m } = planned;
  const notices = [
    ...(isSynthetic(names) ? [SYNTHETIC_NOTICE] : []),
    ...leftOutWords(reading),
    ...loose.map((figure) => `${FIELDS[figure.name].title} comes to ${withSpread(asFigured(figure))}, too loosely to plan with.`),
    ...(fieldWidth_m !== undefined && figures.some(({ name }) => name !== 'duration') ? [`Lengths go by the width that the picture was planned to show, ${showNumber(1000 * fieldWidth_m, 3)} mm: read a ruler in the picture where it may be another.`] : []),
    ...(clips.some(({ isWhole }) => !isWhole) ? ['Of some clips only a part was looked at.'] : []),
  ];
  if (figures.length === 0) return { ok: false, notices, refusal: { code: 'learn.nothing-measured', what: 'None of the clips shows the action from its beginning to its end, or how fast and how far it goes', mend: 'Take the whole action, with some stillness before and after it.' } };
  const rates = [...new Set(clips.map(({ measurement }) => measurement.frameRate_fps))].sort((a, b) => a - b);
  const changes = figures.map((figure) => changeOf(written, shotId, figure));
  const synthetic = isSynthetic(names) ? ' SYNTHETIC.' : '';
  const note = `Measured ${date} from ${sayList(names)} at ${sayList(rates.map((rate) => showNumber(rate, 5)))} fps: ${sayList(changes.map(({ title, after }) => `${title.charAt(0).toLowerCase()}${title.slice(1)} ${after}`))}.${synthetic}`;
  const patch = [...changes.map(({ path, after }): PatchOperation => ({ op: 'add', path, value: after })), notePatch(written, `/shots/${shotId}/note`, note)];
  return learning(written, {
    kind: 'event',
    summary: `${plan.title}: ${sayList(figures.map(({ name }) => name))} as measured`,
    says: figures.map(sayFigure),
    notices,
    cautions: [],
    changes,
    patch,
  });
} // prettier-ignore
