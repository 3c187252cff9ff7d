/** The morning sheet of one person: what each thing they look after needs that day, in the order of the plan. */
import { sayList } from '../../base/sayList.ts';
import { DUTIES, type Duty, type Shoot } from '../../document/schema.ts';
import type { ShotPlan } from '../../plan/types.ts';
import { cameraPart } from './morningCamera.ts';
import { dataPart } from './morningData.ts';
import { lightPart } from './morningLight.ts';
import { productionPart } from './morningProduction.ts';
import { productPart } from './morningProduct.ts';
import { rigsPart } from './morningRigs.ts';
import { dayFigures, ofShoot, sayShots, titleOf } from './say.ts';
import { DEFERS } from './shotCard.ts';
import { heading, paragraph, unlessEmpty, type Block, type CautionBlock, type Sheet, type Source } from './sheet.ts';

export const DUTY_NAMES = Object.keys(DUTIES) as readonly Duty[];

const TITLES: Readonly<Record<Duty, string>> = {
  production: 'Production',
  camera: 'Camera',
  light: 'Light',
  rigs: 'Rigs',
  product: 'Product',
  data: 'Data',
};

const PARTS: Readonly<Record<Duty, (source: Source) => readonly Block[]>> = {
  production: productionPart,
  camera: cameraPart,
  light: lightPart,
  rigs: rigsPart,
  product: productPart,
  data: dataPart,
};

/** Cautions by the key of the safety page that each duty stands closest to; own words go to everybody. */
const CAUTIONS: Readonly<Record<Duty, (key: string) => boolean>> = {
  production: () => true,
  camera: () => true,
  light: (key) => key !== 'moving-rigs',
  rigs: (key) => key !== 'heat',
  product: () => true,
  data: (key) => key === 'own',
};

/** The cautions of the day, each once, with the shots that it belongs to. */
function cautionsFor(shots: readonly ShotPlan[], duties: readonly Duty[]): readonly CautionBlock[] {
  const byWords = new Map<string, ShotPlan[]>();
  for (const shot of shots)
    for (const { key, says } of shot.cautions)
      if (duties.some((duty) => CAUTIONS[duty](key))) byWords.set(says, [...(byWords.get(says) ?? []), shot]);
  const says = [...byWords].map(([words, of]) => {
    const whose = of.length === shots.length && shots.length > 1 ? 'all shots' : sayShots(of);
    return `${whose.charAt(0).toUpperCase()}${whose.slice(1)}: ${words}`;
  });
  return unlessEmpty(says, { block: 'caution', title: 'Take care', says: [...says, DEFERS] });
}

/** Whose sheet it is: a person of the crew, or one duty. */
export interface Person {
  readonly id: string;
  readonly title: string;
  readonly duties: readonly Duty[];
}

/** Everybody who gets a sheet: the crew as written, then a duty nobody looks after; with no crew each duty. */
export function peopleOf({ crew }: Pick<Shoot, 'crew'>): readonly Person[] {
  const people = Object.entries(crew).map(([id, person]) => ({
    id,
    title: titleOf(person, id),
    duties: DUTY_NAMES.filter((duty) => person.does.includes(duty)),
  }));
  const taken = new Set(people.flatMap(({ duties }) => duties));
  const left = DUTY_NAMES.filter((duty) => !taken.has(duty)).map((duty) => ({
    id: duty,
    title: TITLES[duty],
    duties: [duty],
  }));
  return [...people.filter(({ duties }) => duties.length > 0), ...left];
}

/** The person of an id, or whoever a duty stands for; undefined where it is neither. */
export function personFor(shoot: Pick<Shoot, 'crew'>, who: string): Person | undefined {
  const duty = DUTY_NAMES.find((name) => name === who);
  if (Object.hasOwn(shoot.crew, who)) {
    const person = shoot.crew[who]!;
    return { id: who, title: titleOf(person, who), duties: DUTY_NAMES.filter((name) => person.does.includes(name)) };
  }
  return duty && { id: duty, title: TITLES[duty], duties: [duty] };
}

function underOf({ crew }: Shoot, { id, duties }: Person): string {
  if (Object.hasOwn(crew, id)) return `Looks after ${sayList(duties.map((duty) => DUTIES[duty]))}`;
  const names = Object.entries(crew).filter(([, { does }]) => duties.every((duty) => does.includes(duty)));
  const words = duties.map((duty) => DUTIES[duty]).join(', ');
  const says = words.charAt(0).toUpperCase() + words.slice(1);
  if (Object.keys(crew).length === 0) return says;
  return `${says}: ${names.length === 0 ? 'nobody in the crew looks after it yet' : sayList(names.map(([name, person]) => titleOf(person, name)))}`;
} // prettier-ignore

export function morningSheet(source: Source, person: Person): Sheet {
  const { plan, shoot } = source;
  const days = dayFigures(source);
  const { duties } = person;
  const hasShots = plan.shots.length > 0;
  const parts = duties.flatMap((duty): readonly Block[] => [
    ...(duties.length > 1 ? [heading(TITLES[duty], DUTIES[duty])] : []),
    ...PARTS[duty](source),
  ]);
  return {
    id: `morning-${person.id}`,
    kind: 'morning',
    over: 'Morning sheet',
    ...ofShoot(source),
    title: person.title,
    ...(duties.length === 0 ? {} : { under: underOf(shoot, person) }),
    blocks: [
      ...unlessEmpty(days, { block: 'figures', size: 'large', figures: days }),
      ...(hasShots ? cautionsFor(plan.shots, duties) : []),
      ...(duties.length === 0 ? [paragraph(`The crew does not say what ${person.title} looks after.`)] : []),
      ...(duties.length > 0 && !hasShots ? [paragraph('No shots yet: write the first shot, then print again.')] : []),
      ...(hasShots ? parts : []),
      { block: 'blank', name: 'Notes', columns: [{ title: 'Notes', share: 1 }], rowCount: 3, fills: true, isOptional: true },
    ],
  }; // prettier-ignore
}
