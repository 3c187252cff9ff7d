/** /api/shoots/:shootId/edits, undo, redo and restore: whatever changes a shoot goes through the journal. */
import { Hono } from 'hono';
import type { EditReply } from '../../api/replies.ts';
import { EditRequest, RestoreRequest, StepRequest } from '../../api/schemas.ts';
import type { ShootStore } from '../../store/types.ts';
import { actOf, shootIdOf } from '../asker.ts';
import { parsedBody } from '../body.ts';
import type { Clock } from '../clock.ts';

export function editRoutes({ store, clock }: { readonly store: ShootStore; readonly clock: Clock }) {
  return new Hono()
    .post('/:shootId/edits', async (c) => {
      const { editId, ...edit } = await parsedBody(c, EditRequest, 'the edit');
      return c.json(store.edit(shootIdOf(c), { ...actOf(c, clock, editId), ...edit }) satisfies EditReply);
    })
    .post('/:shootId/undo', async (c) => {
      const { editId } = await parsedBody(c, StepRequest, 'the undo');
      return c.json(store.undo(shootIdOf(c), actOf(c, clock, editId)) satisfies EditReply);
    })
    .post('/:shootId/redo', async (c) => {
      const { editId } = await parsedBody(c, StepRequest, 'the redo');
      return c.json(store.redo(shootIdOf(c), actOf(c, clock, editId)) satisfies EditReply);
    })
    .post('/:shootId/restore', async (c) => {
      const { editId, ...restore } = await parsedBody(c, RestoreRequest, 'the restore');
      return c.json(store.restore(shootIdOf(c), { ...actOf(c, clock, editId), ...restore }) satisfies EditReply);
    });
}
