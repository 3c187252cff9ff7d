import { useEffect, type RefObject } from 'react';

const FOCUSABLE =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, [tabindex="0"]';

interface Step {
  readonly parent: Element;
  readonly index: number;
}

/** Where an element stands, from its own parent up to the root. */
function standOf(element: Element, root: Element): readonly Step[] {
  const steps: Step[] = [];
  for (let at = element; at !== root && at.parentElement; at = at.parentElement)
    steps.push({ parent: at.parentElement, index: [...at.parentElement.children].indexOf(at) });
  return steps;
}

const firstIn = (element: Element): HTMLElement | undefined =>
  [element, ...element.querySelectorAll(FOCUSABLE)].find(
    (each): each is HTMLElement => each instanceof HTMLElement && each.matches(FOCUSABLE) && each.checkVisibility(),
  );

/** What now stands where it stood: what came up into its place, else what was before it; else the whole place. */
function heirOf(steps: readonly Step[], place: HTMLElement): HTMLElement {
  for (const { parent, index } of steps) {
    if (!parent.isConnected) continue;
    // All of the place is another one now: it is read from its top.
    if (parent.contains(place) || parent === place) return place;
    const children = [...parent.children];
    const near = [...children.slice(index), ...children.slice(0, index).reverse()];
    for (const child of near) {
      const found = firstIn(child);
      if (found) return found;
    }
  }
  return place;
}

/** What had the focus went with a whole frame: the next one takes it. */
let isOrphaned = false;

/**
 * Whoever works by keyboard goes on where they were: when what had the focus is taken out of the page, with its row or
 * with its whole place, the focus goes to what stands there now, never to the top of the page.
 */
export function useKeptFocus(root: RefObject<HTMLElement | null>, place: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const shell = root.current!;
    let last: HTMLElement | undefined;
    let steps: readonly Step[] = [];
    const remember = ({ target }: FocusEvent) => {
      if (!(target instanceof HTMLElement)) return;
      last = target;
      steps = standOf(target, shell);
    };
    const keep = () => {
      if (!last || last.isConnected || document.activeElement !== document.body) return;
      const heir = heirOf(steps, place.current!);
      last = undefined;
      heir.focus({ preventScroll: true });
    };
    if (isOrphaned && document.activeElement === document.body) place.current!.focus({ preventScroll: true });
    isOrphaned = false;
    // A sheet gives the focus back as it closes, to what may be gone by then.
    const keepSoon = ({ relatedTarget }: FocusEvent) => relatedTarget === null && setTimeout(keep, 0);
    const watch = new MutationObserver(keep);
    watch.observe(document.body, { childList: true, subtree: true });
    shell.addEventListener('focusin', remember);
    document.addEventListener('focusout', keepSoon);
    return () => {
      isOrphaned = last !== undefined;
      watch.disconnect();
      shell.removeEventListener('focusin', remember);
      document.removeEventListener('focusout', keepSoon);
    };
  }, [root, place]);
}
