/**
 * A moved row keeps the focus: the button that moved it, or its pair once that one has nowhere left to go.
 * Each button has `data-move`, the row's id and the way, -1 or 1. Whoever went on to something else is left there.
 */
export function focusMover(list: HTMLElement, id: string, by: number): void {
  const button = (way: number) => list.querySelector<HTMLButtonElement>(`[data-move="${CSS.escape(`${id} ${way}`)}"]`);
  const [same, other] = [button(by), button(-by)];
  const on = document.activeElement;
  // A row that the page moves in its text loses the focus to the page.
  if (on !== null && on !== document.body && on !== same && on !== other) return;
  (same?.disabled === false ? same : other)?.focus();
}
