/** Addresses of the routes, and the headers that they know. */

/** What a client calls itself; its undo takes back only edits made under the same name. */
export const CLIENT_HEADER = 'longsecond-client';

/** What the person calls themself, percent-encoded UTF-8; for people to read, never what decides whose edit it is. */
export const NAME_HEADER = 'longsecond-name';

/** The name of a file that is sent, percent-encoded UTF-8. */
export const FILE_NAME_HEADER = 'longsecond-file-name';

/** Who did what was done without the header of a client. */
export const UNNAMED_CLIENT = 'unnamed';

/** The revision that a text answer is of. */
export const REVISION_HEADER = 'longsecond-revision';

export const SHOOTS = '/api/shoots';

const under = (shootId: string, tail: string) => `${SHOOTS}/${encodeURIComponent(shootId)}${tail}`;

export const shootPath = (shootId: string) => under(shootId, '');
export const editsPath = (shootId: string) => under(shootId, '/edits');
export const undoPath = (shootId: string) => under(shootId, '/undo');
export const redoPath = (shootId: string) => under(shootId, '/redo');
export const restorePath = (shootId: string) => under(shootId, '/restore');
export const presencePath = (shootId: string) => under(shootId, '/presence');
export const standingPath = (shootId: string) => under(shootId, '/standing');
export const duplicatePath = (shootId: string) => under(shootId, '/duplicate');
export const filesPath = (shootId: string) => under(shootId, '/files');

/** One file of a shoot, by its hash: what stands there never changes, so that it may be the source of a picture. */
export const filePath = (shootId: string, sha256: string) => under(shootId, `/files/${encodeURIComponent(sha256)}`);

/** The text as it now is, or as it was at a revision. */
export const textPath = (shootId: string, revision?: number) =>
  under(shootId, revision === undefined ? '/text' : `/text?revision=${revision}`);

/** The shoot as it was at a revision, for looking at. */
export const atPath = (shootId: string, revision: number) => under(shootId, `/at/${revision}`);

/** A download: the text, its written form as JSON, or one zip of the text and its files. */
export const exportPath = (shootId: string, as: 'yaml' | 'json' | 'zip') => under(shootId, `/export?as=${as}`);

/** Where a zip is sent to be brought in; sent again under the same id, it is brought in once. */
export const importZipPath = (editId: string) => `${SHOOTS}?editId=${encodeURIComponent(editId)}`;

/** Journal rows after a number, oldest first. */
export const journalPath = (shootId: string, after = 0) => under(shootId, `/journal?after=${after}`);

/** Above every number that a row can have. */
const BEYOND_ALL = 999_999_999_999_999;

/** Journal rows before a number, newest first; left out, from the newest there is. */
export const historyPath = (shootId: string, before = BEYOND_ALL, limit = 50) =>
  under(shootId, `/journal?before=${before}&limit=${limit}`);

/**
 * Live events from a revision on; a browser's EventSource goes on by itself from the last one that it had. It cannot
 * send headers, so it says by query whose stream it is: presence told under that name ends when the stream does.
 */
export const eventsPath = (shootId: string, after: number, client?: string) =>
  under(shootId, `/events?after=${after}${client === undefined ? '' : `&client=${encodeURIComponent(client)}`}`);
