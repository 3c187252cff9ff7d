/** Ids for what is added to a map of a shoot. */
import { writtenValueAt } from './patch.ts';
import { isRecord, type Written } from './written.ts';

/** An id nobody has, written or read: `shot-6`, `pour-2`. */
export function freshId(written: Written, wanted: string, section = '/shots'): string {
  const taken = writtenValueAt(written, section);
  const isTaken = (id: string) => isRecord(taken) && Object.hasOwn(taken, id);
  for (let n = 1; ; n += 1) {
    const id = `${wanted}-${n}`;
    if (!isTaken(id)) return id;
  }
}
