import { useEffect, useRef, useState } from 'react';
import { setTheme, THEMES, themeNow } from '../parts/theme.ts';
import type { ActionState } from './action.ts';
import { ACTIONS } from './all.ts';
import { actionFor, placeOfPress } from './keys.ts';
import { playerNow } from './player.ts';

/** Kept in this browser, so that whoever turned single keys off finds them off. */
const SINGLE = 'longsecond.single-keys';

function readSingle(): boolean {
  try {
    return localStorage.getItem(SINGLE) !== 'off';
  } catch {
    return true;
  }
}

function writeSingle(isOn: boolean): void {
  try {
    localStorage.setItem(SINGLE, isOn ? 'on' : 'off');
  } catch {
    // Storage may be shut; the choice then lasts as long as the page.
  }
}

function nextTheme(): void {
  setTheme(THEMES[(THEMES.indexOf(themeNow()) + 1) % THEMES.length]!);
}

export interface KeyHelpState {
  readonly isOpen: boolean;
  readonly close: () => void;
  readonly maySingle: boolean;
  readonly setSingle: (isOn: boolean) => void;
}

/** Listens for the keys of all actions while mounted, and says how the list of them stands. */
export function useActions(context: Pick<ActionState, 'open' | 'shotId' | 'go'>): KeyHelpState {
  const [isOpen, setOpen] = useState(false);
  const [maySingle, setMaySingle] = useState(readSingle);
  const state: ActionState = { ...context, nextTheme, toggleHelp: () => setOpen((was) => !was) };
  const newest = useRef({ state, maySingle });
  useEffect(() => {
    newest.current = { state, maySingle };
  });
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const at = placeOfPress(event.target instanceof HTMLElement ? event.target : null);
      const player = playerNow();
      const now = { ...newest.current.state, ...(player && { player }) };
      const action = actionFor(ACTIONS, event, { at, state: now, maySingle: newest.current.maySingle });
      if (!action) return;
      event.preventDefault();
      action.perform(now);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);
  return {
    isOpen,
    close: () => setOpen(false),
    maySingle,
    setSingle: (isOn) => {
      writeSingle(isOn);
      setMaySingle(isOn);
    },
  };
}
