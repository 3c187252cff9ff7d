/** People in words: by the name they gave themselves, or else by what is known of them. */

export interface Somebody {
  readonly who: string;
  readonly name?: string | undefined;
}

/** Names that browsers give themselves: nobody chose them, so they are not shown. */
const isOfBrowser = (who: string) => who.startsWith('browser-') || who === 'unnamed';

/** Somebody for whoever reads as `me`: "you", "Juno", or "somebody on another device". */
export function sayWho({ who, name }: Somebody, me: string): string {
  if (who === me) return 'you';
  return name ?? (isOfBrowser(who) ? 'somebody on another device' : who);
}

/** Two letters that stand for somebody where there is room for no more. */
export function initialsOf({ who, name }: Somebody): string {
  const said = name ?? (isOfBrowser(who) ? '' : who);
  const words = said.split(/[\s._-]+/u).filter((word) => word !== '');
  const [first, second] = words;
  if (first === undefined) return '?';
  const letters = second === undefined ? [...first].slice(0, 2) : [[...first][0]!, [...second][0]!];
  return letters[0]!.toLocaleUpperCase() + (letters[1] ?? '');
}

export function upperFirst(text: string): string {
  const [first = '', ...rest] = [...text];
  return first.toLocaleUpperCase() + rest.join('');
}
