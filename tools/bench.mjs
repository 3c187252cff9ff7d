/**
 * `npm run bench [-- name… --quick]`: bundles bench/*.bench.ts for this Node and runs them one after another, all or
 * those whose file name holds one of the names given. Nothing else should be running.
 */
import { readdirSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { ROOT, run } from './run.mjs';

const names = process.argv.slice(2).filter((arg) => !arg.startsWith('-'));
const options = process.argv.slice(2).filter((arg) => arg.startsWith('-'));

const benches = readdirSync(join(ROOT, 'bench'))
  .filter((file) => file.endsWith('.bench.ts'))
  .filter((file) => names.length === 0 || names.some((name) => file.includes(name)))
  .map((file) => file.replace(/\.ts$/, ''));
if (benches.length === 0) {
  console.error(`No file of bench/ is named like ${names.join(' or ')}`);
  process.exit(2);
}

await build({
  configFile: false,
  root: ROOT,
  logLevel: 'warn',
  build: {
    ssr: true,
    target: 'node20',
    minify: false,
    emptyOutDir: true,
    outDir: join(ROOT, 'dist/bench'),
    rolldownOptions: {
      input: Object.fromEntries(benches.map((name) => [name, join(ROOT, 'bench', `${name}.ts`)])),
      output: { entryFileNames: '[name].mjs', chunkFileNames: 'parts/[name]-[hash].mjs' },
    },
  },
});

const [load = 0] = loadavg();
if (load > availableParallelism() / 2)
  console.log(`The machine is busy (load ${load.toFixed(1)}): ratios will spread more than they should.`);
for (const name of benches) {
  console.log(`\n${name}`);
  const { code } = await run(process.execPath, [join(ROOT, 'dist/bench', `${name}.mjs`), ...options], { show: true });
  if (code !== 0) process.exitCode = 1;
}
