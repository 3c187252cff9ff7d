/** A process of its own that edits a store as fast as it can and says, on standard output, each number once stored. */
import { writeSync } from 'node:fs';
import { openStore } from '../src/store/openStore.ts';

const [folder = '', round = ''] = process.argv.slice(2);
const store = await openStore({ folder });
const at = '2027-03-09T07:30:00.000Z';
for (let count = 0; ; count += 1) {
  const { revision } = store.open('s');
  const patch = [
    { op: 'add', path: '/shots/splash/note', value: `${round}/${count} `.repeat(1 + (count % 400)) },
  ] as const;
  const who = `burst-${round}`;
  store.edit('s', { editId: `burst-${round}-${count}`, who, at, revision, patch, summary: `Note ${count}` });
  if (count % 7 === 6) store.undo('s', { editId: `undo-${round}-${count}`, who, at });
  // Written at once, so that what was said before the end is heard.
  writeSync(1, `${store.open('s').revision}\n`);
}
