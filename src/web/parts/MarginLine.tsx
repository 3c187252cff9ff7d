import type { CSSProperties } from 'react';
import type { Shown } from '../../base/quantity.ts';
import { AXIS_MARKS, placeMargin, placeOnAxis, showSigned, type Span } from './marginScale.ts';
import { sayRow, type ChartRow, type Ghost } from './marginRow.ts';
import { AssumedMark } from './AssumedMark.tsx';
import { StateWord } from './StateWord.tsx';

export interface MarginLineProps {
  readonly row: ChartRow;
  readonly stops: Span;
  readonly ghost: Ghost | undefined;
  /** How far the ghost lies from the bar; undefined when it stays. */
  readonly change: number | undefined;
  readonly isChosen: boolean;
  /** The one row that the Tab key reaches. */
  readonly isEntry: boolean;
  readonly onChoose: (id: string) => void;
}

const across = (fraction: number) => `${(fraction * 100).toFixed(3)}%`;

const between = (from: number, to: number): CSSProperties => ({ left: across(from), width: across(to - from) });

/** The empty axis of one row: whole stops, and the line of just enough. */
function MarginGrid() {
  return AXIS_MARKS.map((mark) => (
    <span
      key={mark}
      className={mark === 0 ? 'grid-line is-zero' : 'grid-line'}
      style={{ left: across(placeOnAxis(mark)) }}
    />
  ));
}

function Bar({ stops, row }: { readonly stops: Span; readonly row: ChartRow }) {
  const { from, to, low, high, beyond } = placeMargin(stops);
  const side = stops.value < 0 ? 'left' : 'right';
  const hasBand = !beyond && high - low > 0.008;
  return (
    <>
      {hasBand && <span className={`band ${row.standing}`} style={between(low, high)} />}
      <span
        className={`bar ${row.standing} ${side} ${row.isHard ? 'wall' : 'fade'}${beyond ? ' beyond' : ''}`}
        style={between(from, to)}
      />
      {hasBand && <span className="whisker" style={between(low, high)} />}
      {beyond && <span className={`beyond-word ${beyond}`}>{showSigned(stops.value)}</span>}
    </>
  );
}

function Pair({ have, need, joint }: { readonly have: Shown; readonly need: Shown; readonly joint: string }) {
  return (
    <>
      <span className="margin-have">
        {have.number}
        {have.unit !== '' && <i> {have.unit}</i>}
      </span>
      <span className="margin-joint">{joint}</span>
      <span className="margin-need">
        {need.number}
        {need.unit !== '' && <i> {need.unit}</i>}
      </span>
    </>
  );
}

/** One limit: its name, its bar with whisker, both figures and how it stands. */
export function MarginLine({ row, stops, ghost, change, isChosen, isEntry, onChoose }: MarginLineProps) {
  const have = change === undefined ? row.have : (ghost?.have ?? row.have);
  const need = change === undefined ? row.need : (ghost?.need ?? row.need);
  const standing = ghost && change !== undefined ? ghost.standing : row.standing;
  const ghostAt = ghost && change !== undefined ? placeMargin(ghost.stops) : undefined;
  return (
    <button
      type="button"
      role="radio"
      aria-checked={isChosen}
      aria-label={sayRow(row)}
      tabIndex={isEntry ? 0 : -1}
      data-row={row.id}
      className={`margin-line ${standing}${change === undefined ? '' : ' moves'}`}
      onClick={() => onChoose(row.id)}
    >
      <span className="margin-name">
        {row.title}
        {row.detail !== undefined && <small>{row.detail}</small>}
      </span>
      <span className="margin-track">
        <MarginGrid />
        <Bar stops={stops} row={row} />
        {ghostAt && <span className="ghost" style={between(ghostAt.from, ghostAt.to)} />}
      </span>
      <span className="margin-figures">
        {have && need && <Pair have={have} need={need} joint={row.joint} />}
        {row.isAssumed && <AssumedMark />}
      </span>
      <span className="margin-stops">
        {change === undefined ? showSigned(stops.value) : `${change > 0 ? '↑' : '↓'}${showSigned(change)}`}
      </span>
      <StateWord standing={standing} />
    </button>
  );
}
