import { useLayoutEffect, useRef, useState } from 'react';
import type { AnyLaw } from '../../../laws/law.ts';
import { writeSearch } from '../../searchText.ts';
import { readAsked, writeAsked, type Asked } from './address.ts';

type Pairs = Readonly<Record<string, string>>;

interface State {
  readonly asked: Asked;
  readonly strays: readonly string[];
  /** The field being typed in, and what stands in it so far. */
  readonly typed: { readonly name: string; readonly text: string } | undefined;
  /** The newest address seen, and those written by this page that have not come back yet. */
  readonly seen: string;
  readonly written: readonly string[];
  /** Grows when the address says something that this page did not write. */
  readonly epoch: number;
}

export interface AskedDesk {
  /** What is meant: the address says the same. */
  readonly asked: Asked;
  /** With what is being typed. */
  readonly texts: Readonly<Record<string, string>>;
  readonly strays: readonly string[];
  readonly epoch: number;
  readonly type: (name: string, text: string) => void;
  readonly untype: () => void;
  readonly ask: (change: Partial<Asked>) => void;
  /** One text meant, from a field of this epoch. */
  readonly mean: (name: string, text: string) => void;
}

const begin = (of: AnyLaw, search: Pairs, seen: string, epoch: number): State => {
  const { asked, strays } = readAsked(of, search);
  return { asked, strays, typed: undefined, seen, written: [], epoch };
};

/**
 * What is asked of a law, held beside the address and in step with it: whatever is meant is written there as a step of
 * the browser's history, and going back or forward reads it again.
 */
export function useAsked(of: AnyLaw, search: Pairs, onAddress: (pairs: Pairs) => void): AskedDesk {
  const address = writeSearch(search);
  const [held, setState] = useState(() => begin(of, search, address, 0));
  let state = held;
  if (address !== held.seen) {
    state = held.written.includes(address)
      ? { ...held, seen: address, written: address === held.written.at(-1) ? [] : held.written }
      : begin(of, search, address, held.epoch + 1);
    setState(state);
  }
  const { asked, strays, typed, epoch } = state;
  const epochNow = useRef(epoch);
  useLayoutEffect(() => {
    epochNow.current = epoch;
    return () => {
      epochNow.current = -1;
    };
  });
  const ask = (change: Partial<Asked>) => {
    const next = { ...asked, ...change };
    const pairs = writeAsked(of, next);
    const written = writeSearch(pairs);
    const isNew = written !== (state.written.at(-1) ?? state.seen);
    setState({
      ...state,
      asked: next,
      typed: undefined,
      ...(isNew ? { strays: [], written: [...state.written, written] } : {}),
    });
    if (isNew) onAddress(pairs);
  };
  return {
    asked,
    texts: typed ? { ...asked.texts, [typed.name]: typed.text } : asked.texts,
    strays,
    epoch,
    type: (name, text) => setState((now) => ({ ...now, typed: { name, text } })),
    untype: () => setState((now) => ({ ...now, typed: undefined })),
    ask,
    mean: (name, text) => {
      // A field that goes away because the address moved on has nothing more to say.
      if (epochNow.current === epoch) ask({ texts: { ...asked.texts, [name]: text } });
    },
  };
}
