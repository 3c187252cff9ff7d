/** Lamps and flags as the drawings have them. */
import type { LightingSetup } from '../../../document/schema.ts';
import type { Position } from '../../../document/shape.ts';
import type { Flag } from '../../../laws/light/placed/flag.ts';
import type { LightSource } from '../../../laws/light/placed/source.ts';
import type { SetupLight } from '../../../plan/lighting.ts';
import { isThing, type Thing } from './lightEdits.ts';

export interface ThingDrawn extends Thing {
  /** As it is spoken of: "Left key", "Lamp 2", "Flag A". */
  readonly name: string;
  /** What the drawing and the list call it: "Lamp 2", "Flag A". */
  readonly mark: string;
  readonly at: Position;
  /** What it is aimed at, or square to; undefined for the subject. */
  readonly aim: Position | undefined;
  /** Not lit, taken away, or not looked at now. */
  readonly isDim: boolean;
  readonly isLacking: boolean;
  readonly isSelected: boolean;
}

export interface LampDrawn extends ThingDrawn {
  readonly kind: 'lamp';
  /** Its number in the list. */
  readonly number: number;
  readonly source: LightSource | undefined;
}

export interface FlagDrawn extends ThingDrawn {
  readonly kind: 'flag';
  /** Its letter in the list. */
  readonly letter: string;
  /** Where its size is known too. */
  readonly flag: Flag | undefined;
}

/** A to Z, then A2 and on. */
export const letterOf = (index: number): string =>
  `${String.fromCharCode(65 + (index % 26))}${index < 26 ? '' : String(Math.floor(index / 26) + 1)}`;

export interface DrawnAsk {
  readonly light: SetupLight;
  readonly setup: LightingSetup;
  readonly selected: Thing | undefined;
  readonly only: string | undefined;
}

export function lampsDrawn({ light, setup, selected, only }: DrawnAsk): readonly LampDrawn[] {
  return light.lamps.flatMap(({ id, source, isOff, lacks }, i): readonly LampDrawn[] => {
    const { at, aim, title } = setup.lamps[id] ?? {};
    if (!at) return [];
    const mark = `Lamp ${i + 1}`;
    const isDim = isOff || (only !== undefined && only !== id);
    return [{ kind: 'lamp', id, name: title ?? mark, mark, number: i + 1, at, aim, source, isDim, isLacking: lacks.length > 0, isSelected: isThing(selected, 'lamp', id) }];
  });
} // prettier-ignore

export function flagsDrawn({ light, setup, selected }: DrawnAsk): readonly FlagDrawn[] {
  return light.flags.flatMap(({ id, flag, isOff, lacks }, i): readonly FlagDrawn[] => {
    const { at, faces, title } = setup.flags[id] ?? {};
    if (!at) return [];
    const letter = letterOf(i);
    const mark = `Flag ${letter}`;
    return [{ kind: 'flag', id, name: title ?? mark, mark, letter, at, aim: faces, flag, isDim: isOff, isLacking: lacks.length > 0, isSelected: isThing(selected, 'flag', id) }];
  });
} // prettier-ignore
