/** Versions of the written form, and the steps that bring an older document up to this one. */
import { Fault } from '../base/fault.ts';
import { applyPatch, type Patch } from './patch.ts';
import { DOCUMENT_VERSION } from './schema.ts';
import { isRecord, memberOf, type Written } from './written.ts';

/** One step: what must change in a document of version `from` for it to mean the same in the next. */
export interface Migration {
  readonly from: number;
  /** An edit, so that it can be carried into the text with its comments. It raises `longsecond` too. */
  readonly patch: (written: Written) => Patch;
}

/** In order, one for each version but the newest. */
export const MIGRATIONS: readonly Migration[] = [];

function notAShoot(what: string): Fault {
  return new Fault({
    code: 'document.not-a-shoot',
    what,
    where: 'the document',
    mend: `Begin the document with the line longsecond: ${DOCUMENT_VERSION}`,
  });
}

/**
 * The version a document says it has. Throws a Fault: `document.not-a-shoot` without one, `document.newer-version`
 * when this program is too old for it.
 */
export function versionOf(written: Written): number {
  if (!isRecord(written)) throw notAShoot('This is no map of keys, as a shoot is');
  const version = memberOf(written, 'longsecond');
  if (version === undefined) throw notAShoot('There is no key "longsecond", which every shoot begins with');
  if (typeof version !== 'number' || !Number.isSafeInteger(version) || version < 1)
    throw notAShoot(`After "longsecond" stands ${JSON.stringify(version)?.slice(0, 40)}, and not a version such as 1`);
  if (version > DOCUMENT_VERSION)
    throw new Fault({
      code: 'document.newer-version',
      what: `The document has version ${version}, and this program reads up to version ${DOCUMENT_VERSION}`,
      where: '/longsecond',
      mend: `Open it with a Longsecond that reads version ${version}.`,
    });
  return version;
}

/** The edits that bring a document up to the newest version; none when it is there. Throws as `versionOf` does. */
export function migrationPatch(written: Written, migrations = MIGRATIONS): Patch {
  const version = versionOf(written);
  const edits: Patch[] = [];
  let now = written;
  for (const { from, patch } of migrations) {
    if (from < version) continue;
    const edit = patch(now);
    now = applyPatch(now, edit);
    edits.push(edit);
  }
  return edits.flat();
}

/** The document as the newest version writes it; the same object when it is one. Throws as `versionOf` does. */
export function migrate(written: Written, migrations = MIGRATIONS): Written {
  return applyPatch(written, migrationPatch(written, migrations));
}
