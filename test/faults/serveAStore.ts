/** A process of its own that serves the store of a folder and says, on standard output, on which port. */
import { writeSync } from 'node:fs';
import { serve } from '../../src/server/serve.ts';
import { openStore } from '../../src/store/openStore.ts';

const [folder = ''] = process.argv.slice(2);
const store = await openStore({ folder });
const log = (line: string) => void writeSync(2, `${line}\n`);
const { port } = await serve({ store, webFolder: folder, clock: { now: () => new Date() }, log, port: 0 });
writeSync(1, `${port}\n`);
