import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { StateShape } from '../../parts/StateWord.tsx';
import { GoLink } from '../GoLink.tsx';
import { AvailabilityWord } from './AvailabilityWord.tsx';
import { itemPath, itemsOf, titleOf } from './kitEdits.ts';
import { useKit } from './kitContext.ts';
import { KIT_KINDS, oneOf, type KitKind } from './kinds.ts';
import { problemCount } from './problemAt.ts';
import { figuresOf } from './sayWritten.ts';

interface Chosen {
  readonly kindKey: string | undefined;
  readonly itemId: string | undefined;
}

function Kind({ kind, chosen }: { readonly kind: KitKind; readonly chosen: Chosen }) {
  const { open, system, hrefOf, onGo, onAdd } = useKit();
  const items = itemsOf(open.written, kind.key);
  const isCurrent = chosen.kindKey === kind.key && chosen.itemId === undefined;
  return (
    <li className="kit-kind">
      <div className="kit-kind-head">
        <GoLink href={hrefOf(kind.key)} onGo={onGo} {...(isCurrent ? { 'aria-current': 'page' } : {})}>
          <span>{kind.title}</span>
          <span className="kit-count">{items.length === 0 ? 'none' : items.length}</span>
        </GoLink>
        <Button look="sign" aria-label={`Add ${oneOf(kind)}`} title={`Add ${oneOf(kind)}`} onClick={() => onAdd(kind)}>
          <Icon name="plus" />
        </Button>
      </div>
      {items.length > 0 && (
        <ul>
          {items.map(([id, item]) => {
            const wrongCount = problemCount(open, itemPath(kind.key, id));
            const isHere = chosen.kindKey === kind.key && chosen.itemId === id;
            return (
              <li key={id}>
                <GoLink
                  className="kit-item"
                  href={hrefOf(kind.key, id)}
                  onGo={onGo}
                  {...(isHere ? { 'aria-current': 'page' } : {})}
                >
                  <span className="kit-item-title">{titleOf(id, item)}</span>
                  <AvailabilityWord written={item['availability']} />
                  <span className="kit-item-figures">
                    {figuresOf({ kindKey: kind.key, item, system }).map((figure) => (
                      <span key={figure}>{figure}</span>
                    ))}
                    {wrongCount > 0 && (
                      <span className="kit-item-wrong">
                        <StateShape standing="unknown" /> {wrongCount} unread
                      </span>
                    )}
                  </span>
                </GoLink>
              </li>
            );
          })}
        </ul>
      )}
    </li>
  );
}

/** Every kind of kit with its pieces, and the few figures that tell each from its neighbours. */
export function KitNav(chosen: Chosen) {
  return (
    <nav className="kit-nav" aria-label="Kinds of kit">
      <ul>
        {KIT_KINDS.map((kind) => (
          <Kind key={kind.key} kind={kind} chosen={chosen} />
        ))}
      </ul>
    </nav>
  );
}
