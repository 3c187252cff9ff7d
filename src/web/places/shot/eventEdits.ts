/** The event of a shot's action as it stands, and the edits that choose it, set its figures, take them over, drop it. */
import type { KindName } from '../../../base/kinds.ts';
import { parseQuantity, showQuantity, type Shown, type UnitSystem } from '../../../base/quantity.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { isRecord, type Written } from '../../../document/written.ts';
import type { EventFigures } from '../../../laws/events/event.ts';
import type { InputField } from '../../../laws/law.ts';
import { parameterKey, parameterValue } from '../../../plan/events.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { numberWords, said } from '../../../turnover/words.ts';
import type { Checked } from '../../parts/QuantityField.tsx';
import { clearingPatch, type Holder } from './shotEdits.ts';

export interface FoundEvent {
  /** As written, whether or not the library has it. */
  readonly id: string;
  readonly holder: Holder;
  /** JSON Pointer of the action that holds it. */
  readonly path: string;
  /** Figures as written, by their written keys. */
  readonly parameters: Readonly<Record<string, string>>;
}

function parametersAt(written: Written, path: string): Record<string, string> {
  const found = writtenValueAt(written, `${path}/parameters`);
  if (!isRecord(found)) return {};
  return Object.fromEntries(
    Object.entries(found).flatMap(([key, value]) =>
      typeof value === 'string' || typeof value === 'number' ? [[key, String(value)]] : [],
    ),
  );
}

/** The event that a shot's action names, in the shot or else in the defaults; figures go with the event they were written for. */
export function findEvent(written: Written, shotId: string): FoundEvent | undefined {
  const holders = [
    { holder: 'shot', path: `/shots/${shotId}/action` },
    { holder: 'defaults', path: '/defaults/action' },
  ] as const;
  for (const { holder, path } of holders) {
    const id = writtenValueAt(written, `${path}/event`);
    if (id === undefined || id === null || typeof id === 'object') continue;
    const own = parametersAt(written, holders[0].path);
    const parameters = Object.keys(own).length > 0 ? own : parametersAt(written, path);
    return { id: String(id), holder, path, parameters };
  }
  return undefined;
}

/** Names an event in the shot; figures of another one are cleared. */
export function choosingPatch(written: Written, shotId: string, id: string): readonly PatchOperation[] {
  const own = `/shots/${shotId}/action`;
  if (writtenValueAt(written, `${own}/event`) === id) return [];
  return [...clearingPatch(written, [`${own}/parameters`]), { op: 'add', path: `${own}/event`, value: id }];
}

/** Takes the event out of the shot, with its figures. */
export function droppingPatch(written: Written, shotId: string): readonly PatchOperation[] {
  const own = `/shots/${shotId}/action`;
  return clearingPatch(written, [`${own}/event`, `${own}/parameters`]);
}

/** Writes one figure of the event into the shot, or takes it away when the text is empty. */
export function parameterPatch(written: Written, shotId: string, key: string, text: string): readonly PatchOperation[] {
  const own = `/shots/${shotId}/action`;
  const found = findEvent(written, shotId);
  const body = text.trim();
  const { [key]: before, ...others } = found?.parameters ?? {};
  if (body === '' && before === undefined) return [];
  const next = body === '' ? others : { ...others, [key]: body };
  // What only the defaults say comes along, so that changing one figure leaves the rest as they were.
  if (found?.holder === 'defaults')
    return [
      { op: 'add', path: `${own}/event`, value: found.id },
      { op: 'add', path: `${own}/parameters`, value: next },
    ];
  if (body !== '') return [{ op: 'add', path: `${own}/parameters/${key}`, value: body }];
  return clearingPatch(written, [Object.keys(next).length === 0 ? `${own}/parameters` : `${own}/parameters/${key}`]);
}

/** A figure of an event in the unit people say it in. */
export function showParameter({ name, kind }: InputField, value: number, system: UnitSystem): Shown {
  return numberWords({ name, value, kind, system });
}

/** A bare number given the unit that stood there before, or that the default is shown in. Anything else is left as typed. */
export function completeParameter(field: InputField, text: string, before: string, system: UnitSystem): string {
  const body = text.trim();
  if (field.kind === undefined || !/^[+\-−]?\d+(\.\d+)?$/.test(body)) return body;
  const unit = /[^\d\s./+\-−].*$/.exec(before.trim())?.[0];
  const shown = typeof field.default === 'number' ? showParameter(field, field.default, system).unit : '';
  const whole = `${body} ${unit ?? shown}`.trim();
  return parseQuantity(field.kind, whole).ok ? whole : body;
}

/** What a typed text would be read as; empty is fine, and leaves the figure to the library. */
export function checkParameter(field: InputField, text: string, before: string, system: UnitSystem): Checked {
  if (text.trim() === '') return { ok: true };
  const whole = completeParameter(field, text, before, system);
  const read = parameterValue(field, whole);
  if ('why' in read) return { ok: false, why: read.why };
  return whole === text.trim() ? { ok: true } : { ok: true, says: `read as ${whole}` };
}

/** The JSON Pointer, in the shot, of a figure of its event. */
export const parameterPointer = (shotId: string, name: string): string =>
  `/shots/${shotId}/action/parameters/${parameterKey(name)}`;

/** What an event fills in where nobody wrote it, by the key of the action that would hold it. */
export const FILLED = {
  'action/duration': { figure: 'duration_s', kind: 'time' },
  'action/speed': { figure: 'speed_m_per_s', kind: 'speed' },
  'action/width': { figure: 'reachWidth_m', kind: 'length' },
  'action/height': { figure: 'reachHeight_m', kind: 'length' },
  'action/towardsLens': { figure: 'reachTowardsLens_m', kind: 'length' },
} as const satisfies Readonly<Record<string, { readonly figure: keyof EventFigures; readonly kind: KindName }>>;

export const isFilled = (key: string): key is keyof typeof FILLED => Object.hasOwn(FILLED, key);

/** A worked-out figure as a person would write it down: three digits. */
export function figureWords(kind: KindName, value: number, system: UnitSystem): string {
  return said(showQuantity(kind, value, { digits: 3, system }));
}

/** Keys that are taken over as plain values. */
const TAKEN = ['action/duration', 'action/speed'] as const;

/**
 * Writes the worked-out duration and speed into the shot, where they stay as the person's own whatever the event says
 * later. Empty when both stand there already.
 */
export function takingPatch(written: Written, shotId: string, figures: EventFigures, system: UnitSystem): readonly PatchOperation[] {
  return TAKEN.flatMap((key) => {
    const { figure, kind } = FILLED[key];
    const path = `/shots/${shotId}/${key}`;
    const value = figureWords(kind, figures[figure], system);
    return writtenValueAt(written, path) === value ? [] : [{ op: 'add', path, value } as const];
  });
} // prettier-ignore

/** How far the usual figures lie apart: "1.5 to 5 m/s". The smaller takes the unit of the larger where they differ little. */
export function spanWords(kind: KindName, { low, high }: { readonly low: number; readonly high: number }, system: UnitSystem = 'metric'): string {
  const [from, to] = [low, high].map((value) => showQuantity(kind, value, { digits: 2, system })) as [Shown, Shown];
  if (from.number === to.number && from.unit === to.unit) return said(to);
  return from.unit === to.unit ? `${from.number} to ${said(to)}` : `${said(from)} to ${said(to)}`;
} // prettier-ignore
