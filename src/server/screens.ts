/** The built screens: files of one folder, and its index for every address that the app itself makes sense of. */
import type { Context } from 'hono';
import { lstat, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { Fault } from '../base/fault.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.map': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
};

/** Letters, digits and a few marks, never a dot first: no such name leads out of the folder or to a hidden file. */
const PLAIN_NAME = /^[A-Za-z0-9_@-][A-Za-z0-9._@-]*$/;

/** An address of the app: no dot, so that a file that is gone is not answered with a page, which could pass for script. */
const APP_NAME = /^[A-Za-z0-9_@-]*$/;

/** The builder writes a file's contents into its name, so that what stands there never changes. */
const HASHED = /^assets\/.*-[A-Za-z0-9_-]{8}\.[a-z0-9]+$/;

async function fileAt(folder: string, name: string): Promise<Buffer | undefined> {
  const file = join(folder, name);
  try {
    return (await lstat(file)).isFile() ? await readFile(file) : undefined;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR' || code === 'ENAMETOOLONG') return undefined;
    throw error;
  }
}

const unknownPage = (path: string) =>
  new Fault({
    code: 'page.unknown',
    what: 'There is no such page here',
    where: path.slice(0, 200),
    mend: 'Start from the address that the server printed.',
  });

function send(c: Context, bytes: Buffer, name: string): Response {
  const isIndex = extname(name) === '.html';
  return c.body(new Uint8Array(bytes), 200, {
    'content-type': TYPES[extname(name)] ?? 'application/octet-stream',
    'content-length': String(bytes.byteLength),
    'cache-control': isIndex ? 'no-store' : HASHED.test(name) ? 'public, max-age=31536000, immutable' : 'no-cache',
  });
}

/** Answers a GET outside /api. Throws Fault `page.unknown` or `screens.not-built`. */
export async function screen(c: Context, folder: string): Promise<Response> {
  const names = new URL(c.req.url).pathname.split('/').slice(1);
  const name = names.join('/');
  const isFileName = names.every((part) => PLAIN_NAME.test(part));
  const bytes = isFileName ? await fileAt(folder, name) : undefined;
  if (bytes) return send(c, bytes, name);
  if (!names.every((part) => APP_NAME.test(part))) throw unknownPage(`/${name}`);
  const index = await fileAt(folder, 'index.html');
  if (index) return send(c, index, 'index.html');
  throw new Fault({
    code: 'screens.not-built',
    what: 'The screens have not been built',
    where: folder,
    mend: 'Run npm run build, then load this page again.',
    retry: true,
  });
}
