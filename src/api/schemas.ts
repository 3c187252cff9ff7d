/** What each route takes: the schemas that everything sent to the server must fit. */
import * as z from 'zod';
import { DEEPEST, type Written } from '../document/written.ts';
import { LONGEST_NAME } from './name.ts';

/** Half of a surrogate pair alone cannot be kept as text. */
const LONE_SURROGATE = /\p{Surrogate}/u;

function isKeepable(value: unknown, depth = 0): value is Written {
  if (depth > DEEPEST) return false;
  if (typeof value === 'string') return !LONE_SURROGATE.test(value);
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value === 'boolean' || value === null) return true;
  if (Array.isArray(value)) return value.every((item) => isKeepable(item, depth + 1));
  if (typeof value !== 'object') return false;
  return Object.entries(value).every(
    ([key, item]) => key !== '__proto__' && !LONE_SURROGATE.test(key) && isKeepable(item, depth + 1),
  );
}

const isPointer = (path: string) =>
  path.length <= 1000 &&
  /^(\/([^~/]|~[01])*)+$/.test(path) &&
  !LONE_SURROGATE.test(path) &&
  !path.split('/').includes('__proto__');

/** Below the whole: replacing a shoot outright is bringing in another one. */
const Path = z.string().refine(isPointer, 'must be a JSON Pointer to something in the shoot, such as /shots/pour-1');

const Value = z.custom<Written>(
  (value) => isKeepable(value),
  `must be there, as plain JSON of whole characters at most ${DEEPEST} deep`,
);

const Operation = z.discriminatedUnion('op', [
  z.strictObject({ op: z.enum(['add', 'replace']), path: Path, value: Value }),
  z.strictObject({ op: z.literal('remove'), path: Path }),
]);

const EditId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9-]{7,63}$/, 'must be 8 to 64 letters, digits and hyphens, new for every edit');

/** Some words in one line: no control characters, no line or paragraph separators. */
const line = ({ least, most }: { readonly least: number; readonly most: number }) =>
  z
    .string()
    .trim()
    .refine((text) => !LONE_SURROGATE.test(text), 'must be whole characters')
    .refine((text) => !/[\p{Cc}\p{Zl}\p{Zp}]/u.test(text), 'must be one line without control characters')
    .refine(
      (text) => [...text].length >= least && [...text].length <= most,
      `must be ${least} to ${most} characters long`,
    );

const Summary = line({ least: 1, most: 200 });

/** What a person calls themself. */
export const PersonName = line({ least: 1, most: LONGEST_NAME });

/** A name of a file as folders keep it: no path, nothing that leads to another folder. */
export const FileName = line({ least: 1, most: 255 })
  .refine((name) => !/[/\\]/.test(name), 'must be a name, not a path')
  .refine((name) => name !== '.' && name !== '..', 'must be the name of a file, not of a folder');

/** A file by what it holds. */
export const Sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'must be 64 lower-case hexadecimal digits');

/** The id of a shoot: a letter, then letters, digits and hyphens. */
export const ShootId = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9-]{0,63}$/, 'must be a letter, then up to 63 letters, digits and hyphens');

/** What a client calls itself: one name for all that one window or device does. */
export const ClientName = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/, 'must be up to 64 letters, digits, dots, hyphens and underscores');

/** POST /api/shoots/:shootId/edits */
export const EditRequest = z.strictObject({
  /** Made by the client; an edit sent again under it answers its first result. */
  editId: EditId,
  /** The revision that the client saw when it made the edit. */
  revision: z.int().min(0),
  patch: z.array(Operation).min(1).max(10_000).readonly(),
  summary: Summary,
});

/** POST /api/shoots/:shootId/undo and …/redo */
export const StepRequest = z.strictObject({ editId: EditId });

/** POST /api/shoots/:shootId/restore */
export const RestoreRequest = z.strictObject({
  editId: EditId,
  /** The newest revision that the person was looking at. */
  revision: z.int().min(0),
  /** The revision to bring back. */
  to: z.int().min(0),
});

/** POST /api/shoots/:shootId/presence */
export const PresenceRequest = z.strictObject({
  /** What is being edited; empty where it is nothing in particular. */
  at: z.string().refine((path) => path === '' || isPointer(path), 'must be a JSON Pointer, or empty'),
  /** Where that is, in words. */
  place: line({ least: 1, most: 120 }).optional(),
});

/** POST /api/shoots/:shootId/standing */
export const StandingRequest = z.strictObject({ standing: z.enum(['current', 'template', 'archived']) });

/** POST /api/shoots/:shootId/duplicate */
export const DuplicateRequest = z.strictObject({ editId: EditId, title: line({ least: 1, most: 200 }) });

/** POST /api/shoots */
export const ImportRequest = z.strictObject({
  editId: EditId,
  /** Left out, one is made from the title. */
  id: ShootId.optional(),
  text: z.string().refine((text) => !LONE_SURROGATE.test(text), 'must be whole characters'),
});

const WholeNumber = z
  .string()
  .regex(/^\d{1,15}$/, 'must be a whole number')
  .transform(Number);

/** A revision in an address. */
export const Revision = WholeNumber;

/** GET /api/shoots/:shootId/journal */
export const JournalQuery = z
  .object({
    /** Rows after this number, oldest first; 0, the default, is the shoot as it was brought in. */
    after: WholeNumber.optional(),
    /** Rows before this number, newest first. */
    before: WholeNumber.optional(),
    limit: WholeNumber.pipe(z.int().min(1).max(500)).default(200),
  })
  .refine(({ after, before }) => after === undefined || before === undefined, 'takes after or before, not both');

/** GET /api/shoots/:shootId/text */
export const TextQuery = z.object({ revision: WholeNumber.optional() });

/** GET /api/shoots/:shootId/export */
export const ExportQuery = z.object({ as: z.enum(['yaml', 'json', 'zip']) });

/** POST /api/shoots with a zip */
export const ImportZipQuery = z.object({ editId: EditId, id: ShootId.optional() });

/** GET /api/shoots/:shootId/events: where to go on from, by query the first time, by `Last-Event-ID` ever after. */
export const EventsQuery = z.object({
  after: WholeNumber.optional(),
  /** Whose stream it is: presence told under this name ends with it. */
  client: ClientName.optional(),
});
