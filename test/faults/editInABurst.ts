/**
 * A process of its own that waits for one line on standard input, `<folder> <round>`, then edits the store there as fast
 * as it can and says, on standard output, each number once stored.
 */
import { once } from 'node:events';
import { writeSync } from 'node:fs';
import { openStore } from '../../src/store/openStore.ts';

const [line] = (await once(process.stdin, 'data')) as [Buffer];
process.stdin.pause();
const [folder = '', round = ''] = line.toString().trim().split(' ');
const store = await openStore({ folder });
const at = '2027-03-09T07:30:00.000Z';
for (let count = 0; ; count += 1) {
  const { revision } = store.open('s');
  const patch = [{ op: 'add', path: '/shots/splash/note', value: `${round}/${count} `.repeat(1 + (count % 90)) }] as const;
  const who = `burst-${round}`;
  const id = `${round}-${count}`;
  store.edit('s', { editId: `edit-of-${id}`, who, name: 'Burst', at, revision, patch, summary: `Note ${count}` });
  if (count % 7 === 6) store.undo('s', { editId: `undo-of-${id}`, who, at });
  if (count % 5 === 4)
    store.restore('s', { editId: `restore-of-${id}`, who, at, revision: revision + 1, to: Math.max(0, revision - 3) });
  // Written at once, so that what was said before the end is heard.
  writeSync(1, `${store.open('s').revision}\n`);
} // prettier-ignore
