import { useState, type KeyboardEvent } from 'react';
import { parseQuantity } from '../../../base/quantity.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';

export interface Knot {
  readonly at: string;
  readonly speed: string;
}

export interface KnotTableProps {
  readonly id: string;
  readonly knots: readonly Knot[];
  readonly problemOf: (index: number, key: keyof Knot) => string | undefined;
  /** `isMeant` when it is to be sent; otherwise it is still being typed. */
  readonly onChange: (knots: readonly Knot[], isMeant: boolean) => void;
  readonly onCancel: () => void;
}

interface CellProps {
  readonly label: string;
  readonly id?: string;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onType: (text: string) => void;
  readonly onMean: (text: string) => void;
  readonly onCancel: () => void;
}

function Cell({ label, id, text, problem, onType, onMean, onCancel }: CellProps) {
  const [typed, setTyped] = useState<string>();
  const mean = (next: string) => {
    if (typed !== undefined && next !== text) onMean(next);
    setTyped(undefined);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') mean(event.currentTarget.value);
    if (event.key !== 'Escape' || typed === undefined) return;
    event.stopPropagation();
    setTyped(undefined);
    onCancel();
  };
  return (
    <td>
      <input
        id={id}
        className="field-input"
        aria-label={label}
        aria-invalid={problem !== undefined}
        title={problem}
        autoComplete="off"
        spellCheck={false}
        value={typed ?? text}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          onType(event.currentTarget.value);
        }}
        onKeyDown={onKeyDown}
        onBlur={(event) => mean(event.currentTarget.value)}
      />
    </td>
  );
}

/** A bare number of seconds is meant as seconds. */
const asTime = (text: string) => (/^\d+(\.\d+)?$/.test(text.trim()) ? `${text.trim()} s` : text.trim());

const isTime = (text: string) => parseQuantity('time', text).ok;

/** A knot half a second of screen time after the last, at its speed. */
function nextKnot(knots: readonly Knot[]): Knot {
  const last = knots[knots.length - 1];
  const read = last && parseQuantity('time', last.at);
  return { at: `${read?.ok ? Number((read.value + 0.5).toPrecision(6)) : 0} s`, speed: last?.speed ?? '1/40' };
}

/** The knots of a speed profile: moments of screen time, each with the playback speed there. */
export function KnotTable({ id, knots, problemOf, onChange, onCancel }: KnotTableProps) {
  const withKnot = (index: number, change: Partial<Knot>) =>
    knots.map((knot, i) => (i === index ? { ...knot, ...change } : knot));
  return (
    <div className="knot-table">
      <table>
        <thead>
          <tr>
            <th scope="col">On screen at</th>
            <th scope="col">Speed</th>
            <th>
              <span className="hidden-text">Take away</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {knots.map(({ at, speed }, i) => (
            <tr key={i}>
              <Cell
                {...(i === 0 ? { id } : {})}
                label={`Knot ${i + 1}: screen time`}
                text={at}
                problem={problemOf(i, 'at')}
                onType={(text) => isTime(asTime(text)) && onChange(withKnot(i, { at: asTime(text) }), false)}
                onMean={(text) => onChange(withKnot(i, { at: asTime(text) }), true)}
                onCancel={onCancel}
              />
              <Cell
                label={`Knot ${i + 1}: playback speed`}
                text={speed}
                problem={problemOf(i, 'speed')}
                onType={(text) => /\d$/.test(text) && onChange(withKnot(i, { speed: text.trim() }), false)}
                onMean={(text) => onChange(withKnot(i, { speed: text.trim() }), true)}
                onCancel={onCancel}
              />
              <td>
                <Button
                  look="sign"
                  aria-label={`Take away knot ${i + 1}`}
                  disabled={knots.length <= 2}
                  onClick={() => onChange(knots.toSpliced(i, 1), true)}
                >
                  <Icon name="close" />
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Button look="quiet" onClick={() => onChange([...knots, nextKnot(knots)], true)}>
        <Icon name="plus" />
        Add a knot
      </Button>
    </div>
  );
}
