/**
 * ffmpeg and ffprobe as processes of their own: found by the variable LONGSECOND_FFMPEG or on the path, started without a
 * shell, killed when they stall, when nobody wants them any more, and when this process ends.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { dirname, join } from 'node:path';
import { Fault } from '../base/fault.ts';

export type ToolName = 'ffmpeg' | 'ffprobe';

/** The program to start: beside the ffmpeg that LONGSECOND_FFMPEG names, or whatever the path has. */
function programOf(tool: ToolName, env: Readonly<Record<string, string | undefined>>): string {
  const named = env['LONGSECOND_FFMPEG'];
  if (!named) return tool;
  return tool === 'ffmpeg' ? named : join(dirname(named), named.endsWith('.exe') ? 'ffprobe.exe' : 'ffprobe');
}

const INSTALL: Readonly<Record<string, string>> = {
  linux: 'Install it, on Debian or Ubuntu with: sudo apt install ffmpeg',
  darwin: 'Install it, with Homebrew: brew install ffmpeg',
  win32: 'Install it, with winget: winget install ffmpeg',
};

/** The fault of a tool that could not be started. */
function notStarted(tool: ToolName, program: string, cause: NodeJS.ErrnoException): Fault {
  const isMissing = cause.code === 'ENOENT';
  return new Fault({
    code: isMissing ? 'media.no-ffmpeg' : 'media.ffmpeg-not-started',
    what: isMissing ? `Footage is read by ${tool}, and it is not there` : `${tool} cannot be started: ${cause.message}`,
    where: program,
    mend: `${INSTALL[process.platform] ?? 'Install ffmpeg.'} Or name the program in LONGSECOND_FFMPEG.`,
    cause,
  });
}

const running = new Set<ChildProcess>();
/** Processes that another thread of this program started. */
const adopted = new Set<number>();
let heard: ((pid: number, isRunning: boolean) => void) | undefined;

function killAll(): void {
  for (const child of running) child.kill('SIGKILL');
  for (const pid of adopted) {
    try {
      process.kill(pid, 'SIGKILL');
    } catch {
      // It ended by itself.
    }
  }
}

let isWatching = false;

/** Kills when this process ends what is running then. */
function watchEnd(): void {
  if (isWatching) return;
  isWatching = true;
  process.on('exit', killAll);
}

/** Tells of every process that starts and ends: a thread may end before it could end its own. */
export function hearOfTools(hear: (pid: number, isRunning: boolean) => void): void {
  heard = hear;
}

/** Has a process that another thread started killed when this process ends; returns how to let go of it. */
export function adoptTool(pid: number): () => void {
  watchEnd();
  adopted.add(pid);
  return () => void adopted.delete(pid);
}

export interface StartedTool {
  readonly child: ChildProcess;
  /** Settles when it has ended and its streams are closed: its exit code, or nothing where it was killed. */
  readonly ended: Promise<number | undefined>;
}

/**
 * Starts a tool with these arguments, its standard input empty, and more pipes out of it where they are asked for, by number.
 * Rejects in `ended` with a Fault where it cannot be started.
 */
export function startTool(
  tool: ToolName,
  args: readonly string[],
  env: NodeJS.ProcessEnv = process.env,
  pipes: readonly number[] = [],
): StartedTool {
  const program = programOf(tool, env);
  const open = [1, 2, ...pipes];
  const stdio = Array.from({ length: Math.max(...open) + 1 }, (_, i) => (open.includes(i) ? 'pipe' : 'ignore'));
  // Apart from the terminal's group, so that Ctrl-C reaches it only through us: ended by itself, it would seem to be done.
  const child = spawn(program, [...args], { stdio, env, windowsHide: true, detached: process.platform !== 'win32' });
  const { pid } = child;
  running.add(child);
  watchEnd();
  if (pid !== undefined) heard?.(pid, true);
  const ended = new Promise<number | undefined>((resolve, reject) => {
    child.once('error', (cause: NodeJS.ErrnoException) => {
      running.delete(child);
      reject(notStarted(tool, program, cause));
    });
    child.once('close', (code) => {
      running.delete(child);
      if (pid !== undefined) heard?.(pid, false);
      resolve(code ?? undefined);
    });
  });
  // Whoever awaits it hears of it; whoever does not must not bring the process down.
  ended.catch(() => undefined);
  return { child, ended };
}

export interface ToolReply {
  readonly code: number | undefined;
  readonly out: string;
  /** The same as it came. */
  readonly bytes: Buffer;
  readonly err: string;
}

export interface RunGiven {
  readonly tool: ToolName;
  readonly args: readonly string[];
  /** What it works on, for messages. */
  readonly where: string;
  readonly timeout_ms?: number;
  readonly mostOut_B?: number;
  /** Of what it says besides; the rest is dropped. */
  readonly mostErr_B?: number;
  readonly signal?: AbortSignal;
  readonly env?: NodeJS.ProcessEnv;
}

const TIMEOUT_ms = 30_000;
const MOST_OUT_B = 16e6;
/** Of what a tool says, as much as anybody reads. */
const MOST_ERR_B = 64e3;

/** Runs a tool to its end. Throws a Fault where it is not there, takes too long or says too much, and what the signal says. */
export async function runTool(given: RunGiven): Promise<ToolReply> {
  const {
    tool,
    args,
    where,
    timeout_ms = TIMEOUT_ms,
    mostOut_B = MOST_OUT_B,
    mostErr_B = MOST_ERR_B,
    signal,
    env,
  } = given;
  signal?.throwIfAborted();
  const { child, ended } = startTool(tool, args, env);
  const [out, err]: [Buffer[], Buffer[]] = [[], []];
  let [outSize_B, errSize_B] = [0, 0];
  let problem: Fault | undefined;
  const give = (fault: Fault | undefined): void => {
    problem ??= fault;
    child.kill('SIGKILL');
  };
  const stop = (): void => give(undefined);
  signal?.addEventListener('abort', stop);
  const timer = setTimeout(() => give(stalled(where, timeout_ms)), timeout_ms);
  child.stdout!.on('data', (chunk: Buffer) => {
    outSize_B += chunk.length;
    if (outSize_B > mostOut_B)
      give(new Fault({ code: 'media.absurd', what: `${tool} tells of it in more than ${mostOut_B / 1e6} MB`, where, mend: 'Check that this is footage.' })); // prettier-ignore
    else out.push(chunk);
  });
  child.stderr!.on('data', (chunk: Buffer) => {
    errSize_B += chunk.length;
    if (errSize_B <= mostErr_B) err.push(chunk);
  });
  try {
    const code = await ended;
    signal?.throwIfAborted();
    if (problem) throw problem;
    const bytes = Buffer.concat(out);
    return { code, out: bytes.toString('utf8'), bytes, err: Buffer.concat(err).toString('utf8') };
  } finally {
    clearTimeout(timer);
    signal?.removeEventListener('abort', stop);
  }
}

/** The fault of a tool that gave nothing for so long. */
export function stalled(where: string, after_ms: number): Fault {
  return new Fault({
    code: 'media.stalled',
    what: `Nothing came of it in ${Math.round(after_ms / 1000)} s`,
    where,
    mend: 'Copy it to a disk of this machine and try again.',
    retry: true,
  });
}

/** The last thing a tool complained of, on one line and without the addresses it prints. */
export function lastComplaint(err: string): string {
  const lines = err
    .split(/\r?\n/)
    .map((line) => line.replace(/^\[[^\]]*\]\s*/, '').trim())
    .filter((line) => line !== '');
  return (lines.at(-1) ?? '').slice(0, 300);
}
