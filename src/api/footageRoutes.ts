/** Addresses of the routes of the footage of a shoot; what they take is in footage.ts. */
const under = (shootId: string, tail: string) => `/api/shoots/${encodeURIComponent(shootId)}/footage${tail}`;
const ofClip = (shootId: string, clipId: string, tail: string) => under(shootId, `/${encodeURIComponent(clipId)}${tail}`); // prettier-ignore

/** GET answers `FootageState`; POST takes a `FootageRequest` and answers the same. */
export const footagePath = (shootId: string) => under(shootId, '');
/** GET answers a `FolderListing`. */
export const footageFolderPath = (shootId: string, folder: string, path: string) =>
  under(shootId, `/folder?folder=${encodeURIComponent(folder)}&path=${encodeURIComponent(path)}`);
/** Server-sent events named `footage`, each a whole `FootageState`. */
export const footageLivePath = (shootId: string) => under(shootId, '/live');
/** POST with `MeasureRequest`; POST without a body; both answer `FootageState`. */
export const measureClipPath = (shootId: string, clipId: string) => ofClip(shootId, clipId, '/measure');
export const stopClipPath = (shootId: string, clipId: string) => ofClip(shootId, clipId, '/stop');
/** GET answers what was measured, in the form in which it is kept. */
export const measuredClipPath = (shootId: string, clipId: string) => ofClip(shootId, clipId, '/measured');
/** GET answers a JPEG. */
export const stillPath = (shootId: string, clipId: string, frame: number, width: number) =>
  ofClip(shootId, clipId, `/still?frame=${frame}&width=${width}`);
/** GET answers the small copy, in parts where asked; POST has it made. */
export const proxyPath = (shootId: string, clipId: string) => ofClip(shootId, clipId, '/proxy');
