import type { UnitSystem } from '../../../base/quantity.ts';
import { exampleOf, inputsOf, type AnyLaw, type InputField } from '../../../laws/law.ts';
import { readInput } from '../../../laws/reckon.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { completeText, exampleTexts, said, sayReading, sayValue, typeValue, type ReadTexts } from './lawText.ts';
import { stepText } from './settable.ts';
import type { AskedDesk } from './useAsked.ts';

export interface LawFieldsProps {
  readonly law: AnyLaw;
  readonly desk: AskedDesk;
  readonly read: ReadTexts;
  readonly system: UnitSystem;
}

interface FieldProps extends LawFieldsProps {
  readonly field: InputField;
}

const fieldId = (name: string) => `law-${name}`;

const inputModeOf = ({ kind, as }: InputField): 'text' | 'decimal' | 'numeric' =>
  kind || as === 'rational' || as === 'timecode' ? 'text' : as === 'ratio' || as === 'fraction' ? 'decimal' : 'numeric';

function WordField({ field, desk }: FieldProps) {
  const { name, title, choices, default: fallback, note } = field;
  const words = choices ?? { yes: '', no: '' };
  const text = desk.texts[name] ?? '';
  const standard = fallback === undefined ? '' : typeValue(field, fallback);
  const says = [words[text === '' ? standard : text], note].filter(Boolean).join('. ');
  const offered = Object.keys(words).map((word) => ({ value: word, label: word }));
  return (
    <ChoiceField
      id={fieldId(name)}
      label={title}
      value={text === '' ? standard : text}
      choices={text === '' && standard === '' ? [{ value: '', label: 'choose' }, ...offered] : offered}
      isGiven={text === ''}
      {...(says === '' ? {} : { note: says })}
      {...(text === '' && standard !== '' ? { after: <span className="law-default">default</span> } : {})}
      onChoose={(word) => desk.mean(name, word === standard ? '' : word)}
    />
  );
}

const SUCH_AS = /^such as /;

function NumberField({ law, field, desk, read, system }: FieldProps) {
  const { name, title, default: fallback, note } = field;
  const before = desk.asked.texts[name] ?? '';
  const text = desk.texts[name] ?? '';
  const value = read.given[name];
  const example = exampleOf(law)[name];
  const whole = (typed: string) => completeText(field, typed, { before, likely: fallback ?? example, system });
  const reading = value === undefined ? '' : sayReading(field, text, value, system);
  const says = [reading, note].filter((part) => part !== undefined && part !== '').join('; ');
  const problem = read.problems.get(name);
  const such = exampleTexts(law)[name];
  const placeholder =
    fallback === undefined ? (such === undefined ? '' : `such as ${such}`) : said(sayValue(field, fallback, system));
  return (
    <QuantityField
      id={fieldId(name)}
      label={title}
      text={before}
      placeholder={placeholder}
      inputMode={inputModeOf(field)}
      {...(says === '' ? {} : { note: says })}
      {...(problem === undefined ? {} : { problem })}
      {...(fallback !== undefined && text.trim() === '' ? { after: <span className="law-default">default</span> } : {})}
      check={(typed) => {
        if (typed.trim() === '') return { ok: true };
        const tried = readInput(field, whole(typed));
        return tried.ok ? { ok: true } : tried;
      }}
      step={(typed, direction) => stepText(field, typed.replace(SUCH_AS, ''), direction)}
      onDraft={(typed) => desk.type(name, typed)}
      onWrong={(typed) => desk.type(name, typed)}
      onCommit={(typed) => desk.mean(name, whole(typed).trim())}
      onCancel={desk.untype}
    />
  );
}

/** The inputs of a law, each as a person writes it. */
export function LawFields(props: LawFieldsProps) {
  return (
    <div className="law-fields">
      {inputsOf(props.law).map((field) => {
        const isWords = field.choices !== undefined || field.as === 'flag';
        const key = `${field.name} ${props.desk.epoch}`;
        return isWords ? (
          <WordField key={key} field={field} {...props} />
        ) : (
          <NumberField key={key} field={field} {...props} />
        );
      })}
    </div>
  );
}
