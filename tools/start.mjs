/** `npm start`: installs and builds what has changed, then runs `longsecond serve` with the arguments given. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, isBuilt } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { ROOT } from './run.mjs';

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);

async function prepare() {
  if (major < 20 || (major === 20 && minor < 19)) {
    throw new Error(`Longsecond needs Node 20.19 or newer; this is ${process.versions.node}`);
  }
  await ensureInstalled();
  if (!isBuilt() && !(await build())) throw new Error('The build failed, so there is nothing to start');
}

try {
  await prepare();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

// The command runs in this very process, so signals reach it and its exit code is ours without being passed on.
const command = join(ROOT, 'dist/node/cli/main.js');
process.argv = [process.execPath, command, 'serve', ...process.argv.slice(2)];
await import(pathToFileURL(command).href);
