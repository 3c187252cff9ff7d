/** What the routes of the footage of a shoot take; where they are is in footageRoutes.ts, which screens load without this. */
import * as z from 'zod';

/** Made by whoever adds a clip, as event ids are. */
export const ClipId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9-]{7,63}$/, 'must be 8 to 64 letters, digits and hyphens');
const EventId = ClipId;
const ShotId = z.string().regex(/^[A-Za-z][A-Za-z0-9-]{0,63}$/, 'must be the id of a shot');
const FolderName = z.string().min(1).max(1000);
const Path = z.string().max(4000);
const Frame = z.int().min(0).max(100_000_000);

const Event = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('added'),
    clipId: ClipId,
    folder: FolderName,
    path: Path.min(1),
    shotId: ShotId.optional(),
  }),
  z.strictObject({
    kind: z.literal('told'),
    clipId: ClipId,
    shotId: ShotId.nullish(),
    captureRate_fps: z.number().positive().max(10_000_000).nullish(),
    curve: z.string().min(1).max(200).nullish(),
    blackCode: z.int().min(0).max(65_535).nullish(),
    note: z.string().trim().min(1).max(500).nullish(),
  }),
  z.strictObject({
    kind: z.literal('kept'),
    clipId: ClipId,
    kept: z
      .strictObject({ inFrame: Frame, outFrame: Frame })
      .refine(({ inFrame, outFrame }) => inFrame <= outFrame, 'must end at or after its first frame')
      .nullable(),
  }),
  z.strictObject({ kind: z.literal('aside'), clipId: ClipId, isAside: z.boolean() }),
]);

export const FootageRequest = z.strictObject({ eventId: EventId, event: Event });
export const MeasureRequest = z.strictObject({ isAnew: z.boolean().default(false) });
export const FolderQuery = z.strictObject({ folder: FolderName, path: Path.default('') });
export const StillQuery = z.strictObject({
  frame: z.coerce.number().int().min(0).max(100_000_000),
  width: z.coerce.number().int().min(16).max(4096).default(960),
});
