/** Every law, by subject: what the command lists, the Reckoner offers and the documentation prints. */
import { inputsOf, resultsOf, type AnyLaw } from './law.ts';
import { BUFFER_LAWS } from './buffer/catalogue.ts';
import { CHANCE_LAWS } from './chance/catalogue.ts';
import { EXPOSURE_LAWS } from './exposure/catalogue.ts';
import { FLICKER_LAWS } from './flicker/catalogue.ts';
import { FLUID_LAWS } from './fluids/catalogue.ts';
import { HEAT_LAWS } from './heat/catalogue.ts';
import { LENS_LAWS } from './lens/catalogue.ts';
import { AREA_LAWS } from './light/area/catalogue.ts';
import { LIGHT_LAWS } from './light/catalogue.ts';
import { MODIFIER_LAWS } from './light/modifiers/catalogue.ts';
import { MOTION_LAWS } from './motion/catalogue.ts';
import { TIME_LAWS } from './time/catalogue.ts';

export interface Subject {
  readonly title: string;
  readonly laws: readonly AnyLaw[];
}

export const SUBJECTS: readonly Subject[] = [
  { title: 'Exposure', laws: EXPOSURE_LAWS },
  { title: 'Light', laws: [...LIGHT_LAWS, ...AREA_LAWS, ...MODIFIER_LAWS] },
  { title: 'Flicker', laws: FLICKER_LAWS },
  { title: 'Heat, eyes and skin', laws: HEAT_LAWS },
  { title: 'Lens and picture', laws: LENS_LAWS },
  { title: 'Motion', laws: MOTION_LAWS },
  { title: 'Liquids, bubbles, powders and flames', laws: FLUID_LAWS },
  { title: 'Time', laws: TIME_LAWS },
  { title: 'Buffer and storage', laws: BUFFER_LAWS },
  { title: 'Chance', laws: CHANCE_LAWS },
];

export const CATALOGUE: readonly AnyLaw[] = SUBJECTS.flatMap(({ laws }) => laws);

const BY_ID: ReadonlyMap<string, AnyLaw> = new Map(CATALOGUE.map((law) => [law.id, law]));

/** The law with this id, or undefined. */
export function lawNamed(id: string): AnyLaw | undefined {
  return BY_ID.get(id);
}

function wordsOf(law: AnyLaw): string {
  const fields = [...inputsOf(law), ...resultsOf(law)].map(({ title }) => title);
  return [law.id, law.title, law.says, ...(law.words ?? []), ...fields].join('\n').toLowerCase();
}

/** Whether a law speaks of every word of a search: in its id, title, sentence, trade words, inputs or results. */
export function speaksOf(law: AnyLaw, search: string): boolean {
  const text = wordsOf(law);
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
