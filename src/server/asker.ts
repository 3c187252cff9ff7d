/** What a request says of itself: which shoot, which client, what the person is called. */
import type { Context } from 'hono';
import { parsed } from '../api/parsed.ts';
import { CLIENT_HEADER, NAME_HEADER, UNNAMED_CLIENT } from '../api/routes.ts';
import { ClientName, PersonName, ShootId } from '../api/schemas.ts';
import { Fault } from '../base/fault.ts';
import type { Act } from '../store/types.ts';
import type { Clock } from './clock.ts';

/** The shoot that the address names. Throws Fault `input.malformed`. */
export function shootIdOf(c: Context): string {
  return parsed(ShootId, c.req.param('shootId'), 'the shoot id in the address');
}

/** The client that asks. Throws Fault `input.malformed`. */
export function whoAsks(c: Context): string {
  return parsed(ClientName, c.req.header(CLIENT_HEADER) ?? UNNAMED_CLIENT, `the header ${CLIENT_HEADER}`);
}

/** The text of a header that carries percent-encoded UTF-8; undefined where it is not sent. Throws Fault `input.malformed`. */
export function decodedHeader(c: Context, header: string): string | undefined {
  const sent = c.req.header(header);
  if (sent === undefined) return undefined;
  try {
    // Anything else was put in as it is, and headers have no alphabet of their own: what it means cannot be known.
    if (/[^\x20-\x7e]/.test(sent)) throw new URIError('not percent-encoded');
    return decodeURIComponent(sent);
  } catch (cause) {
    throw new Fault({
      code: 'input.malformed',
      what: 'The header is not percent-encoded UTF-8',
      where: `the header ${header}`,
      mend: 'Encode it as encodeURIComponent does and send it again; nothing was changed.',
      cause,
    });
  }
}

/** What the person calls themself; undefined where they say nothing. Throws Fault `input.malformed`. */
export function nameOf(c: Context): string | undefined {
  const name = decodedHeader(c, NAME_HEADER);
  return name === undefined || name.trim() === '' ? undefined : parsed(PersonName, name, `the header ${NAME_HEADER}`);
}

/** Who does something now, under an id by which it may be repeated. */
export function actOf(c: Context, clock: Clock, editId: string): Act {
  return { editId, who: whoAsks(c), name: nameOf(c), at: clock.now().toISOString() };
}
