/** Faults as answers: the status of each, and the JSON that a client gets. */
import type { Conflict, FaultReply } from '../api/replies.ts';
import { Fault } from '../base/fault.ts';

/**
 * HTTP status by code. Codes of `document.`, `patch.` and `written.` all mean that the shoot cannot be what was sent, and
 * those of `measure.` and `media.` that the clip cannot be read, or not as it was told.
 */
export const STATUS: Readonly<Record<string, number>> = {
  'input.malformed': 400,
  'input.not-json': 400,
  'zip.hash-differs': 422,
  'zip.larger-than-declared': 422,
  'zip.malformed': 422,
  'zip.no-shoot': 422,
  'zip.not-text': 422,
  'zip.path-refused': 422,
  'zip.too-many': 422,
  'zip.unsupported': 422,
  'footage.not-a-clip': 422,
  'footage.not-a-folder': 422,
  'host.refused': 403,
  'origin.refused': 403,
  'footage.path-refused': 403,
  'footage.unreadable': 403,
  'route.unknown': 404,
  'shoot.unknown': 404,
  'file.unknown': 404,
  'sheet.unknown-duty': 404,
  'sheet.unknown-shot': 404,
  'revision.unknown': 404,
  'footage.clip-unknown': 404,
  'footage.folder-gone': 404,
  'footage.folder-unknown': 404,
  'footage.no-copy': 404,
  'footage.not-measured': 404,
  'footage.path-unknown': 404,
  'page.unknown': 404,
  'edit.conflict': 409,
  'edit.id-reused': 409,
  'edit.revision-unknown': 409,
  'footage.clip-here': 409,
  'footage.id-reused': 409,
  'redo.none': 409,
  'redo.touched-since': 409,
  'restore.same': 409,
  'restore.touched-since': 409,
  'shoot.id-reserved': 409,
  'shoot.id-taken': 409,
  'undo.none': 409,
  'undo.touched-since': 409,
  'export.too-large': 413,
  'input.too-large': 413,
  'zip.too-large': 413,
  'file.not-a-picture': 415,
  'file.svg-refused': 415,
  'input.wrong-type': 415,
  'footage.range-beyond': 416,
  'presence.full': 429,
  'presence.too-often': 429,
  bug: 500,
  'store.damaged': 500,
  'store.unwritable': 500,
  'media.ffmpeg-not-started': 503,
  'media.no-ffmpeg': 503,
  'screens.not-built': 503,
  'store.failed': 503,
  'store.full': 507,
};

const OF_WHAT_WAS_SENT = /^(document|patch|written|measure|media)\./;

export function statusOf(code: string): number {
  return STATUS[code] ?? (OF_WHAT_WAS_SENT.test(code) ? 422 : 500);
}

function conflictIn(fault: Fault): Conflict | undefined {
  return fault.code.endsWith('.conflict') || fault.code.endsWith('.touched-since')
    ? (fault.cause as Conflict | undefined)
    : undefined;
}

export function faultReply(fault: Fault): FaultReply {
  const { code, what, where, mend, retry } = fault;
  const conflict = conflictIn(fault);
  return { code, what, where, mend, retry, ...(conflict ? { conflict } : {}) };
}

/** What a client is told of a failure of ours: where to find it in the log, and nothing of what went on inside. */
export function bugFault({ where, reference }: { readonly where: string; readonly reference: string }): Fault {
  return new Fault({
    code: 'bug',
    what: 'Something went wrong in Longsecond itself; what was stored before is as it was',
    where,
    mend: `Try once more. If it comes back, report it with the lines at ${reference} in the server's log.`,
  });
}
