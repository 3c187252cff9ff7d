/** /api/shoots: shoots listed, brought in, opened, edited; every edit goes through the journal. */
import { Hono, type Context } from 'hono';
import { parsed } from '../../api/parsed.ts';
import type { EditReply, JournalReply, ShootListReply, ShootReply } from '../../api/replies.ts';
import { CLIENT_HEADER, REVISION_HEADER, UNNAMED_CLIENT } from '../../api/routes.ts';
import { ClientName, EditRequest, ImportRequest, JournalQuery, ShootId, StepRequest } from '../../api/schemas.ts';
import type { Act, OpenShoot, ShootStore } from '../../store/shootStore.ts';
import { parsedBody } from '../body.ts';
import type { Clock } from '../clock.ts';

export function shootRoutes({ store, clock }: { readonly store: ShootStore; readonly clock: Clock }) {
  const who = (c: Context) =>
    parsed(ClientName, c.req.header(CLIENT_HEADER) ?? UNNAMED_CLIENT, `the header ${CLIENT_HEADER}`);
  const shootId = (c: Context) => parsed(ShootId, c.req.param('shootId'), 'the shoot id in the address');
  const act = (c: Context, editId: string): Act => ({ editId, who: who(c), at: clock.now().toISOString() });
  const reply = (c: Context, { id, revision, title, written }: OpenShoot): ShootReply => ({
    id,
    revision,
    title,
    written,
    ...store.steps(id, who(c)),
  });

  return new Hono()
    .get('/', (c) => c.json({ shoots: store.list() } satisfies ShootListReply))
    .post('/', async (c) => {
      const sent = await parsedBody(c, ImportRequest, 'the shoot to bring in');
      return c.json(reply(c, store.bringIn({ ...sent, at: clock.now().toISOString() })), 201);
    })
    .get('/:shootId', (c) => c.json(reply(c, store.open(shootId(c)))))
    .get('/:shootId/text', (c) => {
      const { text, revision } = store.open(shootId(c));
      return c.body(text, 200, { 'content-type': 'text/yaml; charset=utf-8', [REVISION_HEADER]: String(revision) });
    })
    .get('/:shootId/journal', (c) => {
      const range = parsed(JournalQuery, c.req.query(), 'the query');
      return c.json(store.journal(shootId(c), range) satisfies JournalReply);
    })
    .post('/:shootId/edits', async (c) => {
      const { editId, ...edit } = await parsedBody(c, EditRequest, 'the edit');
      return c.json(store.edit(shootId(c), { ...act(c, editId), ...edit }) satisfies EditReply);
    })
    .post('/:shootId/undo', async (c) => {
      const { editId } = await parsedBody(c, StepRequest, 'the undo');
      return c.json(store.undo(shootId(c), act(c, editId)) satisfies EditReply);
    })
    .post('/:shootId/redo', async (c) => {
      const { editId } = await parsedBody(c, StepRequest, 'the redo');
      return c.json(store.redo(shootId(c), act(c, editId)) satisfies EditReply);
    });
}
