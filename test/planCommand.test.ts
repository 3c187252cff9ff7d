/** `longsecond plan` as its own process: bundled from the sources as they are, run on the demo. */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PlanReply } from '../src/turnover/planSchema.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const DEMO = 'demo/shoot.yaml';

let folder = '';

beforeAll(async () => {
  mkdirSync(join(ROOT, '.cache'), { recursive: true });
  folder = mkdtempSync(join(ROOT, '.cache/command-'));
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'error',
    build: {
      ssr: true,
      target: 'node20',
      minify: false,
      outDir: folder,
      rolldownOptions: { input: join(ROOT, 'src/cli/main.ts'), output: { entryFileNames: 'main.mjs' } },
    },
  });
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command with what is written to its standard input; `readAtMost_B` closes its output early. */
function run(args: readonly string[], { input = '', env = {}, readAtMost_B = Infinity } = {}): Promise<Ran> {
  return new Promise((settle, reject) => {
    const child = spawn(process.execPath, [join(folder, 'main.mjs'), 'plan', ...args], {
      cwd: ROOT,
      env: { ...process.env, ...env },
    });
    const heard = { out: '', err: '' };
    child.stdout.on('data', (bytes: Buffer) => {
      heard.out += bytes.toString('utf8');
      if (heard.out.length > readAtMost_B) child.stdout.destroy();
    });
    child.stderr.on('data', (bytes: Buffer) => (heard.err += bytes.toString('utf8')));
    // A command that ends without reading its input closes it under the writer.
    child.stdin.on('error', () => undefined);
    child.on('error', reject);
    child.on('close', (code) => settle({ code, ...heard }));
    child.stdin.end(input);
  });
}

describe('the command as a process', { timeout: 60_000 }, () => {
  test('prints the plan of the demo on standard output, without colour, and ends with 0', async () => {
    const { code, out, err } = await run([DEMO]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('Quince & Clover, day 1\n');
    expect(out).toContain('The whole shoot\n');
    expect(out).not.toContain('\u001b');
  });

  test('reads standard input where the file is a dash', async () => {
    const [piped, named] = await Promise.all([
      run(['-'], { input: readFileSync(join(ROOT, DEMO), 'utf8') }),
      run([DEMO]),
    ]);
    expect(piped).toEqual(named);
  });

  test('ends with 1 with --strict, as the demo has limits that are short', async () => {
    expect((await run([DEMO, '--strict'])).code).toBe(1);
  });

  test('ends with 2 on bad input, with nothing on standard output and no stack', async () => {
    const { code, out, err } = await run(['-'], { input: 'longsecond: 1\nshots: [\n' });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('standard input:3:1');
    expect(err).not.toMatch(/\n {4}at /);
  });

  test('writes a reply of hundreds of kilobytes whole through a pipe', async () => {
    const { code, out } = await run([DEMO, '--json']);
    expect(code).toBe(0);
    expect(PlanReply.parse(JSON.parse(out)).shots.length).toBeGreaterThanOrEqual(9);
  });

  test('a reader that stops early is no failure', async () => {
    const { err } = await run([DEMO, '--json'], { readAtMost_B: 1000 });
    expect(err).toBe('');
  });

  test('the same file gives the same text, run after run', async () => {
    const [one, two] = await Promise.all([run([DEMO, '--ways']), run([DEMO, '--ways'])]);
    expect(one.out).toBe(two.out);
  });
});
