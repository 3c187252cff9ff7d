/** Running other programs and saying how it went: what every tool here shares. Needs nothing installed. */
import { spawn } from 'node:child_process';
import { realpathSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = resolve(import.meta.dirname, '..');

/** @typedef {{ readonly code: number, readonly output: string }} Ended */

/**
 * Runs a program in the repository's root and waits for it. With `show` its output goes straight to the terminal and is
 * not kept. A program that cannot be started ends with code 127, one ended by a signal with 128 and the signal's number.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ readonly show?: boolean, readonly env?: Readonly<Record<string, string>>, readonly cwd?: string }} [how]
 * @returns {Promise<Ended>}
 */
export function run(program, args, { show = false, env = {}, cwd = ROOT } = {}) {
  return new Promise((settle) => {
    const child = spawn(program, [...args], {
      cwd,
      env: { ...process.env, ...(show ? {} : { NO_COLOR: '1' }), ...env },
      stdio: show ? 'inherit' : ['ignore', 'pipe', 'pipe'],
    });
    /** @type {Buffer[]} */
    const heard = [];
    const hear = (/** @type {Buffer} */ bytes) => void heard.push(bytes);
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.on('error', (error) => settle({ code: 127, output: `${program}: ${error.message}` }));
    child.on('close', (code, signal) => {
      const output = Buffer.concat(heard).toString('utf8');
      settle({ code: code ?? (signal === 'SIGINT' ? 130 : 143), output });
    });
  });
}

/**
 * Runs a script of an installed package with this Node: no shell, and the same on every system.
 * @param {string} script path below node_modules
 * @param {readonly string[]} args
 * @param {Parameters<typeof run>[2]} [how]
 */
export function runInstalled(script, args, how) {
  return run(process.execPath, [join(ROOT, 'node_modules', script), ...args], how);
}

/**
 * Whether this module is the program being run, rather than imported by another.
 * @param {string} moduleUrl
 */
export function isProgram(moduleUrl) {
  const started = process.argv[1];
  return started !== undefined && realpathSync(started) === fileURLToPath(moduleUrl);
}

/**
 * The seconds since `from_ms`, for the end of a line.
 * @param {number} from_ms
 */
export function took(from_ms) {
  return `${((performance.now() - from_ms) / 1000).toFixed(1)} s`;
}

/**
 * @typedef {{ readonly title: string, readonly run: () => Promise<Ended> }} Step
 */

/**
 * Runs one step and prints its line; a step that fails prints everything it said.
 * @param {Step} step
 * @returns {Promise<boolean>} whether it passed
 */
export async function runStep({ title, run: start }) {
  const from_ms = performance.now();
  const { code, output } = await start();
  console.log(`${code === 0 ? 'ok    ' : 'FAILED'}  ${title.padEnd(44)} ${took(from_ms).padStart(7)}`);
  if (code !== 0) console.log(output.trimEnd());
  return code === 0;
}
