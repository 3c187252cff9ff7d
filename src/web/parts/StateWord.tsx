import './stateWord.css';

/** How a limit stands. The words are the reader's; the shapes are told apart without colour. */
export type Standing = 'short' | 'tight' | 'spare' | 'unknown';

const SHAPES: Readonly<Record<Standing, string>> = {
  short: 'M10.5 1.5v9L1.5 6z',
  tight: 'M6 .8 11.2 6 6 11.2.8 6z',
  spare: 'M6 1.6a4.4 4.4 0 1 1 0 8.8 4.4 4.4 0 0 1 0-8.8z',
  unknown: 'M1.5 6h2M5 6h2M8.5 6h2',
};

/** The shape alone, for where the word stands nearby. */
export function StateShape({ standing }: { readonly standing: Standing }) {
  return (
    <svg className={`state-shape ${standing}`} width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      <path d={SHAPES[standing]} />
    </svg>
  );
}

/** How a limit stands, in a shape and a word. */
export function StateWord({ standing, word = standing }: { readonly standing: Standing; readonly word?: string }) {
  return (
    <span className={`state-word ${standing}`}>
      <StateShape standing={standing} />
      {word}
    </span>
  );
}
