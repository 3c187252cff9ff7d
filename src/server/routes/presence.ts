/** /api/shoots/:shootId/presence: somebody says where they are; the others hear it by the live events. */
import { Hono } from 'hono';
import type { PresenceReply } from '../../api/replies.ts';
import { PresenceRequest } from '../../api/schemas.ts';
import type { ShootStore } from '../../store/types.ts';
import { nameOf, shootIdOf, whoAsks } from '../asker.ts';
import { parsedBody } from '../body.ts';
import type { PresenceDesk } from '../presence.ts';

export function presenceRoutes({ store, desk }: { readonly store: ShootStore; readonly desk: PresenceDesk }) {
  return new Hono().post('/:shootId/presence', async (c) => {
    const presence = await parsedBody(c, PresenceRequest, 'where somebody is');
    const { id } = store.open(shootIdOf(c));
    const present = desk.tell(id, { who: whoAsks(c), name: nameOf(c) }, presence);
    return c.json({ present } satisfies PresenceReply);
  });
}
