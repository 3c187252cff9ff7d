/** `longsecond serve`: the store and the screens, on this machine alone, until it is told to stop. */
import { InvalidArgumentError, type Command } from 'commander';
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bringInDemo, bringInFile } from '../../server/bringIn.ts';
import { serve } from '../../server/serve.ts';
import { dataFolder } from '../../store/dataFolder.ts';
import { openStore } from '../../store/openStore.ts';
import type { ShootStore } from '../../store/shootStore.ts';
import type { SetUpVerb } from '../command.ts';
import { columns, type Terminal } from '../terminal.ts';

const DEFAULT_PORT = 4460;

interface ServeOptions {
  readonly port?: number;
  readonly data?: string;
  readonly shoot: readonly string[];
}

function parsePort(text: string): number {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port <= 65_535) return port;
  throw new InvalidArgumentError('It is a whole number from 0 to 65535.');
}

/** Stands above both the sources and what is built of them. */
function packageRoot(): string {
  const start = dirname(fileURLToPath(import.meta.url));
  for (let folder = start; folder !== dirname(folder); folder = dirname(folder)) {
    const file = join(folder, 'package.json');
    if (existsSync(file) && (JSON.parse(readFileSync(file, 'utf8')) as { name?: unknown }).name === 'longsecond')
      return folder;
  }
  return start;
}

/** `asked` resolves at the first signal to stop; a second one, or any after `forget`, ends the process as ever. */
function stopSignals(): { readonly asked: Promise<void>; readonly forget: () => void } {
  const signals = ['SIGINT', 'SIGTERM'] as const;
  let heard = () => {};
  const forget = () => {
    for (const signal of signals) process.off(signal, heard);
  };
  const asked = new Promise<void>((stop) => {
    heard = () => {
      forget();
      stop();
    };
    for (const signal of signals) process.on(signal, heard);
  });
  return { asked, forget };
}

const clock = { now: () => new Date() };

function bringInAll(store: ShootStore, { shoot: files }: ServeOptions, demo: string): readonly string[] {
  const notes = files.map((given) => {
    const file = resolve(given);
    const { id, isNew } = bringInFile({ store, clock, file });
    return isNew
      ? `${given} brought in as ${id}`
      : `${id} is here already and was kept as it is; ${given} was not read`;
  });
  const brought = bringInDemo({ store, clock, file: demo });
  if (brought) notes.push('the demo was brought in, as these are the first shoots here');
  else if (store.list().length === 0) notes.push('there are no shoots yet, and no demo comes with this copy');
  return notes;
}

function chosenFolder({ data }: ServeOptions): string {
  return data === undefined
    ? dataFolder({ platform: process.platform, home: homedir(), env: process.env })
    : resolve(data);
}

async function serveUntil(asked: Promise<void>, store: ShootStore, options: ServeOptions, terminal: Terminal) {
  const root = packageRoot();
  const notes = bringInAll(store, options, join(root, 'demo', 'shoot.yaml'));
  const listening = await serve({
    store,
    webFolder: join(root, 'dist', 'web'),
    clock,
    log: (line) => terminal.err(`${line}\n`),
    port: options.port ?? DEFAULT_PORT,
    mayMove: options.port === undefined,
  });
  const { bold, dim } = terminal.outColour;
  const backups = store.backups.map((backup): [string, string] => ['backup', backup]);
  const rows: [string, string][] = [
    ['Longsecond', bold(`http://localhost:${listening.port}/`)],
    ['shoots in', dirname(store.file)],
    ...backups,
    ...notes.map((note): [string, string] => ['', note]),
  ];
  terminal.out(`${columns(rows)}  ${dim('Ctrl-C stops it.')}\n`);
  await asked;
  await listening.close();
}

async function run(options: ServeOptions, terminal: Terminal): Promise<void> {
  const { asked, forget } = stopSignals();
  try {
    const store = await openStore({ folder: chosenFolder(options) });
    try {
      await serveUntil(asked, store, options, terminal);
    } finally {
      store.close();
    }
  } finally {
    forget();
  }
}

export const setUpServe: SetUpVerb = (command: Command, { terminal }) => {
  command
    .option('--port <port>', `port to listen on (default: ${DEFAULT_PORT}, or the next free one)`, parsePort)
    .option('--data <folder>', "folder that holds the shoots (default: the user's data folder)")
    .option('--shoot <file...>', 'shoots to bring in where they are not here yet', [])
    .action((options: ServeOptions) => run(options, terminal));
};
