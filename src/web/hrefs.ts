/** Addresses of the places. */

export const SHOOTS_HREF = '/shoots';

export const shootHref = (shootId: string) => `/${encodeURIComponent(shootId)}`;

export interface ReckonerPlace {
  /** The open shoot, where one is. */
  readonly shootId?: string | undefined;
  /** Absent for the list of laws. */
  readonly lawId?: string | undefined;
}

export const reckonerHref = ({ shootId, lawId }: ReckonerPlace = {}) =>
  `${shootId === undefined ? '' : shootHref(shootId)}/reckoner${lawId === undefined ? '' : `/${encodeURIComponent(lawId)}`}`;

export const shotHref = (shootId: string, shotId: string) => `${shootHref(shootId)}/shot/${encodeURIComponent(shotId)}`;
