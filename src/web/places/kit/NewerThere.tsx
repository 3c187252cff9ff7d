import { Button } from '../../parts/Button.tsx';
import { itemAt, itemPath } from './kitEdits.ts';
import { labelOf, type KitKind } from './kinds.ts';
import { newerThere, sayKeys, sayThere, takePatch } from './library.ts';
import { useKit } from './kitContext.ts';
import { useOrigin } from './useOrigin.ts';

/** A newer version of a copied piece, where the shoot it came from has changed it since: what differs, and how to take it. */
export function NewerThere({ kind, itemId }: { readonly kind: KitKind; readonly itemId: string }) {
  const { open, edit } = useKit();
  const ours = itemAt(open.written, kind.key, itemId);
  const now = useOrigin(ours['origin'], open.id);
  if (!now) return null;
  const { origin, title, theirs, patches, revision } = now;
  if (Object.keys(theirs).length === 0)
    return <p className="kit-newer-gone">It was copied from {title}, which no longer has it.</p>;
  const differences = newerThere({ ours, theirs, origin, patches });
  if (differences.length === 0) return null;
  return (
    <section className="kit-newer" aria-labelledby="kit-newer-title">
      <h2 id="kit-newer-title">A newer version is in {title}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Here</th>
            <th scope="col">There</th>
          </tr>
        </thead>
        <tbody>
          {differences.map(({ keys, ours: here, theirs: there }) => (
            <tr key={keys.join('/')}>
              <th scope="row">{sayKeys(keys, labelOf)}</th>
              <td>{sayThere(here)}</td>
              <td>{sayThere(there)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Button
        className="no-print"
        onClick={() =>
          edit(takePatch(itemPath(kind.key, itemId), differences, { ...origin, revision }), `Newer version taken from ${title}`)
        }
      >
        Take it
      </Button>
    </section>
  );
} // prettier-ignore
