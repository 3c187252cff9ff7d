import { useState } from 'react';
import type { Margin, Way } from '../../../plan/types.ts';
import { LAMP_SEARCH } from '../../../plan/ways/move.ts';
import { Button } from '../../parts/Button.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { WayCard } from '../../parts/WayCard.tsx';
import type { Waiting } from '../../state/contract.ts';
import { chartRows } from './chartRows.ts';
import { useShot } from './shotContext.ts';
import { wayCardOf } from './wayCardOf.ts';

export interface WaysProps {
  readonly margin: Margin;
  readonly shown: Way | undefined;
  readonly onShow: (way: Way | undefined) => void;
  readonly onApply: (way: Way) => void;
}

const FIRST_SHOWN = 4;

const size = (stops: number) => Math.abs(stops).toFixed(1);

function titleOf({ state, title, stops }: Margin): string {
  if (!stops) return title;
  if (state === 'short') return `Ways to close ${title.toLowerCase()}, ${size(stops.value)} stops short`;
  return state === 'tight' ? `${title}: tight` : `${title}: ${size(stops.value)} stops to spare`;
}

/** The two figures of a limit, each leading to where it comes from. */
function Figures({ margin }: { readonly margin: Margin }) {
  const { trace, system } = useShot();
  const [row] = chartRows([margin], system);
  if (!row?.have || !row.need) return null;
  return (
    <p className="ways-figures">
      <button type="button" onClick={() => trace(margin.haveName)}>
        <Figure {...row.have} />
        <span className="hidden-text">: where this comes from</span>
      </button>
      {row.joint}
      <button type="button" onClick={() => trace(margin.needName)}>
        <Figure {...row.need} />
        <span className="hidden-text">: where this comes from</span>
      </button>
      {margin.isHard ? 'a hard limit' : 'can give way'}
    </p>
  );
}

function stateOfSearch({ state, done, total, ways, search }: Waiting): string | undefined {
  if (state === 'failed') return 'The ways could not be worked out. Change something, or choose the limit again.';
  if (state === 'working') return total > 0 ? `${done} of ${total} changes planned` : 'Planning changes…';
  if (search === 'working') return 'Searching all lamps of the kit too…';
  if (search === 'failed') return 'The search among the lamps of the kit ended without an answer.';
  return ways.length === 0 ? 'No single change found that helps. Two together may: try the limits it trades with.' : undefined;
} // prettier-ignore

function Cards({ margin, shown, onShow, onApply }: WaysProps) {
  const { open, shotId } = useShot();
  const [isWhole, setWhole] = useState(false);
  const waiting = open.ways(shotId, margin.id);
  const search = stateOfSearch(waiting);
  const found = waiting.ways.filter(({ move }) => move === LAMP_SEARCH);
  const own = waiting.ways.filter(({ move }) => move !== LAMP_SEARCH);
  const cards = isWhole ? waiting.ways : [...own.slice(0, FIRST_SHOWN), ...found];
  const rest = waiting.ways.length - cards.length;
  return (
    <>
      {cards.map((way) => (
        <WayCard
          key={JSON.stringify(way.patch)}
          {...wayCardOf(way, margin.id)}
          isShown={way === shown}
          onShow={() => onShow(way)}
          onHide={() => onShow(undefined)}
          onApply={() => onApply(way)}
        />
      ))}
      {rest > 0 && (
        <Button look="quiet" onClick={() => setWhole(true)}>
          {rest} more
        </Button>
      )}
      {search !== undefined && (
        // How far it is changes too often to be heard; what came of it is told.
        <p className="ways-search" {...(waiting.state === 'working' || waiting.search === 'working' ? {} : { role: 'status' })}>
          {search}
        </p>
      )}
      {waiting.ways.length > 0 && <p className="ways-hint">Each was planned again in full. <span className="by-pointing">Point at one to see every bar move.</span></p>}
    </>
  );
} // prettier-ignore

/** The chosen limit: its two figures, and the changes that close it when it is short. */
export function Ways(props: WaysProps) {
  const { margin } = props;
  return (
    <Panel title={titleOf(margin)} className="ways">
      <Figures margin={margin} />
      {margin.state === 'short' && <Cards key={margin.id} {...props} />}
      {margin.state === 'tight' && (
        <p className="ways-hint">Enough as figured, not at the low end of its band. Measure what it rests on to be sure.</p>
      )}
    </Panel>
  );
} // prettier-ignore
