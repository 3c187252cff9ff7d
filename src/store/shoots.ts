/** Shoots as wholes: brought in, duplicated, and what each is in the list. */
import { Fault } from '../base/fault.ts';
import { withParents } from '../document/patch.ts';
import { readShootText } from '../document/text.ts';
import { editText } from '../document/textEdit.ts';
import type { Files } from './files.ts';
import { titleOf, type Shelf } from './shelf.ts';
import { idFrom, ID_PATTERN, isReservedId } from './shootId.ts';
import type { ShootEntry, Standing } from './statements.ts';
import type { Import, OpenShoot } from './types.ts';

export interface Shoots {
  readonly list: () => readonly ShootEntry[];
  readonly bringIn: (shoot: Import) => OpenShoot;
  readonly duplicate: (shootId: string, as: { readonly editId: string; readonly at: string; readonly title: string }) => OpenShoot;
  readonly setStanding: (shootId: string, standing: Standing) => ShootEntry;
} // prettier-ignore

export function openShoots(shelf: Shelf, files: Files): Shoots {
  const { sql, find } = shelf;
  const isTaken = (id: string) => sql.revision.get(id) !== undefined;

  function requireFree(id: string): void {
    if (isReservedId(id))
      throw new Fault({
        code: 'shoot.id-reserved',
        what: 'This id is the address of another place',
        where: id,
        mend: 'Choose another id, or leave it out to have one made from the title.',
      });
    if (!ID_PATTERN.test(id) || isTaken(id))
      throw new Fault({
        code: 'shoot.id-taken',
        what: 'There is a shoot under this id already',
        where: id,
        mend: 'Choose another id, or leave it out to have one made from the title.',
      });
  }

  return {
    list: () => shelf.reading(() => sql.list.all()),

    bringIn: ({ editId, at, text, id: asked, files: incoming = [] }) => {
      const { written } = readShootText(text);
      const shootId = shelf.writing(() => {
        const first = sql.brought.get(editId);
        if (first !== undefined) return first;
        if (asked !== undefined) requireFree(asked);
        const id = asked ?? idFrom(titleOf(written, 'shoot'), isTaken);
        sql.add.run({ id, title: titleOf(written, id), text, at, editId });
        for (const file of incoming) files.keep(id, file);
        return id;
      });
      return shelf.reading(() => find(shootId));
    },

    duplicate: (shootId, { editId, at, title }) => {
      const copyId = shelf.writing(() => {
        const first = sql.brought.get(editId);
        if (first !== undefined) return first;
        const { text, written } = find(shootId);
        const patch = withParents(written, [{ op: 'add', path: '/shoot/title', value: title }]);
        const id = idFrom(title, isTaken);
        sql.add.run({ id, title, text: editText(text, patch).text, at, editId });
        sql.shareFiles.run({ from: shootId, to: id });
        return id;
      });
      return shelf.reading(() => find(copyId));
    },

    setStanding: (shootId, standing) =>
      shelf.writing(() => {
        find(shootId);
        sql.setStanding.run(standing, shootId);
        return sql.entry.get(shootId)!;
      }),
  };
}
