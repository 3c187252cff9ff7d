import { Button } from '../../parts/Button.tsx';
import { EmptyPlace } from '../../parts/EmptyPlace.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { GoLink } from '../GoLink.tsx';
import { hireOf, sayMoney } from './hire.ts';
import { itemsOf } from './kitEdits.ts';
import { useKit } from './kitContext.ts';
import { problemCount } from './problemAt.ts';
import { KIT_KINDS, kindNamed, oneOf } from './kinds.ts';

const FIRST = ['cameras', 'lenses'] as const;

/** What goes into the kit, kind by kind, and how to begin. */
export function KitStart() {
  const { open, hrefOf, onGo, onAdd, onCopyFrom } = useKit();
  const hire = hireOf(open.shoot.kit);
  const unreadCount = problemCount(open, '/kit');
  const counts = KIT_KINDS.map((kind) => ({ kind, count: itemsOf(open.written, kind.key).length }));
  const first = FIRST.map(kindNamed).filter((kind) => kind !== undefined);
  if (counts.every(({ count }) => count === 0))
    return (
      <EmptyPlace
        title="Nothing to shoot with yet"
        says="The kit holds every camera, lens, rig, product and drive there is. One camera with its formats and one lens are enough to plan with."
      >
        {first.map((kind, i) => (
          <Button key={kind.key} look={i === 0 ? 'main' : 'plain'} onClick={() => onAdd(kind)}>
            Add {oneOf(kind)}
          </Button>
        ))}
        <Button onClick={() => onCopyFrom(first[0]!)}>Copy a camera from another shoot…</Button>
      </EmptyPlace>
    );
  return (
    <Panel title="Everything there is to shoot with" className="kit-start">
      <dl className="kit-figures">
        <div>
          <dt>Pieces</dt>
          <dd>
            <Figure size="big" number={String(hire.pieceCount)} unit="" />
          </dd>
        </div>
        <div>
          <dt>To hire</dt>
          <dd>
            <Figure size="big" number={String(hire.hiredCount)} unit="" />
          </dd>
        </div>
        {hire.dayPrice > 0 && (
          <div>
            <dt>Hire</dt>
            <dd>
              <Figure size="big" number={sayMoney(hire.dayPrice)} unit="a day" />
            </dd>
          </div>
        )}
        {unreadCount > 0 && (
          <div>
            <dt>Unread</dt>
            <dd>
              <Figure size="big" number={String(unreadCount)} unit={unreadCount === 1 ? 'value' : 'values'} />
            </dd>
          </div>
        )}
      </dl>
      <ul>
        {counts.map(({ kind, count }) => (
          <li key={kind.key}>
            <GoLink href={hrefOf(kind.key)} onGo={onGo}>
              <span className="kit-start-title">{kind.title}</span>
              <span className="kit-start-count">{count === 0 ? 'none' : count}</span>
            </GoLink>
            <p>{kind.says}</p>
          </li>
        ))}
      </ul>
    </Panel>
  );
}
