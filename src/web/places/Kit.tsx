import { useEffect, useRef, useState } from 'react';
import type { PatchOperation } from '../../plan/types.ts';
import { Button } from '../parts/Button.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import { Icon } from '../parts/Icon.tsx';
import { Notice } from '../parts/Notice.tsx';
import type { OpenShoot } from '../state/contract.ts';
import { useUnits } from '../state/unitChoice.ts';
import { GoLink } from './GoLink.tsx';
import { CopySheet } from './kit/CopySheet.tsx';
import { ItemForm } from './kit/ItemForm.tsx';
import { KindPage } from './kit/KindPage.tsx';
import { addItem, itemPath, itemsOf, removeEntry } from './kit/kitEdits.ts';
import { KitHead } from './kit/KitHead.tsx';
import { KitNav } from './kit/KitNav.tsx';
import { KitStart } from './kit/KitStart.tsx';
import { KitProvider, type KitContext, type Removal } from './kit/kitContext.ts';
import { KIT_KINDS, kindNamed, type KitKind } from './kit/kinds.ts';
import { RemovalSheet } from './kit/RemovalSheet.tsx';
import { fieldId } from './shot/shotContext.ts';
import './kit/kit.css';
import './kit/formats.css';

export interface KitProps {
  readonly open: OpenShoot;
  /** The kind and the piece in the address, where they are there. */
  readonly kindKey: string | undefined;
  readonly itemId: string | undefined;
  readonly hrefOf: (kindKey?: string, itemId?: string) => string;
  readonly onGo: (href: string) => void;
}

function Chosen({
  kind,
  kindKey,
  itemId,
}: { readonly kind: KitKind | undefined } & Pick<KitProps, 'kindKey' | 'itemId'>) {
  if (kindKey === undefined) return <KitStart />;
  if (!kind)
    return <EmptyPlace title="No such kind of kit" says="The address may be mistyped. The list has every kind." />;
  if (itemId === undefined) return <KindPage kind={kind} />;
  return <ItemForm key={`${kind.key} ${itemId}`} kind={kind} itemId={itemId} />;
}

/** Everything there is to shoot with: found by kind, written in a form, copied from other shoots. */
export function Kit({ open, kindKey, itemId, hrefOf, onGo }: KitProps) {
  const kind = kindNamed(kindKey);
  const system = useUnits(open.shoot.shoot.units);
  const [said, setSaid] = useState<string>();
  const [removal, setRemoval] = useState<Removal>();
  const [copyKind, setCopyKind] = useState<KitKind>();
  const isAsking = kindKey !== undefined;
  const isEmpty = KIT_KINDS.every(({ key }) => itemsOf(open.written, key).length === 0);

  /** The field that is to have the cursor as soon as it is there. */
  const wanted = useRef<string>(undefined);
  useEffect(() => {
    // An address may end in the field that it speaks of.
    const named = decodeURIComponent(window.location.hash.slice(1));
    if (named.startsWith('at.')) wanted.current = named;
  }, [kindKey, itemId]);
  useEffect(() => {
    const field = wanted.current === undefined ? null : document.getElementById(wanted.current);
    if (!field) return;
    wanted.current = undefined;
    // A sheet that closes gives the cursor back first.
    setTimeout(() => field.focus(), 0);
  });

  const edit = (patch: readonly PatchOperation[], summary: string) => {
    open.commit(patch, summary);
    setSaid(summary);
  };
  const onMade = (of: KitKind, id: string) => {
    wanted.current = fieldId(`${itemPath(of.key, id)}/title`);
    onGo(hrefOf(of.key, id));
  };
  const remove = ({ path, title, uses, thenTo }: Removal) => {
    setRemoval(undefined);
    edit(removeEntry(open.written, path, uses), `${title} taken out`);
    if (thenTo !== undefined) onGo(thenTo);
  };
  const context: KitContext = {
    open,
    system,
    hrefOf,
    onGo,
    edit,
    onMade,
    onAdd: (of) => {
      const made = addItem(open.written, of, { title: `New ${of.one}` });
      edit(made.patch, `New ${of.one} added`);
      onMade(of, made.id);
    },
    onCopyFrom: setCopyKind,
    onRemove: (of) => (of.uses.length === 0 ? remove(of) : setRemoval(of)),
  };

  return (
    <KitProvider value={context}>
      <div className={['kit', isAsking && 'is-asking', isEmpty && 'is-empty'].filter(Boolean).join(' ')}>
        <div className="kit-list">
          <KitHead isAlone={!isAsking && !isEmpty} />
          <KitNav kindKey={kindKey} itemId={itemId} />
        </div>
        <div className="kit-place">
          {isAsking && (
            <GoLink className="kit-back no-print" href={itemId === undefined ? hrefOf() : hrefOf(kindKey)} onGo={onGo}>
              <Icon name="back" /> {itemId === undefined ? 'Kit' : (kind?.title ?? 'Kit')}
            </GoLink>
          )}
          <Chosen kind={kind} kindKey={kindKey} itemId={itemId} />
          {itemId !== undefined && kind && (
            <p className="kit-more no-print">
              <Button look="quiet" onClick={() => context.onAdd(kind)}>
                <Icon name="plus" /> Add another {kind.one}
              </Button>
              <Button look="quiet" onClick={() => setCopyKind(kind)}>
                Copy from another shoot…
              </Button>
            </p>
          )}
        </div>
      </div>
      <CopySheet kind={copyKind} onClose={() => setCopyKind(undefined)} />
      <RemovalSheet removal={removal} onRemove={remove} onClose={() => setRemoval(undefined)} />
      {said !== undefined && (open.undoSummary ?? said) === said && (
        <Notice
          says={said}
          action={{
            label: 'Undo',
            onPress: () => {
              open.undo();
              setSaid(undefined);
            },
          }}
          onDismiss={() => setSaid(undefined)}
        />
      )}
    </KitProvider>
  );
} // prettier-ignore
