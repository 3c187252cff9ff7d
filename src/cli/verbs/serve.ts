/** `longsecond serve`: the store and the screens, on this machine alone, until it is told to stop. */
import { InvalidArgumentError, type Command } from 'commander';
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openFolders, type Folders } from '../../jobs/folders.ts';
import { openDesk } from '../../jobs/openDesk.ts';
import type { FootageDesk } from '../../jobs/types.ts';
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
  readonly footage: readonly string[];
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

/** Folders that clips may be taken from: those named, or the demo's own while it is here and none is named. */
function footageFolders(store: ShootStore, { footage }: ServeOptions, demo: string): readonly string[] {
  if (footage.length > 0) return footage.map((folder) => resolve(folder));
  return existsSync(demo) && store.list().some(({ id }) => id === 'demo') ? [demo] : [];
}

/** Which folders are open, and which of them are not there now. */
async function footageRows(folders: Folders): Promise<readonly [string, string][]> {
  const there = await folders.look();
  return folders.opened.map(({ path }, i) => [
    'footage in',
    there[i]!.isThere ? path : `${path}, which is no folder that is there now; its clips come up once it is`,
  ]);
}

function chosenFolder({ data }: ServeOptions): string {
  return data === undefined
    ? dataFolder({ platform: process.platform, home: homedir(), env: process.env })
    : resolve(data);
}

interface Serving {
  readonly store: ShootStore;
  readonly footage: FootageDesk;
  readonly root: string;
  /** What is told of what was opened. */
  readonly rows: readonly [string, string][];
}

async function serveUntil(asked: Promise<void>, { store, footage, root, rows }: Serving, options: ServeOptions, terminal: Terminal) {
  const listening = await serve({
    store,
    footage,
    webFolder: join(root, 'dist', 'web'),
    clock,
    log: (line) => terminal.err(`${line}\n`),
    port: options.port ?? DEFAULT_PORT,
    mayMove: options.port === undefined,
  });
  const { bold, dim } = terminal.outColour;
  const address: [string, string] = ['Longsecond', bold(`http://localhost:${listening.port}/`)];
  terminal.out(`${columns([address, ...rows])}  ${dim('Ctrl-C stops it.')}\n`);
  await asked;
  await listening.close();
} // prettier-ignore

async function serveFrom(asked: Promise<void>, store: ShootStore, options: ServeOptions, terminal: Terminal) {
  const root = packageRoot();
  const notes = bringInAll(store, options, join(root, 'demo', 'shoot.yaml'));
  const folders = openFolders(footageFolders(store, options, join(root, 'demo', 'footage')));
  const kept = dirname(store.file);
  const footage = openDesk({ store, clock, folders, keepIn: kept });
  try {
    const rows: readonly [string, string][] = [
      ['shoots in', kept],
      ...(await footageRows(folders)),
      ...store.backups.map((backup): [string, string] => ['backup', backup]),
      ...notes.map((note): [string, string] => ['', note]),
    ];
    await serveUntil(asked, { store, footage, root, rows }, options, terminal);
  } finally {
    await footage.close();
  }
}

async function run(options: ServeOptions, terminal: Terminal): Promise<void> {
  const { asked, forget } = stopSignals();
  try {
    const store = await openStore({ folder: chosenFolder(options) });
    try {
      await serveFrom(asked, store, options, terminal);
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
    .option('--footage <folder...>', 'folders that clips may be taken from; no others are ever opened', [])
    .action((options: ServeOptions) => run(options, terminal));
};
