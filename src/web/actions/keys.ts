/** Keys matched to actions, and the fields that keep their keys to themselves. */
import type { Action, ActionState } from './action.ts';

/** What of a keyboard event is looked at. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
  readonly isComposing?: boolean;
  readonly defaultPrevented?: boolean;
}

/**
 * Where a key was pressed: in a field that takes text, in something open over the page, on a button or link, on something
 * else that has keys of its own, or on the page.
 */
export type Pressed = 'text' | 'overlay' | 'button' | 'control' | 'page';

interface ElementLike {
  readonly tagName: string;
  readonly isContentEditable?: boolean;
  readonly type?: unknown;
  readonly closest?: (selector: string) => unknown;
}

/** Inputs in which a letter means nothing. */
const LETTERLESS = new Set(['button', 'checkbox', 'color', 'file', 'image', 'radio', 'range', 'reset', 'submit']);

const OVERLAYS = '[role="dialog"],[role="alertdialog"],[role="menu"],[role="listbox"]';

const BUTTONS = 'button,a[href],summary';
const CONTROLS = 'input,[role="slider"],[role="radio"],[role="application"],[role="tab"],[role="region"][tabindex]';

export function placeOfPress(target: ElementLike | null): Pressed {
  if (!target) return 'page';
  const tag = target.tagName.toLowerCase();
  const isField = tag === 'textarea' || tag === 'select' || (tag === 'input' && !LETTERLESS.has(String(target.type)));
  if (isField || target.isContentEditable === true) return 'text';
  if (target.closest?.(OVERLAYS)) return 'overlay';
  if (target.closest?.(CONTROLS)) return 'control';
  return target.closest?.(BUTTONS) ? 'button' : 'page';
}

/** Keys that whatever has the focus may use itself. */
const isOwn = (key: string, at: Pressed): boolean =>
  (key === ' ' && (at === 'button' || at === 'control')) || (key.startsWith('Arrow') && at === 'control');

interface Combination {
  readonly isMod: boolean;
  readonly isShift: boolean;
  readonly key: string;
}

function read(combination: string): Combination {
  const parts = combination.split('+');
  return { isMod: parts.includes('Mod'), isShift: parts.includes('Shift'), key: parts.at(-1)!.toLowerCase() };
}

/** A key that is one character, pressed alone: speech input and slips set it off, so it can be turned off. */
export function isSingleKey(combination: string): boolean {
  const { isMod, key } = read(combination);
  return !isMod && key.length === 1;
}

export function isPressed(combination: string, press: KeyPress): boolean {
  const { isMod, isShift, key } = read(combination);
  if (press.altKey || (press.ctrlKey || press.metaKey) !== isMod) return false;
  if (press.key.toLowerCase() !== (key === 'space' ? ' ' : key)) return false;
  // A sign such as ? comes with or without Shift, as the keyboard has it.
  return /^([a-z]|arrow.*|space)$/.test(key) ? press.shiftKey === isShift : true;
}

/** The action a key press asks for, if any: none in text fields, which undo and everything else belong to. */
export function actionFor(
  actions: readonly Action[],
  press: KeyPress,
  { at, state, maySingle }: { readonly at: Pressed; readonly state: ActionState; readonly maySingle: boolean },
): Action | undefined {
  if (at === 'text' || at === 'overlay' || isOwn(press.key, at)) return undefined;
  if (press.isComposing === true || press.defaultPrevented === true) return undefined;
  return actions.find(
    ({ keys, when }) =>
      keys.some((combination) => isPressed(combination, press) && (maySingle || !isSingleKey(combination))) &&
      when(state),
  );
}

const DRAWN: Readonly<Record<string, string>> = { ArrowLeft: '←', ArrowRight: '→' };

/** "Ctrl Z" or "⌘Z": a combination as the person's keyboard has it. */
export function sayKeys(combination: string, isMac: boolean): string {
  return combination
    .split('+')
    .map((part) => (part === 'Mod' ? (isMac ? '⌘' : 'Ctrl') : (DRAWN[part] ?? part)))
    .join(isMac ? '' : ' ');
}
