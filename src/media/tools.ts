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

function killAll(): void {
  for (const child of running) child.kill('SIGKILL');
}

let isWatching = false;

export interface StartedTool {
  readonly child: ChildProcess;
  /** Settles when it has ended and its streams are closed: its exit code, or nothing where it was killed. */
  readonly ended: Promise<number | undefined>;
}

/** Starts a tool with these arguments, its standard input empty. Rejects in `ended` with a Fault where it cannot be started. */
export function startTool(tool: ToolName, args: readonly string[], env: NodeJS.ProcessEnv = process.env): StartedTool {
  const program = programOf(tool, env);
  const child = spawn(program, [...args], { stdio: ['ignore', 'pipe', 'pipe'], env, windowsHide: true });
  running.add(child);
  if (!isWatching) {
    isWatching = true;
    process.on('exit', killAll);
  }
  const ended = new Promise<number | undefined>((resolve, reject) => {
    child.once('error', (cause: NodeJS.ErrnoException) => {
      running.delete(child);
      reject(notStarted(tool, program, cause));
    });
    child.once('close', (code) => {
      running.delete(child);
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
  readonly err: string;
}

export interface RunGiven {
  readonly tool: ToolName;
  readonly args: readonly string[];
  /** What it works on, for messages. */
  readonly where: string;
  readonly timeout_ms?: number;
  readonly mostOut_B?: number;
  readonly signal?: AbortSignal;
  readonly env?: NodeJS.ProcessEnv;
}

const TIMEOUT_ms = 30_000;
const MOST_OUT_B = 16e6;
/** Of what a tool says, as much as anybody reads. */
const MOST_ERR_B = 64e3;

/** Runs a tool to its end. Throws a Fault where it is not there, takes too long or says too much, and what the signal says. */
export async function runTool(given: RunGiven): Promise<ToolReply> {
  const { tool, args, where, timeout_ms = TIMEOUT_ms, mostOut_B = MOST_OUT_B, signal, env } = given;
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
    if (errSize_B <= MOST_ERR_B) err.push(chunk);
  });
  try {
    const code = await ended;
    signal?.throwIfAborted();
    if (problem) throw problem;
    return { code, out: Buffer.concat(out).toString('utf8'), err: Buffer.concat(err).toString('utf8') };
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
