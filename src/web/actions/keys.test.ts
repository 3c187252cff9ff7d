import { describe, expect, test } from 'vitest';
import type { OpenShoot } from '../state/contract.ts';
import type { ActionState } from './action.ts';
import { ACTIONS } from './all.ts';
import { actionFor, isPressed, isSingleKey, placeOfPress, sayKeys, type KeyPress, type Pressed } from './keys.ts';
import type { PlayerKeys } from './player.ts';

const press = (key: string, more: Partial<KeyPress> = {}): KeyPress => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...more,
});

interface Page {
  readonly state: ActionState;
  readonly done: string[];
}

function page(shotId?: string): Page {
  const done: string[] = [];
  const open = {
    id: 'cup',
    plan: { shots: ['pour', 'crown', 'honey'].map((id) => ({ id })) },
    undoSummary: 'Stop',
    undo: () => done.push('undo'),
    redo: () => done.push('redo'),
  } as unknown as OpenShoot;
  const state: ActionState = {
    open,
    ...(shotId === undefined ? {} : { shotId }),
    go: (href) => done.push(href),
    nextTheme: () => done.push('theme'),
    toggleHelp: () => done.push('help'),
  };
  return { state, done };
}

const asked = (key: KeyPress, { state }: Page, at: Pressed = 'page', maySingle = true) =>
  actionFor(ACTIONS, key, { at, state, maySingle })?.id;

describe('keys', () => {
  test('undo is Control Z or Command Z, and never with Shift', () => {
    const it = page();
    expect(asked(press('z', { ctrlKey: true }), it)).toBe('undo');
    expect(asked(press('z', { metaKey: true }), it)).toBe('undo');
    expect(asked(press('Z', { ctrlKey: true, shiftKey: true }), it)).toBeUndefined();
    expect(asked(press('z'), it)).toBeUndefined();
  });

  test('an action that cannot be done now leaves its key alone', () => {
    expect(asked(press('y', { ctrlKey: true }), page())).toBeUndefined();
    expect(asked(press('n'), page())).toBeUndefined();
    expect(asked(press('n'), page('honey'))).toBeUndefined();
    expect(asked(press('p'), page('pour'))).toBeUndefined();
  });

  test('lead to the shots beside this one, and back to the Shoot', () => {
    const it = page('crown');
    for (const key of ['n', 'p', 's'])
      actionFor(ACTIONS, press(key), { at: 'page', state: it.state, maySingle: true })?.perform(it.state);
    expect(it.done).toEqual(['/cup/shot/honey', '/cup/shot/pour', '/cup']);
  });

  test('belong to a text field while one is typed in, undo included', () => {
    for (const key of [press('z', { ctrlKey: true }), press('n'), press('?'), press('t')])
      expect(asked(key, page('crown'), 'text')).toBeUndefined();
  });

  test('belong to whatever is open over the page', () => {
    expect(asked(press('n'), page('crown'), 'overlay')).toBeUndefined();
  });

  test('of one letter can be turned off, and those with Control stay', () => {
    expect(asked(press('n'), page('crown'), 'page', false)).toBeUndefined();
    expect(asked(press('?', { shiftKey: true }), page('crown'), 'page', false)).toBeUndefined();
    expect(asked(press('z', { ctrlKey: true }), page('crown'), 'page', false)).toBe('undo');
  });

  test('pressed while composing a character, or taken by somebody else, do nothing', () => {
    expect(asked(press('n', { isComposing: true }), page('crown'))).toBeUndefined();
    expect(asked(press('n', { defaultPrevented: true }), page('crown'))).toBeUndefined();
  });

  test('that come with Shift on some keyboards are known with and without it', () => {
    expect(isPressed('?', press('?', { shiftKey: true }))).toBe(true);
    expect(isPressed('?', press('?'))).toBe(true);
    expect(isPressed('N', press('N', { shiftKey: true }))).toBe(false);
    expect(isPressed('N', press('n', { altKey: true }))).toBe(false);
  });

  test('are said as the keyboard has them', () => {
    expect(sayKeys('Mod+Shift+Z', false)).toBe('Ctrl Shift Z');
    expect(sayKeys('Mod+Z', true)).toBe('⌘Z');
  });
});

test('fields that take text are told from controls that do not', () => {
  const place = (tagName: string, more: object = {}) => placeOfPress({ tagName, ...more });
  expect(place('INPUT', { type: 'text' })).toBe('text');
  expect(place('TEXTAREA')).toBe('text');
  expect(place('SELECT')).toBe('text');
  expect(place('DIV', { isContentEditable: true })).toBe('text');
  expect(place('INPUT', { type: 'checkbox' })).toBe('page');
  expect(place('BUTTON')).toBe('page');
  expect(place('BUTTON', { closest: () => ({}) })).toBe('overlay');
  expect(placeOfPress(null)).toBe('page');
});

test('every action has its own id and no key is given twice', () => {
  const keys = ACTIONS.flatMap((action) => action.keys);
  expect(new Set(keys).size).toBe(keys.length);
  expect(new Set(ACTIONS.map(({ id }) => id)).size).toBe(ACTIONS.length);
  expect(keys.filter(isSingleKey)).not.toContain('Mod+Z');
});

describe('keys of a player', () => {
  const played = () => {
    const done: string[] = [];
    const player: PlayerKeys = {
      toggle: () => done.push('toggle'),
      stepBy: (frames) => done.push(`step ${frames}`),
      toIn: () => done.push('in'),
      toOut: () => done.push('out'),
      keepFromHere: () => done.push('keep from'),
      keepToHere: () => done.push('keep to'),
      setLooped: (next) => done.push(`loop ${next(false)}`),
    };
    return { done, it: { state: { ...page().state, player }, done } };
  };

  test('do nothing without one, and what it cannot do is left alone', () => {
    for (const key of [' ', ',', 'ArrowLeft', 'i', 'l']) expect(asked(press(key), page())).toBeUndefined();
    expect(asked(press('m'), played().it)).toBeUndefined();
  });

  test('drive it', () => {
    const { it, done } = played();
    const keys = [press(' '), press(','), press('.'), press('ArrowLeft'), press('ArrowRight'), press('ArrowRight', { shiftKey: true }), press('i'), press('o'), press('I', { shiftKey: true }), press('O', { shiftKey: true }), press('l')]; // prettier-ignore
    for (const key of keys)
      actionFor(ACTIONS, key, { at: 'page', state: it.state, maySingle: true })!.perform(it.state);
    expect(done).toEqual(['toggle', 'step -1', 'step 1', 'step -1', 'step 1', 'step 10', 'in', 'out', 'keep from', 'keep to', 'loop true']); // prettier-ignore
  });

  test('are left to a button that the space bar presses, and to whatever the arrows move', () => {
    const { it } = played();
    expect(asked(press(' '), it, 'button')).toBeUndefined();
    expect(asked(press('ArrowLeft'), it, 'button')).toBe('frame-back');
    expect([asked(press(' '), it, 'control'), asked(press('ArrowLeft'), it, 'control')]).toEqual([
      undefined,
      undefined,
    ]);
    expect(asked(press('i'), it, 'control')).toBe('to-in');
  });

  test('that are one letter or sign are turned off with the others', () => {
    const { it } = played();
    expect([',', '.', 'i', 'l'].map((key) => asked(press(key), it, 'page', false))).toEqual(Array(4).fill(undefined));
    expect([' ', 'ArrowLeft'].map((key) => asked(press(key), it, 'page', false))).toEqual(['play', 'frame-back']);
  });

  test('are told from one another by where they were pressed', () => {
    const on = (tagName: string, matches: string, type?: string) =>
      placeOfPress({ tagName, type, closest: (selector) => (selector.split(',').includes(matches) ? {} : null) });
    expect(on('BUTTON', 'button')).toBe('button');
    expect(on('SPAN', '[role="slider"]')).toBe('control');
    expect(on('INPUT', 'input', 'range')).toBe('control');
    expect(on('BUTTON', '[role="alertdialog"]')).toBe('overlay');
    expect(on('DIV', 'nothing')).toBe('page');
  });
});
