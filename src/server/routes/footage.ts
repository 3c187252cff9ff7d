/** /api/shoots/:shootId/footage: clips that came back, what is done to them, and what was found in them. */
import { Hono, type Context } from 'hono';
import { createHash } from 'node:crypto';
import { parsed } from '../../api/parsed.ts';
import { ClipId, FolderQuery, FootageRequest, MeasureRequest, StillQuery } from '../../api/footage.ts';
import { Fault } from '../../base/fault.ts';
import type { FootageDesk } from '../../jobs/types.ts';
import type { FolderListing, FootageState } from '../../record/footage.ts';
import { actOf, shootIdOf } from '../asker.ts';
import { parsedBody } from '../body.ts';
import type { Clock } from '../clock.ts';
import { followFootage } from '../followFootage.ts';
import { sendFile } from '../sendFile.ts';

/** Pictures come from footage of anybody: nothing in them may run, and each is asked for again only where its clip changed. */
const KEPT_APART = {
  'content-security-policy': "default-src 'none'; sandbox",
  'x-content-type-options': 'nosniff',
  'cache-control': 'private, no-cache',
};

const clipIdOf = (c: Context): string => parsed(ClipId, c.req.param('clipId'), 'the clip id in the address');

/** Of bytes that come of these words: the same as long as they are. */
const tagOf = (...words: readonly string[]): string =>
  `"${createHash('sha256').update(JSON.stringify(words)).digest('hex').slice(0, 32)}"`;

function notYet(code: string, what: string, c: Context, mend: string): Fault {
  return new Fault({ code, what, where: c.req.path.slice(0, 200), mend });
}

export interface FootageParts {
  readonly desk: FootageDesk;
  readonly clock: Clock;
  readonly closing: AbortSignal;
}

export function footageRoutes({ desk, clock, closing }: FootageParts) {
  return new Hono()
    .get('/:shootId/footage', async (c) => c.json((await desk.look(shootIdOf(c))) satisfies FootageState))
    .post('/:shootId/footage', async (c) => {
      const { eventId, event } = await parsedBody(c, FootageRequest, 'what happened');
      const { who, name, at } = actOf(c, clock, eventId);
      return c.json((await desk.happen(shootIdOf(c), { eventId, who, name, at, event })) satisfies FootageState);
    })
    .get('/:shootId/footage/folder', async (c) => {
      const place = parsed(FolderQuery, c.req.query(), 'the query');
      return c.json((await desk.folder(shootIdOf(c), place)) satisfies FolderListing);
    })
    .get('/:shootId/footage/live', async (c) => {
      const shootId = shootIdOf(c);
      // Looked at once before anything is answered, so that a shoot that is not there is refused.
      await desk.look(shootId);
      return c.body(followFootage({ desk, shootId, closing }), 200, {
        'content-type': 'text/event-stream; charset=utf-8',
        'cache-control': 'no-store',
      });
    })
    .post('/:shootId/footage/:clipId/measure', async (c) => {
      const how = await parsedBody(c, MeasureRequest, 'how to measure it');
      return c.json((await desk.measure(shootIdOf(c), clipIdOf(c), how)) satisfies FootageState);
    })
    .post('/:shootId/footage/:clipId/stop', async (c) => c.json((await desk.stop(shootIdOf(c), clipIdOf(c))) satisfies FootageState))
    .get('/:shootId/footage/:clipId/measured', async (c) => {
      const text = await desk.measured(shootIdOf(c), clipIdOf(c));
      if (text === undefined) throw notYet('footage.not-measured', 'Nothing of this clip is measured yet', c, 'Measure it, and ask again when that is done.');
      return c.body(text, 200, { 'content-type': 'application/json', 'cache-control': 'no-store' });
    })
    .get('/:shootId/footage/:clipId/still', async (c) => {
      const [shootId, clipId] = [shootIdOf(c), clipIdOf(c)];
      const { frame, width } = parsed(StillQuery, c.req.query(), 'the query');
      const etag = tagOf(await desk.mark(shootId, clipId), String(frame), String(width));
      if (c.req.header('if-none-match') === etag) return c.body(null, 304, { ...KEPT_APART, etag });
      const bytes = await desk.still(shootId, { clipId, frame, width });
      return c.body(bytes, 200, { ...KEPT_APART, etag, 'content-type': 'image/jpeg', 'content-length': String(bytes.byteLength) });
    })
    .get('/:shootId/footage/:clipId/proxy', async (c) => {
      const file = await desk.proxyFile(shootIdOf(c), clipIdOf(c));
      if (file === undefined) throw notYet('footage.no-copy', 'There is no small copy of this clip', c, 'Have one made, and ask again when that is done.');
      return sendFile(c, { file, headers: { ...KEPT_APART, 'content-type': file.endsWith('.webm') ? 'video/webm' : 'video/mp4' } });
    })
    .post('/:shootId/footage/:clipId/proxy', async (c) => c.json((await desk.makeProxy(shootIdOf(c), clipIdOf(c))) satisfies FootageState));
} // prettier-ignore
