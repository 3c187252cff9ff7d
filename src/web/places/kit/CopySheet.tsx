import { useEffect, useId, useState } from 'react';
import type { ShootReply } from '../../../api/replies.ts';
import { Fault } from '../../../base/fault.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useShootList } from '../../state/hooks.ts';
import { server } from '../../state/page.ts';
import { copyItem } from './library.ts';
import { itemsOf, titleOf } from './kitEdits.ts';
import { useKit } from './kitContext.ts';
import { oneOf, type KitKind } from './kinds.ts';
import { figuresOf } from './sayWritten.ts';

export interface CopySheetProps {
  readonly kind: KitKind | undefined;
  readonly onClose: () => void;
}

type Loaded =
  | { readonly state: 'none' | 'loading' }
  | { readonly state: 'failed'; readonly says: string }
  | { readonly state: 'open'; readonly shoot: ShootReply };

/** A shoot opened to look into; it is read once, and not kept up to date. */
function useShoot(shootId: string): Loaded {
  const [loaded, setLoaded] = useState<Loaded>({ state: 'none' });
  useEffect(() => {
    let isGone = false;
    if (shootId === '') {
      setLoaded({ state: 'none' });
      return undefined;
    }
    setLoaded({ state: 'loading' });
    server.open(shootId).then(
      (shoot) => isGone || setLoaded({ state: 'open', shoot }),
      (error: unknown) =>
        isGone ||
        setLoaded({
          state: 'failed',
          says: error instanceof Fault ? `${error.what}. ${error.mend}` : 'The server cannot be reached.',
        }),
    );
    return () => {
      isGone = true;
    };
  }, [shootId]);
  return loaded;
}

function Choosing({ kind, onClose }: { readonly kind: KitKind; readonly onClose: () => void }) {
  const { open, system, edit, onMade } = useKit();
  const { list, again } = useShootList();
  const id = useId();
  const [shootId, setShootId] = useState('');
  const loaded = useShoot(shootId);
  if (list.state === 'loading') return <p role="status">Looking for other shoots…</p>;
  if (list.state === 'failed')
    return (
      <div className="copy">
        <p className="field-problem">{`${list.fault.what}. ${list.fault.mend}`}</p>
        <Button onClick={again}>Try again</Button>
      </div>
    );
  const others = list.shoots.filter((shoot) => shoot.id !== open.id);
  if (others.length === 0) return <p>There is no other shoot here yet to copy from.</p>;
  const items = loaded.state === 'open' ? itemsOf(loaded.shoot.written, kind.key) : [];
  return (
    <div className="copy">
      <label htmlFor={id}>Which shoot</label>
      <select id={id} className="field-input" value={shootId} onChange={(event) => setShootId(event.currentTarget.value)}>
        <option value="">choose one</option>
        {others.map((shoot) => (
          <option key={shoot.id} value={shoot.id}>
            {shoot.title}
          </option>
        ))}
      </select>
      {loaded.state === 'loading' && <p role="status">Opening…</p>}
      {loaded.state === 'failed' && <p className="field-problem">{loaded.says}</p>}
      {loaded.state === 'open' && items.length === 0 && <p>It has no {kind.title.toLowerCase()}.</p>}
      {loaded.state === 'open' && items.length > 0 && (
        <ul className="copy-items">
          {items.map(([itemId, item]) => (
            <li key={itemId}>
              <span>
                <strong>{titleOf(itemId, item)}</strong>
                <span className="copy-figures">{figuresOf({ kindKey: kind.key, item, system }).join(', ')}</span>
              </span>
              <Button
                aria-label={`Copy ${titleOf(itemId, item)}`}
                onClick={() => {
                  const copied = copyItem(open.written, { kind, from: loaded.shoot, itemId });
                  onClose();
                  edit(copied.patch, `${titleOf(itemId, item)} copied from ${loaded.shoot.title}`);
                  onMade(kind, copied.id);
                }}
              >
                Copy
              </Button>
            </li>
          ))}
        </ul>
      )}
      <p className="kit-says">A copy stands on its own. Where it came from is kept, so that a newer version there is offered here.</p>
    </div>
  );
} // prettier-ignore

/** Pieces of one kind in another shoot of this Longsecond, to copy from. */
export function CopySheet({ kind, onClose }: CopySheetProps) {
  return (
    <Sheet isOpen={kind !== undefined} title={kind ? `Copy ${oneOf(kind)} from another shoot` : ''} onClose={onClose}>
      {kind && <Choosing kind={kind} onClose={onClose} />}
    </Sheet>
  );
}
