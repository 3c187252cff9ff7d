/** What an address asks of a law: its inputs as typed, the units, and what the pictures are drawn over. */
import type { UnitSystem } from '../../../base/quantity.ts';
import { inputsOf, type AnyLaw } from '../../../laws/law.ts';

export interface Asked {
  /** By input name, as typed. */
  readonly texts: Readonly<Record<string, string>>;
  /** The input that runs along the pictures, and the one that runs up the map. */
  readonly over?: string | undefined;
  readonly and?: string | undefined;
  /** The result that is drawn. */
  readonly of?: string | undefined;
  readonly units?: UnitSystem | undefined;
}

/** Names in an address that are no inputs. */
export const OWN_NAMES = ['over', 'and', 'of', 'units'] as const;

const bareName = (name: string) => name.split('_')[0]!;

/** An input's name in addresses: without its unit, which the value carries anyway, where that is not another's too. */
export function shortName(of: AnyLaw, name: string): string {
  const bare = bareName(name);
  const isShared = Object.keys(of.takes).some((other) => other !== name && bareName(other) === bare);
  return isShared || (OWN_NAMES as readonly string[]).includes(bare) ? name : bare;
}

const UNITS: Readonly<Record<string, UnitSystem>> = { metric: 'metric', imperial: 'imperial' };

export interface AskedOf {
  readonly asked: Asked;
  /** Pairs of the address that this law does not take. */
  readonly strays: readonly string[];
}

/** Reads the pairs of an address for one law; names with and without their unit are known. */
export function readAsked(of: AnyLaw, search: Readonly<Record<string, string>>): AskedOf {
  const names = Object.keys(of.takes);
  const named = (word: string | undefined) => names.find((name) => name === word || shortName(of, name) === word);
  const texts: Record<string, string> = {};
  const strays: string[] = [];
  for (const [word, text] of Object.entries(search)) {
    if ((OWN_NAMES as readonly string[]).includes(word)) continue;
    const name = named(word);
    if (name === undefined) strays.push(`${word}=${text}`);
    else if (text.trim() !== '') texts[name] = text;
  }
  const result = Object.keys(of.gives).find((name) => name === search['of']);
  const asked = {
    texts,
    over: named(search['over']),
    and: named(search['and']),
    of: result,
    units: UNITS[search['units'] ?? ''],
  };
  return { asked, strays };
}

/** The pairs of the address that asks this, inputs in the law's own order. */
export function writeAsked(
  of: AnyLaw,
  { texts, over, and, of: result, units }: Asked,
): Readonly<Record<string, string>> {
  const pairs: [string, string][] = [];
  for (const { name } of inputsOf(of)) {
    const text = texts[name]?.trim() ?? '';
    if (text !== '') pairs.push([shortName(of, name), text]);
  }
  if (over !== undefined) pairs.push(['over', shortName(of, over)]);
  if (and !== undefined) pairs.push(['and', shortName(of, and)]);
  if (result !== undefined) pairs.push(['of', result]);
  if (units !== undefined) pairs.push(['units', units]);
  return Object.fromEntries(pairs);
}
