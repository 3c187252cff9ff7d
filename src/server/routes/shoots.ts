/** /api/shoots: shoots listed, brought in, opened, duplicated, and what each is in the list. */
import { Hono, type Context } from 'hono';
import { parsed } from '../../api/parsed.ts';
import type { ImportZipReply, ShootEntry, ShootListReply, ShootReply } from '../../api/replies.ts';
import { DuplicateRequest, ImportRequest, ImportZipQuery, StandingRequest } from '../../api/schemas.ts';
import type { OpenShoot, ShootStore } from '../../store/types.ts';
import { shootIdOf, whoAsks } from '../asker.ts';
import { bodyBytes, mediaType, parsedBody } from '../body.ts';
import type { Clock } from '../clock.ts';
import { readShootZip } from '../shootZip.ts';
import { LARGEST_ZIP_B } from '../zipLimits.ts';

const ZIP_LIMIT = {
  most_B: LARGEST_ZIP_B,
  mend: 'Bring the shoot in as text, then send its files one by one; nothing was stored.',
};

export function shootRoutes({ store, clock }: { readonly store: ShootStore; readonly clock: Clock }) {
  const now = () => clock.now().toISOString();
  const reply = (who: string, { id, revision, title, written }: OpenShoot): ShootReply => ({
    id,
    revision,
    title,
    written,
    ...store.steps(id, who),
  });

  const bringInZip = async (c: Context): Promise<ImportZipReply> => {
    const who = whoAsks(c);
    const asked = parsed(ImportZipQuery, c.req.query(), 'the query');
    const { text, files } = readShootZip(await bodyBytes(c, ZIP_LIMIT, 'the zip'));
    const shoot = store.bringIn({ ...asked, at: now(), text, files });
    const missingFiles = store
      .filesOf(shoot.id)
      .filter(({ size_B }) => size_B === undefined)
      .map(({ id, name, sha256 }) => ({
        id,
        ...(name === undefined ? {} : { name }),
        ...(sha256 === undefined ? {} : { sha256 }),
      }));
    return { ...reply(who, shoot), missingFiles };
  };

  return new Hono()
    .get('/', (c) => c.json({ shoots: store.list() } satisfies ShootListReply))
    .post('/', async (c) => {
      if (mediaType(c) === 'application/zip') return c.json(await bringInZip(c), 201);
      // Asked before anything is stored: what is refused must have changed nothing.
      const who = whoAsks(c);
      const sent = await parsedBody(c, ImportRequest, 'the shoot to bring in');
      return c.json(reply(who, store.bringIn({ ...sent, at: now() })), 201);
    })
    .get('/:shootId', (c) => c.json(reply(whoAsks(c), store.open(shootIdOf(c)))))
    .post('/:shootId/standing', async (c) => {
      const { standing } = await parsedBody(c, StandingRequest, 'what the shoot is to be');
      return c.json(store.setStanding(shootIdOf(c), standing) satisfies ShootEntry);
    })
    .post('/:shootId/duplicate', async (c) => {
      const who = whoAsks(c);
      const as = await parsedBody(c, DuplicateRequest, 'the duplicate');
      return c.json(reply(who, store.duplicate(shootIdOf(c), { ...as, at: now() })), 201);
    });
}
