import { useId } from 'react';
import { fieldAt } from '../../../document/fieldAt.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { checkTyped, completeUnit } from '../shot/shotEdits.ts';
import type { MeasuredAs } from './recordEdits.ts';

export interface MeasuredFieldsProps {
  readonly as: MeasuredAs;
  /** Why its own rate is set as it is, where the record tells. */
  readonly rateSays: string | undefined;
  readonly onChange: (change: Partial<MeasuredAs>) => void;
}

const ENTRY = '/kit/lamps/-/measured/-';

const said = (key: string) => fieldAt(`${ENTRY}/${key}`)?.says;

function suppliesOf() {
  const of = fieldAt(`${ENTRY}/supply`)?.of;
  const words = of?.shape === 'choice' ? Object.entries(of.words) : [];
  return [{ value: '', label: 'not said' }, ...words.map(([value, label]) => ({ value, label }))];
}

function Typed({ name, label, placeholder, text, onText }: Readonly<Record<'name' | 'label' | 'placeholder' | 'text', string>> & { readonly onText: (text: string) => void }) {
  const id = useId();
  const path = `${ENTRY}/${name}`;
  return (
    <QuantityField
      id={id}
      label={label}
      text={text}
      placeholder={placeholder}
      note={said(name)}
      check={(typed) => checkTyped(path, typed, text)}
      onDraft={() => undefined}
      onCommit={(typed) => onText(completeUnit(path, typed, text).trim())}
      onCancel={() => undefined}
    />
  );
} // prettier-ignore

export interface SetAsFieldsProps {
  readonly as: Pick<MeasuredAs, 'level' | 'colour' | 'supply'>;
  readonly onChange: (change: Partial<Pick<MeasuredAs, 'level' | 'colour' | 'supply'>>) => void;
}

/** How a lamp was set and fed as its light was measured. */
export function SetAsFields({ as, onChange }: SetAsFieldsProps) {
  const id = useId();
  return (
    <>
      <Typed name="level" label="Level" placeholder="full" text={as.level} onText={(level) => onChange({ level })} />
      <Typed
        name="colour"
        label="Colour"
        placeholder="as the lamp says"
        text={as.colour}
        onText={(colour) => onChange({ colour })}
      />
      <ChoiceField
        id={`${id}supply`}
        label="Supply"
        value={as.supply}
        choices={suppliesOf()}
        isGiven={as.supply === ''}
        note={said('supply')}
        onChoose={(supply) => onChange({ supply })}
      />
    </>
  );
}

/** What a record was measured of: it holds for that level, colour and supply only. */
export function MeasuredFields({ as, rateSays, onChange }: MeasuredFieldsProps) {
  const id = useId();
  return (
    <>
      <SetAsFields as={as} onChange={onChange} />
      <ChoiceField
        id={`${id}rate`}
        label="Rate"
        value={as.hasOwnRate ? 'own' : 'mains'}
        choices={[
          { value: 'mains', label: 'the mains’' },
          { value: 'own', label: 'its own' },
        ]}
        note={rateSays ?? said('ownRate')}
        onChoose={(rate) => onChange({ hasOwnRate: rate === 'own' })}
      />
    </>
  );
}
