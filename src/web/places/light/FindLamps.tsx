import { useEffect, useRef, useState } from 'react';
import { showNumber, showQuantity, showSigned, type UnitSystem } from '../../../base/quantity.ts';
import type { Position } from '../../../document/shape.ts';
import type { LightFound } from '../../../solve/findLight.ts';
import type { AnswerLamp, LightAnswer } from '../../../solve/lightAnswer.ts';
import type { Wish } from '../../../solve/lampProgram.ts';
import { Button } from '../../parts/Button.tsx';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { finder } from '../../state/page.ts';
import { isDropped, type Called } from '../../workers/connect.ts';
import { useLight } from './lightContext.ts';
import './findLamps.css';

const WISHES: readonly { readonly value: Wish; readonly label: string }[] = [
  { value: 'least-power', label: 'least power' },
  { value: 'least-heat', label: 'least heat on the product' },
  { value: 'fewest', label: 'fewest lamps' },
  { value: 'least-money', label: 'least money' },
];

type Search =
  | { readonly state: 'idle' }
  | { readonly state: 'working'; readonly done: number; readonly total: number }
  | { readonly state: 'failed'; readonly says: string }
  | { readonly state: 'done'; readonly found: LightFound };

/** What an answer takes: "2 lamps, 1.4 kW, 120 a day to hire". */
function costWords({ lampCount, power_W, toHire, hirePrice }: LightAnswer): string {
  const lamps = lampCount === 1 ? '1 lamp' : `${lampCount} lamps`;
  const power = power_W === undefined ? 'power not stated' : power_W < 1000 ? `${Math.round(power_W)} W` : `${showNumber(power_W / 1000, 2)} kW`; // prettier-ignore
  const hire = toHire.length === 0 ? [] : [hirePrice === undefined ? 'to hire, price not stated' : `${showNumber(hirePrice, 4)} a day to hire`]; // prettier-ignore
  return [lamps, power, ...hire].join(', ');
}

/** Where a lamp stands, as one would say it from the camera: "in front to the left". */
function sideWords({ right_m, away_m }: Position): string {
  const level = Math.hypot(right_m, away_m);
  if (level < 0.05) return 'straight above';
  const depth = Math.abs(away_m) > level * 0.38 ? (away_m > 0 ? 'behind' : 'in front') : '';
  const side = Math.abs(right_m) > level * 0.38 ? (right_m > 0 ? 'to the right' : 'to the left') : '';
  return [depth, side].filter((word) => word !== '').join(' ');
}

function placeWords({ at, distance_m, levelFraction, floodFraction, isHired }: AnswerLamp, system: UnitSystem): string {
  const length = (value: number) => {
    const { number, unit } = showQuantity('length', value, { digits: 3, system });
    return `${number} ${unit}`;
  };
  const height = at.up_m >= 0 ? `${length(at.up_m)} up` : `${length(-at.up_m)} down`;
  const flood =
    floodFraction === undefined || floodFraction === 0 ? [] : [`flood ${Math.round(floodFraction * 100)} %`];
  return [
    `${length(distance_m)} away, ${sideWords(at)}, ${height}`,
    `level ${Math.round(levelFraction * 100)} %`,
    ...flood,
    ...(isHired ? ['to hire'] : []),
  ].join(', ');
}

function Answer({ answer, onApply }: { readonly answer: LightAnswer; readonly onApply: () => void }) {
  const { system } = useLight();
  const { placed, shots, notices, says } = answer;
  const titles = placed.map(({ title }) => title).join(', ');
  return (
    <li className="found">
      {placed.length === 0 && <p className="found-title">{says}</p>}
      {placed.map((lamp) => (
        <p key={lamp.id} className="found-lamp">
          <b>{lamp.title}</b> <span>{placeWords(lamp, system)}</span>
        </p>
      ))}
      {placed.length > 0 && says !== titles && <p className="found-says">{says}</p>}
      <p className="found-cost">{costWords(answer)}</p>
      <ul className="found-shots">
        {shots.map(({ shotId, title, stops, state, thenShort }) => (
          <li key={shotId}>
            <span>{title}</span>
            <b>{showSigned(stops.value)}</b> {state}
            {thenShort.length > 0 && `; then short: ${thenShort.join(', ')}`}
          </li>
        ))}
      </ul>
      {notices.map((notice) => (
        <p key={notice} className="found-says">
          {notice}
        </p>
      ))}
      <Button onClick={onApply}>
        {placed.length === 0 ? 'Set it so' : `Put ${placed.length === 1 ? 'it' : 'them'} there`}
      </Button>
    </li>
  );
}

/** Asks for lamps that would give every shot of the set-up its light, and puts an answer where it says. */
export function FindLamps() {
  const { open, setupId, title, edit } = useLight();
  const [wish, setWish] = useState<Wish>('least-power');
  const [search, setSearch] = useState<Search>({ state: 'idle' });
  const running = useRef<Called<LightFound>>(undefined);
  const stop = () => {
    running.current?.cancel();
    running.current = undefined;
  };
  // An answer is worth nothing once the shoot it was worked out for has changed.
  useEffect(() => {
    setSearch({ state: 'idle' });
    return stop;
  }, [open.written, setupId]);

  const ask = () => {
    stop();
    setSearch({ state: 'working', done: 0, total: 0 });
    const called = finder.call('light', { written: open.written, setupId, wish }, ({ done, total }) =>
      setSearch({ state: 'working', done, total }),
    );
    running.current = called;
    called.answer.then(
      (found) => setSearch({ state: 'done', found }),
      (error: unknown) => {
        if (isDropped(error)) return;
        setSearch({ state: 'failed', says: error instanceof Error ? error.message : String(error) });
      },
    );
  };
  const apply = ({ patch }: LightAnswer) => edit(patch, `Lamps found for ${title}`);

  return (
    <Panel title="Find lamps" aside="from the kit" className="find-lamps">
      <ChoiceField id="find-wish" label="With" value={wish} choices={WISHES} isGiven={false} onChoose={(next) => setWish(next as Wish)} />
      {search.state === 'working' ? (
        <p className="find-word" role="status">
          {search.total > 0 ? `Looking, ${search.done} of ${search.total}… ` : 'Looking… '}
          <Button look="quiet" onClick={() => { stop(); setSearch({ state: 'idle' }); }}>
            Stop
          </Button>
        </p>
      ) : (
        <Button onClick={ask}>Find lamps for what its shots need</Button>
      )}
      {search.state === 'failed' && (
        <p className="find-word" role="alert">
          {search.says}
        </p>
      )}
      {search.state === 'done' && (
        <div role="region" aria-label="Lamps found">
          {search.found.says.map((says) => (
            <p key={says} className="find-word">
              {says}
            </p>
          ))}
          <ul className="found-list">
            {search.found.answers.map((answer) => (
              <Answer key={JSON.stringify(answer.patch)} answer={answer} onApply={() => apply(answer)} />
            ))}
            {search.found.closest && (
              <Answer answer={search.found.closest} onApply={() => apply(search.found.closest!)} />
            )}
          </ul>
          {search.found.answers.length + (search.found.closest ? 1 : 0) > 0 && (
            <p className="find-word">Each was planned again in full. Where a stand can go is for whoever carries it to judge.</p>
          )}
        </div>
      )}
    </Panel>
  );
} // prettier-ignore
