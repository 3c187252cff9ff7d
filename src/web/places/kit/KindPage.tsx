import { fieldAt } from '../../../document/fieldAt.ts';
import { pointerTo } from '../../../document/pointer.ts';
import { memberOf, type WrittenRecord } from '../../../document/written.ts';
import { Button } from '../../parts/Button.tsx';
import { GoLink } from '../GoLink.tsx';
import { AvailabilityWord } from './AvailabilityWord.tsx';
import { fieldsOf, labelOf, oneOf, type KitKind } from './kinds.ts';
import { itemPath, itemsOf, titleOf } from './kitEdits.ts';
import { useKit } from './kitContext.ts';
import { TakeCare } from './TakeCare.tsx';
import { problemAt } from './problemAt.ts';
import { sayWritten } from './sayWritten.ts';

/** Columns beyond this no page is wide enough for. */
const MOST_COLUMNS = 6;

/** Keys with a place of their own in the table. */
const ASIDE = ['availability', 'dayPrice'];

/** Keys worth a column: quantities, numbers and words that at least one piece says. */
function columnsOf(kind: KitKind, items: readonly (readonly [string, WrittenRecord])[]): readonly string[] {
  const keys = Object.entries(fieldsOf(kind.key))
    .filter(([, { of }]) => ['quantity', 'number', 'size', 'choice'].includes(of.shape))
    .map(([key]) => key)
    .filter((key) => !ASIDE.includes(key) && items.some(([, item]) => Object.hasOwn(item, key)));
  const priced = items.some(([, item]) => Object.hasOwn(item, 'dayPrice')) ? ['dayPrice'] : [];
  return [...keys.slice(0, MOST_COLUMNS), ...priced];
}

/** All pieces of one kind side by side. */
export function KindPage({ kind }: { readonly kind: KitKind }) {
  const { open, system, hrefOf, onGo, onAdd, onCopyFrom } = useKit();
  const items = itemsOf(open.written, kind.key);
  const columns = columnsOf(kind, items);
  return (
    <section className="kit-kind-page" aria-labelledby="kit-title">
      <header className="kit-form-head">
        <div>
          <h1 id="kit-title">{kind.title}</h1>
          <p>{kind.says}</p>
        </div>
        <div className="kit-form-tools no-print">
          <Button look="main" onClick={() => onAdd(kind)}>
            Add {oneOf(kind)}
          </Button>
          <Button onClick={() => onCopyFrom(kind)}>Copy from another shoot…</Button>
        </div>
      </header>
      <TakeCare kind={kind} />
      {items.length === 0 ? (
        <p className="kit-says">None yet. Add one and write what is engraved or published; anything may be left out.</p>
      ) : (
        <div className="kit-compare">
          <table>
            <thead>
              <tr>
                <th scope="col">{kind.title}</th>
                <th scope="col">On the set</th>
                {columns.map((key) => (
                  <th key={key} scope="col">
                    {labelOf(key)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {items.map(([id, item]) => (
                <tr key={id}>
                  <th scope="row">
                    <GoLink href={hrefOf(kind.key, id)} onGo={onGo}>
                      {titleOf(id, item)}
                    </GoLink>
                  </th>
                  <td className="kit-compare-has">
                    <AvailabilityWord written={item['availability']} />
                  </td>
                  {columns.map((key) => {
                    const path = itemPath(kind.key, id) + pointerTo([key]);
                    const field = fieldAt(path);
                    const value = memberOf(item, key);
                    const problem = problemAt(open, path);
                    return (
                      <td
                        key={key}
                        data-label={labelOf(key)}
                        className={problem === undefined ? undefined : 'is-wrong'}
                        title={problem}
                      >
                        {field && value !== undefined && value !== null ? sayWritten(field, value, system) : '–'}
                      </td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
