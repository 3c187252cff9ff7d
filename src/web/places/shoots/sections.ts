/** The list of shoots in its sections, and what a file that is brought in looks to be. */
import type { ShootEntry, Standing } from '../../../api/replies.ts';

export interface Section {
  readonly standing: Standing;
  readonly title: string;
  readonly shoots: readonly ShootEntry[];
}

const TITLES: Readonly<Record<Standing, string>> = { current: 'Current', template: 'Templates', archived: 'Archived' };

/** Sections that hold something, the current shoots first. */
export function sectionsOf(shoots: readonly ShootEntry[]): readonly Section[] {
  const all = (['current', 'template', 'archived'] as const).map((standing) => ({
    standing,
    title: TITLES[standing],
    shoots: shoots.filter((shoot) => shoot.standing === standing),
  }));
  return all.filter((section) => section.shoots.length > 0);
}

/** By its first bytes: every zip begins with the letters PK. */
export const isZip = (bytes: Uint8Array) => bytes[0] === 0x50 && bytes[1] === 0x4b;

/** "Quince & Clover, day 1, again": a title to begin a duplicate with. */
export const againTitle = (title: string) => `${[...title].slice(0, 190).join('')}, again`;
