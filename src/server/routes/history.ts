/** /api/shoots/:shootId/text, at, journal and export: a shoot as it is, as it was, and to take away. */
import { Hono } from 'hono';
import { parsed } from '../../api/parsed.ts';
import type { JournalReply, ShootAtReply } from '../../api/replies.ts';
import { REVISION_HEADER } from '../../api/routes.ts';
import { ExportQuery, JournalQuery, Revision, TextQuery } from '../../api/schemas.ts';
import { plainTitle } from '../../store/shootId.ts';
import type { ShootStore } from '../../store/types.ts';
import { shootIdOf } from '../asker.ts';
import { disposition } from '../disposition.ts';
import { shootZip } from '../shootZip.ts';

const TEXT_TYPE = 'text/yaml; charset=utf-8';

export function historyRoutes({ store }: { readonly store: ShootStore }) {
  return new Hono()
    .get('/:shootId/text', (c) => {
      const { revision } = parsed(TextQuery, c.req.query(), 'the query');
      const id = shootIdOf(c);
      const shoot = revision === undefined ? store.open(id) : store.at(id, revision);
      return c.body(shoot.text, 200, { 'content-type': TEXT_TYPE, [REVISION_HEADER]: String(shoot.revision) });
    })
    .get('/:shootId/at/:revision', (c) => {
      const asked = parsed(Revision, c.req.param('revision'), 'the revision in the address');
      const { id, revision, title, written } = store.at(shootIdOf(c), asked);
      return c.json({ id, revision, title, written } satisfies ShootAtReply);
    })
    .get('/:shootId/journal', (c) => {
      const { after = 0, before, limit } = parsed(JournalQuery, c.req.query(), 'the query');
      const id = shootIdOf(c);
      const page = before === undefined ? store.journal(id, { after, limit }) : store.history(id, { before, limit });
      return c.json(page satisfies JournalReply);
    })
    .get('/:shootId/export', (c) => {
      const { as } = parsed(ExportQuery, c.req.query(), 'the query');
      const shoot = store.open(shootIdOf(c));
      const named = (type: string) => ({
        'content-type': type,
        'content-disposition': disposition('attachment', `${plainTitle(shoot.title)}.${as}`),
        [REVISION_HEADER]: String(shoot.revision),
      });
      if (as === 'yaml') return c.body(shoot.text, 200, named(TEXT_TYPE));
      if (as === 'json') return c.body(`${JSON.stringify(shoot.written, null, 2)}\n`, 200, named('application/json'));
      return c.body(shootZip(store, shoot), 200, named('application/zip'));
    });
}
