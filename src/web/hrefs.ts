/** Addresses of the places. */

export const SHOOTS_HREF = '/shoots';

/** Every part of the screens, for whoever builds or reviews them. */
export const GALLERY_HREF = '/gallery';

export const shootHref = (shootId: string) => `/${encodeURIComponent(shootId)}`;

export interface ReckonerPlace {
  /** The open shoot, where one is. */
  readonly shootId?: string | undefined;
  /** Absent for the list of laws. */
  readonly lawId?: string | undefined;
}

export const reckonerHref = ({ shootId, lawId }: ReckonerPlace = {}) =>
  `${shootId === undefined ? '' : shootHref(shootId)}/reckoner${lawId === undefined ? '' : `/${encodeURIComponent(lawId)}`}`;

/** The kit; one kind of it; one piece of that kind. */
export const kitHref = (shootId: string, kindKey?: string, itemId?: string) =>
  [`${shootHref(shootId)}/kit`, kindKey, itemId && encodeURIComponent(itemId)].filter(Boolean).join('/');

/** Where the kit is written at a path such as `/kit/lenses/macro/widest`, with the field to go to; undefined elsewhere. */
export function kitHrefAt(shootId: string, path: string): string | undefined {
  const [, section, kindKey, itemId] = path.split('/');
  if (section !== 'kit' || kindKey === undefined) return undefined;
  return `${kitHref(shootId, kindKey, itemId)}${itemId === undefined ? '' : `#at${path.replaceAll('/', '.')}`}`;
}

/** The light; one set-up of it. */
export const lightHref = (shootId: string, setupId?: string) =>
  `${shootHref(shootId)}/light${setupId === undefined ? '' : `/${encodeURIComponent(setupId)}`}`;

export const dayHref = (shootId: string) => `${shootHref(shootId)}/day`;

/** The footage; one clip of it; that clip beside another. */
export const footageHref = (shootId: string, clipId?: string, withId?: string) =>
  [
    `${shootHref(shootId)}/footage`,
    clipId !== undefined && `/${encodeURIComponent(clipId)}`,
    withId !== undefined && `?with=${encodeURIComponent(withId)}`,
  ]
    .filter(Boolean)
    .join('');

export const paperHref = (shootId: string) => `${shootHref(shootId)}/paper`;

export const historyHref = (shootId: string) => `${shootHref(shootId)}/history`;

export const shotHref = (shootId: string, shotId: string) => `${shootHref(shootId)}/shot/${encodeURIComponent(shotId)}`;
