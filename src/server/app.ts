/** The whole server as a function of requests: no socket, no clock of its own, so that it can be called in a test. */
import { Hono } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { randomBytes } from 'node:crypto';
import { Fault } from '../base/fault.ts';
import type { FootageDesk } from '../jobs/types.ts';
import type { ShootStore } from '../store/shootStore.ts';
import type { Clock } from './clock.ts';
import { bugFault, faultReply, statusOf } from './faults.ts';
import { ownHostOnly, ownOriginOnly, securityHeaders } from './guards.ts';
import { presenceDesk } from './presence.ts';
import { editRoutes } from './routes/edits.ts';
import { eventRoutes } from './routes/events.ts';
import { fileRoutes } from './routes/files.ts';
import { footageRoutes } from './routes/footage.ts';
import { historyRoutes } from './routes/history.ts';
import { paperRoutes } from './routes/paper.ts';
import { presenceRoutes } from './routes/presence.ts';
import { shootRoutes } from './routes/shoots.ts';
import { screen } from './screens.ts';

export interface AppParts {
  readonly store: ShootStore;
  /** Where the built screens are. */
  readonly webFolder: string;
  readonly clock: Clock;
  /** Clips that came back; left out, nothing of footage is answered. */
  readonly footage?: FootageDesk;
  /** Ends live events when aborted. */
  readonly closing?: AbortSignal;
  /** Takes what no client should see: stacks of our own failures. */
  readonly log: (line: string) => void;
}

const causeOf = ({ cause }: Fault) => (cause instanceof Error ? `\n${cause.stack}` : '');

/** Every answer is made here or in a route; failures meet in the one `onError`. */
export function createApp({
  store,
  webFolder,
  clock,
  log,
  footage,
  closing = new AbortController().signal,
}: AppParts): Hono {
  const app = new Hono();
  app.use(securityHeaders, ownHostOnly, ownOriginOnly);
  app.use('/api/*', async (c, next) => {
    await next();
    if (!c.res.headers.has('cache-control')) c.header('cache-control', 'no-store');
  });
  const desk = presenceDesk({ clock });
  app.route('/api/shoots', shootRoutes({ store, clock }));
  app.route('/api/shoots', editRoutes({ store, clock }));
  app.route('/api/shoots', historyRoutes({ store }));
  app.route('/api/shoots', fileRoutes({ store }));
  app.route('/api/shoots', paperRoutes({ store, clock }));
  app.route('/api/shoots', presenceRoutes({ store, desk }));
  app.route('/api/shoots', eventRoutes({ store, desk, closing }));
  if (footage) app.route('/api/shoots', footageRoutes({ desk: footage, clock, closing }));
  app.get('*', (c, next) => (c.req.path === '/api' || c.req.path.startsWith('/api/') ? next() : screen(c, webFolder)));
  app.notFound((c) => {
    throw new Fault({
      code: 'route.unknown',
      what: `Nothing here answers ${c.req.method}`,
      where: c.req.path.slice(0, 200),
      mend: 'Check the address and the method.',
    });
  });
  app.onError((error, c) => {
    if (error instanceof Fault) {
      const status = statusOf(error.code);
      if (status >= 500) log(`${clock.now().toISOString()} ${error.code}: ${error.message}${causeOf(error)}`);
      return c.json(faultReply(error), status as ContentfulStatusCode);
    }
    const where = `${c.req.method} ${c.req.path.slice(0, 200)}`;
    const reference = randomBytes(4).toString('hex');
    log(`${clock.now().toISOString()} bug ${reference} at ${where}\n${error.stack ?? String(error)}`);
    return c.json(faultReply(bugFault({ where, reference })), 500);
  });
  return app;
}
