/** The only listener: the app on a port of this machine. */
import { createAdaptorServer } from '@hono/node-server';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Fault } from '../base/fault.ts';
import { createApp, type AppParts } from './app.ts';

/** Time for answers on their way when the server stops, and how often connections that have had theirs are let go. */
const LAST_ANSWERS_ms = 1000;
const LET_GO_ms = 20;

const HIGHEST_PORT = 65_535;

/** How many ports are tried after the first. */
const MORE_PORTS = 20;

export interface Listening {
  readonly port: number;
  /** Stops listening, ends live events and lets answers on their way out. */
  readonly close: () => Promise<void>;
}

function portFault(error: NodeJS.ErrnoException, port: number): Error {
  if (error.code === 'EADDRINUSE')
    return new Fault({
      code: 'port.taken',
      what: `Another program listens on port ${port}`,
      where: `port ${port}`,
      mend: 'Stop that program, or give another port with --port.',
      retry: true,
      cause: error,
    });
  if (error.code === 'EACCES')
    return new Fault({
      code: 'port.forbidden',
      what: `This account may not listen on port ${port}`,
      where: `port ${port}`,
      mend: 'Give a port of 1024 or above with --port.',
      cause: error,
    });
  return error;
}

function listen(server: Server, port: number, host: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException) => reject(portFault(error, port));
    server.once('error', failed);
    server.listen(port, host, () => {
      server.off('error', failed);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

async function listenFrom(server: Server, first: number, host: string): Promise<number> {
  const last = Math.min(first + MORE_PORTS, HIGHEST_PORT);
  for (let port = first; ; port += 1) {
    try {
      return await listen(server, port, host);
    } catch (error) {
      if (!(error instanceof Fault && error.code === 'port.taken') || port === last) throw error;
    }
  }
}

/**
 * Listens on a port; 0 takes any free one. With `mayMove` the next free port is taken where that one is not free.
 * Throws Fault `port.taken` or `port.forbidden`.
 */
export async function serve({
  port,
  host = '127.0.0.1',
  mayMove = false,
  ...parts
}: Omit<AppParts, 'closing'> & {
  readonly port: number;
  readonly host?: string;
  readonly mayMove?: boolean;
}): Promise<Listening> {
  const closing = new AbortController();
  const app = createApp({ ...parts, closing: closing.signal });
  const server = createAdaptorServer({ fetch: app.fetch, overrideGlobalObjects: false }) as Server;
  const found = mayMove ? await listenFrom(server, port, host) : await listen(server, port, host);
  const close = () =>
    new Promise<void>((resolve) => {
      const letGo = setInterval(() => server.closeIdleConnections(), LET_GO_ms);
      const patience = setTimeout(() => server.closeAllConnections(), LAST_ANSWERS_ms);
      server.close(() => {
        clearInterval(letGo);
        clearTimeout(patience);
        resolve();
      });
      closing.abort();
    });
  return { port: found, close };
}
