/** Addresses of the routes, and the headers that they know. */

/** What a client calls itself; its undo takes back only edits made under the same name. */
export const CLIENT_HEADER = 'longsecond-client';

/** Who did what was done without that header. */
export const UNNAMED_CLIENT = 'unnamed';

/** The revision that a text answer is of. */
export const REVISION_HEADER = 'longsecond-revision';

export const SHOOTS = '/api/shoots';

const under = (shootId: string, tail: string) => `${SHOOTS}/${encodeURIComponent(shootId)}${tail}`;

export const shootPath = (shootId: string) => under(shootId, '');
export const textPath = (shootId: string) => under(shootId, '/text');
export const editsPath = (shootId: string) => under(shootId, '/edits');
export const undoPath = (shootId: string) => under(shootId, '/undo');
export const redoPath = (shootId: string) => under(shootId, '/redo');

/** Journal rows after a number, oldest first. */
export const journalPath = (shootId: string, after = 0) => under(shootId, `/journal?after=${after}`);

/** Live events from a revision on; a browser's EventSource goes on by itself from the last one that it had. */
export const eventsPath = (shootId: string, after: number) => under(shootId, `/events?after=${after}`);
