/** /api/shoots/:shootId/files: bytes that belong to a shoot, kept and given back by their hash. */
import { Hono } from 'hono';
import { parsed } from '../../api/parsed.ts';
import type { FileReply } from '../../api/replies.ts';
import { FILE_NAME_HEADER } from '../../api/routes.ts';
import { FileName, Sha256 } from '../../api/schemas.ts';
import { Fault } from '../../base/fault.ts';
import type { ShootStore } from '../../store/types.ts';
import { decodedHeader, shootIdOf } from '../asker.ts';
import { bodyBytes, mediaType } from '../body.ts';
import { disposition } from '../disposition.ts';
import { keptKind, LARGEST_FILE_B } from '../fileKind.ts';

const FORMS: ReadonlySet<string> = new Set(['multipart/form-data', 'application/x-www-form-urlencoded']);

const LIMIT = {
  most_B: LARGEST_FILE_B,
  mend: 'Make the file smaller, such as a picture of fewer pixels; nothing was stored.',
};

/** Nothing that people sent may run, ask for anything else or be taken for what it is not. */
const KEPT_APART = {
  'content-security-policy': "default-src 'none'; sandbox",
  'x-content-type-options': 'nosniff',
  'cache-control': 'private, max-age=31536000, immutable',
};

export function fileRoutes({ store }: { readonly store: ShootStore }) {
  return new Hono()
    .post('/:shootId/files', async (c) => {
      const shootId = shootIdOf(c);
      const where = 'the file';
      const name = parsed(FileName, decodedHeader(c, FILE_NAME_HEADER), `the header ${FILE_NAME_HEADER}`);
      const type = mediaType(c);
      if (FORMS.has(type))
        throw new Fault({
          code: 'input.wrong-type',
          what: `The body must be the bytes of one file; it is a form, ${type}`,
          where,
          mend: 'Send the file itself as the body, with its own type as content-type.',
        });
      store.open(shootId);
      const bytes = await bodyBytes(c, LIMIT, where);
      const kind = keptKind({ bytes, type, name });
      const sha256 = store.keepFile(shootId, { name, kind, bytes });
      return c.json({ sha256, size_B: bytes.byteLength, name, kind } satisfies FileReply, 201);
    })
    .get('/:shootId/files/:sha256', (c) => {
      const sha256 = parsed(Sha256, c.req.param('sha256'), 'the hash in the address');
      const { name, kind, size_B, bytes } = store.fileOf(shootIdOf(c), sha256);
      return c.body(bytes as Uint8Array<ArrayBuffer>, 200, {
        ...KEPT_APART,
        'content-type': kind,
        'content-length': String(size_B),
        'content-disposition': disposition(kind.startsWith('image/') ? 'inline' : 'attachment', name),
      });
    });
}
