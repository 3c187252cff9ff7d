import { pointerTo } from '../../../document/pointer.ts';
import type { FieldTable } from '../../../document/shape.ts';
import type { WrittenRecord } from '../../../document/written.ts';
import { sayThere } from './library.ts';
import { useKit } from './kitContext.ts';
import { problemAt } from './problemAt.ts';

export interface OtherKeysProps {
  readonly path: string;
  readonly item: WrittenRecord;
  readonly known: FieldTable;
}

/** What is written about a piece under names that no field has: it is kept, and told. */
export function OtherKeys({ path, item, known }: OtherKeysProps) {
  const { open } = useKit();
  const others = Object.keys(item).filter((key) => !Object.hasOwn(known, key));
  if (others.length === 0) return null;
  return (
    <ul className="kit-others">
      {others.map((key) => (
        <li key={key}>
          <span>
            {key}: {sayThere(item[key])}
          </span>
          <span className="field-problem">{problemAt(open, path + pointerTo([key])) ?? 'no field of this form'}</span>
        </li>
      ))}
    </ul>
  );
}
