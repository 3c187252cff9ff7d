/** The event that a shot's action names: the figures it stands for, where the person has not written better ones. */
import { nearestName } from '../base/nearest.ts';
import { parseQuantity } from '../base/quantity.ts';
import { parseRational, ratioOf } from '../base/rational.ts';
import { unitSuffix } from '../base/kinds.ts';
import type { Problem } from '../document/problem.ts';
import type { Shoot, Shot } from '../document/schema.ts';
import { EVENTS, eventNamed } from '../laws/events/catalogue.ts';
import { parametersOf, type EventFigures, type FilmedEvent } from '../laws/events/event.ts';
import type { InputField } from '../laws/law.ts';

type Action = Shot['action'];

/** What is wrong with an action's event: where, below the action, and in words. */
export interface EventProblem {
  readonly at: string;
  readonly code: Problem['code'];
  readonly what: string;
  readonly near?: string;
}

export interface EventReading {
  readonly event?: FilmedEvent;
  /** Absent while a parameter cannot be read, or a law refuses them. */
  readonly figures?: EventFigures;
  /** How far speed and duration usually are from the figure, P10 to P90, as half a band. */
  readonly spread?: { readonly speed_m_per_s: number; readonly duration_s: number };
  readonly problems: readonly EventProblem[];
}

/** How a parameter of an event is written in a shoot: its name without the unit. */
export function parameterKey(name: string): string {
  const unit = unitSuffix(name);
  return unit === '' ? name : name.slice(0, -unit.length - 1);
}

/** Once somebody has set an event's figures, what the laws make of them is this near. */
const RECKONED_RATIO = 0.2;

/** The event of an action worked out; undefined where none is named. Never throws. */
export function eventOf(action: Action): EventReading | undefined {
  const { event: id, parameters } = action;
  if (id === undefined) return undefined;
  let reading = readings.get(action);
  if (!reading) readings.set(action, (reading = readEvent(id, parameters)));
  return reading;
}

/** Kept with the action they were worked out for: a shot asks for its event in several places, and a page at every key. */
const readings = new WeakMap<Action, EventReading>();

function readEvent(id: string, parameters: Action['parameters']): EventReading {
  const event = eventNamed(id);
  if (!event) {
    const ids = EVENTS.map((each) => each.id);
    const near = nearestName(id, ids);
    const what = `Found "${id}", expected an event of the library: ${ids.join(', ')}`;
    return { problems: [{ at: 'event', code: 'choice.unknown', what, ...(near === undefined ? {} : { near }) }] };
  }
  const { given, problems } = readParameters(event, parameters);
  if (problems.length > 0) return { event, problems };
  try {
    const figures = event.compute(given);
    return { event, figures, spread: spreadOf(event, figures, Object.keys(given).length > 0), problems };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { event, problems: [{ at: 'parameters', code: 'value.refused', what: `${event.title}: ${error.message}` }] };
  }
}

function spreadOf({ typical }: FilmedEvent, figures: EventFigures, isSet: boolean) {
  if (isSet)
    return {
      speed_m_per_s: figures.speed_m_per_s * RECKONED_RATIO,
      duration_s: figures.duration_s * RECKONED_RATIO,
    };
  const half = ({ low, high }: { readonly low: number; readonly high: number }) => (high - low) / 2;
  return { speed_m_per_s: half(typical.speed_m_per_s), duration_s: half(typical.duration_s) };
}

function readParameters(event: FilmedEvent, written: Action['parameters']) {
  const fields = new Map(parametersOf(event).map((field) => [parameterKey(field.name), field]));
  const given: Record<string, number> = {};
  const problems: EventProblem[] = [];
  for (const [key, text] of Object.entries(written)) {
    const at = `parameters/${key}`;
    const field = fields.get(key);
    if (!field) {
      const near = nearestName(key, [...fields.keys()]);
      const what = `Found "${key}", expected a figure of ${event.title}: ${[...fields.keys()].join(', ')}`;
      problems.push({ at, code: 'key.unknown', what, ...(near === undefined ? {} : { near }) });
      continue;
    }
    const value = parameterValue(field, text);
    if ('why' in value) problems.push({ at, code: 'quantity.unreadable', what: `Found "${text}": ${value.why}` });
    else given[field.name] = value.value;
  }
  return { given, problems };
}

/** The value of a parameter as somebody wrote it, in its own unit, or why it cannot be read. */
export function parameterValue(
  { kind, as }: Pick<InputField, 'kind' | 'as'>,
  text: string,
): { readonly value: number } | { readonly why: string } {
  if (kind) {
    const parsed = parseQuantity(kind, text);
    return parsed.ok ? { value: parsed.value } : { why: parsed.why };
  }
  const percent = /^\s*([\d.]+)\s*%\s*$/.exec(text);
  const plain = percent ? Number(percent[1]) / 100 : undefined;
  const ratio = plain ?? numberOf(text);
  if (ratio === undefined) return { why: as === 'count' ? 'expected a whole number' : 'expected a number, such as 0.5, 1/2 or 50 %' };
  if (as === 'count' && !Number.isInteger(ratio)) return { why: 'expected a whole number' };
  return { value: ratio };
} // prettier-ignore

function numberOf(text: string): number | undefined {
  const rational = parseRational(text.trim());
  if (rational.ok) return ratioOf(rational.value);
  const value = Number(text.trim());
  return text.trim() !== '' && Number.isFinite(value) ? value : undefined;
}

/** Problems of every event named in a shoot, at the keys that hold them. */
export function eventProblems(shoot: Shoot): readonly Problem[] {
  const holders = [
    { path: '/defaults/action', action: shoot.defaults.action },
    ...Object.entries(shoot.shots).map(([id, { action }]) => ({ path: `/shots/${id}/action`, action })),
  ];
  return holders.flatMap(({ path, action }) => {
    const own = action.event === undefined ? undefined : eventOf(action);
    return (own?.problems ?? []).map(({ at, code, what, near }) => ({
      path: `${path}/${at}`,
      code,
      what,
      ...(near === undefined ? {} : { near }),
    }));
  });
}
