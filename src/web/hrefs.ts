/** Addresses of the places. */

export const SHOOTS_HREF = '/shoots';

export const shootHref = (shootId: string) => `/${encodeURIComponent(shootId)}`;

export const shotHref = (shootId: string, shotId: string) => `${shootHref(shootId)}/shot/${encodeURIComponent(shotId)}`;
