/** Who is listened to: requests for this machine by its own names, writes from our own pages or from no page at all. */
import type { MiddlewareHandler } from 'hono';
import { Fault } from '../base/fault.ts';

const OWN_HOST = /^(localhost|127\.0\.0\.1|\[::1\])(:\d{1,5})?$/i;

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Strict enough that a shoot from a stranger cannot bring a script along. */
const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': [
    "default-src 'self'",
    // The solver that finds light is WebAssembly; nothing else is compiled.
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

function hostFault(host: string): Fault {
  return new Fault({
    code: 'host.refused',
    what: `This server answers to localhost only, not to "${host.slice(0, 100)}"`,
    where: 'the Host of the request',
    mend: 'Open the address that the server printed when it started.',
  });
}

function originFault(origin: string): Fault {
  return new Fault({
    code: 'origin.refused',
    what: `A page of ${origin.slice(0, 100)} tried to change something here`,
    where: 'the Origin of the request',
    mend: 'Make changes from the pages of this server, or with the longsecond command.',
  });
}

/** Refuses a foreign name for this machine, behind which a page elsewhere could pose as ours. */
export const ownHostOnly: MiddlewareHandler = async (c, next) => {
  const url = new URL(c.req.url);
  for (const host of [c.req.header('host') ?? url.host, url.host]) if (!OWN_HOST.test(host)) throw hostFault(host);
  await next();
};

/** Refuses writes from pages of other origins. Programs that are no browser send no Origin, and may write. */
export const ownOriginOnly: MiddlewareHandler = async (c, next) => {
  if (!READING.has(c.req.method)) {
    const host = c.req.header('host') ?? new URL(c.req.url).host;
    const origin = c.req.header('origin');
    if (origin !== undefined && origin !== `http://${host}`) throw originFault(origin);
    if (c.req.header('sec-fetch-site') === 'cross-site') throw originFault('another site');
  }
  await next();
};

export const securityHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  // A route may be stricter, as for files that people sent.
  for (const [name, value] of Object.entries(SECURITY_HEADERS)) if (!c.res.headers.has(name)) c.header(name, value);
};
