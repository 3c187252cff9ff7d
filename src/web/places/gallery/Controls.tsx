import { useState } from 'react';
import { AssumedMark } from '../../parts/AssumedMark.tsx';
import { Button } from '../../parts/Button.tsx';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { Field } from '../../parts/Field.tsx';
import { FieldMarkProvider } from '../../parts/fieldMarks.ts';
import { Icon, ICON_NAMES } from '../../parts/Icon.tsx';
import { SHOT_FIELDS } from '../../../document/schema.ts';
import { fieldId } from '../shot/shotContext.ts';
import { saidShown, showNamed } from '../shot/showValue.ts';
import { BenchField, problemAt, textAt } from './BenchField.tsx';
import { Exhibit, State } from './Exhibit.tsx';
import type { Bench } from './useBench.ts';

const SEEN = Object.keys(SHOT_FIELDS.seen.of.words).map((value) => ({ value, label: value.replaceAll('-', ' ') }));

const LOOKS = ['plain', 'main', 'quiet'] as const;

/** Buttons and signs. */
export function Buttons() {
  const [pressed, setPressed] = useState('nothing yet');
  return (
    <>
      <Exhibit of="Button" says={`Four looks, each at least a wet finger wide. Pressed: ${pressed}.`}>
        {LOOKS.map((look) => (
          <State key={look} says={look}>
            <div className="exhibit-line">
              <Button look={look} onClick={() => setPressed(look)}>
                New shot
              </Button>
              <Button look={look} disabled>
                New shot
              </Button>
            </div>
          </State>
        ))}
        <State says="sign">
          <div className="exhibit-line">
            <Button look="sign" aria-label="Next shot" onClick={() => setPressed('sign')}>
              <Icon name="forward" />
            </Button>
            <Button look="sign" aria-label="Next shot, where there is none" disabled>
              <Icon name="forward" />
            </Button>
          </div>
        </State>
      </Exhibit>
      <Exhibit of="Icon" says="Drawn signs. Whatever holds one says in words what it does.">
        <ul className="exhibit-icons">
          {ICON_NAMES.map((name) => (
            <li key={name}>
              <Icon name={name} />
              {name}
            </li>
          ))}
        </ul>
      </Exhibit>
    </>
  );
}

/** Fields of every kind, in every state. */
export function Fields({ bench }: { readonly bench: Bench }) {
  const [words, setWords] = useState('A single drop; the surface answers with a crown.');
  const { assumed } = bench.planOf('drop');
  const constant = assumed.find(({ path }) => path === '/shoot/meterConstant');
  const seenPath = '/shots/mistyped/seen';
  const slip = problemAt(bench, seenPath);
  return (
    <>
      <Exhibit
        of="QuantityField"
        says="Every value may be changed: what is typed is checked and planned with at once, and the margins below move. Arrows step it, Escape takes it back."
      >
        <BenchField bench={bench} path="/shots/drop/frameWidth" label="Written" />
        <BenchField
          bench={bench}
          path="/shots/drop/depth"
          givenAt="/defaults/depth"
          label="Given by the defaults"
          after={textAt(bench, '/shots/drop/depth') === '' && <span className="exhibit-origin">default</span>}
        />
        <BenchField
          bench={bench}
          path="/kit/cameras/bare/memory"
          label="Not written"
          placeholder="not written"
          note="One shot cannot be judged for its buffer until it is."
        />
        <BenchField
          bench={bench}
          path="/shoot/meterConstant"
          label="Assumed"
          placeholder={constant ? saidShown(showNamed(constant)) : ''}
          note={
            constant && (
              <>
                <AssumedMark /> {constant.why}
              </>
            )
          }
        />
        <BenchField bench={bench} path="/shots/mistyped/frameWidth" label="Wrong" />
        <FieldMarkProvider value={(id) => (id === fieldId('/shots/drop/blur') ? 'somebody else is writing here' : undefined)}>
          <BenchField bench={bench} path="/shots/drop/blur" label="Written in by another" />
        </FieldMarkProvider>
      </Exhibit>
      <Exhibit of="ChoiceField" says="One of a few words. A word that is not among them is kept as it was written.">
        <ChoiceField
          id="gallery-seen"
          label="Written"
          value={textAt(bench, '/shots/ramp/seen')}
          choices={SEEN}
          note="lit on: by the light that falls on it"
          onChoose={(value) => bench.commit([{ op: 'add', path: '/shots/ramp/seen', value }], `Seen: ${value}`)}
        />
        <ChoiceField
          id="gallery-seen-given"
          label="Solved"
          value={textAt(bench, '/shots/mistyped/lens')}
          choices={[
            { value: '', label: bench.planOf('ramp').settings?.lens ?? 'not solved' },
            { value: 'macro', label: '100 mm macro' },
          ]}
          isGiven={textAt(bench, '/shots/mistyped/lens') === ''}
          after={<span className="exhibit-origin">solved</span>}
          onChoose={(value) =>
            bench.commit(
              [value === '' ? { op: 'remove', path: '/shots/mistyped/lens' } : { op: 'add', path: '/shots/mistyped/lens', value }],
              `Lens ${value}`,
            )
          }
        />
        <ChoiceField
          id="gallery-seen-wrong"
          label="Wrong"
          value={textAt(bench, seenPath)}
          choices={SEEN}
          {...(slip === undefined ? {} : { problem: slip })}
          onChoose={(value) => bench.commit([{ op: 'add', path: seenPath, value }], `Seen: ${value}`)}
        />
      </Exhibit>
      <Exhibit of="Field" says="The line that every control stands in: label, control, and what is to be said about it beneath.">
        <Field id="gallery-words" label="Words" note={`${words.length} characters`}>
          <input
            id="gallery-words"
            className="field-input"
            value={words}
            aria-describedby="gallery-words-note"
            onChange={(event) => setWords(event.currentTarget.value)}
          />
        </Field>
      </Exhibit>
    </>
  );
} // prettier-ignore
