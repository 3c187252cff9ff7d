import { useMemo, useState } from 'react';
import { waysFor } from '../../../plan/ways/ways.ts';
import type { Margin, MarginState, Way } from '../../../plan/types.ts';
import { showSigned } from '../../parts/marginScale.ts';
import { changeOf, type ChartRow, type Ghost } from '../../parts/marginRow.ts';
import { AssumedMark } from '../../parts/AssumedMark.tsx';
import { Button } from '../../parts/Button.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { MarginChart } from '../../parts/MarginChart.tsx';
import { MarginLine } from '../../parts/MarginLine.tsx';
import { MarginTable } from '../../parts/MarginTable.tsx';
import { MiniMargin } from '../../parts/MiniMargin.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { StateShape, StateWord } from '../../parts/StateWord.tsx';
import { UnknownLine } from '../../parts/UnknownLine.tsx';
import { WayCard } from '../../parts/WayCard.tsx';
import { LIMIT_HELP } from '../../../turnover/limitHelp.ts';
import { chartRows, ghostsOf, worstOf } from '../shot/chartRows.ts';
import { wayCardOf } from '../shot/wayCardOf.ts';
import { Exhibit, State } from './Exhibit.tsx';
import { rowsToShow } from './rowsToShow.ts';
import type { Bench } from './useBench.ts';

const STATES: readonly MarginState[] = ['short', 'tight', 'spare', 'unknown'];

export interface LimitsProps {
  readonly bench: Bench;
  readonly onFollow: (path: string) => void;
}

/** Figures, words and small margins, as they stand within lines. */
export function Words({ bench }: Pick<LimitsProps, 'bench'>) {
  const rows = chartRows(bench.planOf('drop').margins);
  const light = rows.find(({ id }) => id === 'light');
  return (
    <>
      <Exhibit of="Figure" says="A number with its unit beside it, in two sizes.">
        <State says="body">{light?.have && <Figure {...light.have} />}</State>
        <State says="big">{light?.need && <Figure {...light.need} size="big" />}</State>
      </Exhibit>
      <Exhibit of="StateWord" says="How a limit stands: told apart by shape and word, not by colour alone.">
        {STATES.map((state) => (
          <State key={state} says={state}>
            <StateWord standing={state} />
          </State>
        ))}
      </Exhibit>
      <Exhibit of="StateShape" says="The shape alone, for where the word stands nearby.">
        <p>
          {STATES.map((state) => (
            <span key={state} className="exhibit-shape">
              <StateShape standing={state} /> {rows.filter(({ standing }) => standing === state).length} {state}
            </span>
          ))}
        </p>
      </Exhibit>
      <Exhibit of="AssumedMark" says="Stands after a figure that rests on something nobody measured or published.">
        <p>
          {light?.need && <Figure {...light.need} />} {light?.isAssumed === true && <AssumedMark />}
          <span className="hidden-text">rests on an assumption</span>
        </p>
      </Exhibit>
      <Exhibit of="MiniMargin" says="The same axis, small enough to stand in a line.">
        {rowsToShow(rows).flatMap(({ says, row: { id, title, standing, stops } }) =>
          stops ? (
            <State key={id} says={says}>
              <span className="exhibit-line">
                <MiniMargin stops={stops.value} standing={standing} /> {title} {showSigned(stops.value)}
              </span>
            </State>
          ) : (
            []
          ),
        )}
      </Exhibit>
    </>
  );
}

function Line({ row, ghost, isChosen, onChoose }: { readonly row: ChartRow; readonly ghost?: Ghost | undefined; readonly isChosen: boolean; readonly onChoose: (id: string) => void }) {
  return (
    <div className="margin-chart">
      <div className="margin-lines" role="radiogroup" aria-label={row.title}>
        <div className="margin-row">
          <MarginLine row={row} stops={row.stops!} ghost={ghost} change={changeOf(row, ghost)} isChosen={isChosen} isEntry onChoose={onChoose} />
        </div>
      </div>
    </div>
  );
} // prettier-ignore

/** Rows of the chart one at a time, each with what to look for. */
export function Rows({ bench, onFollow, way }: LimitsProps & { readonly way: Way | undefined }) {
  const [chosen, setChosen] = useState<string>();
  const rows = chartRows(bench.planOf('drop').margins);
  const ghosts = way && ghostsOf(way.margins);
  const moving = rows.filter((row) => changeOf(row, ghosts?.get(row.id)) !== undefined);
  const unknown = chartRows(bench.planOf('bare').margins).filter(({ stops }) => !stops);
  return (
    <>
      <Exhibit of="MarginLine" isWide says="One limit: name, bar with its band, both figures, stops and state. Hard limits end in a wall, others in a fade.">
        {rowsToShow(rows).map(({ says, row }) => (
          <State key={row.id} says={says}>
            <Line row={row} isChosen={row.id === chosen} onChoose={setChosen} />
          </State>
        ))}
        {moving.map((row) => (
          <State key={`ghost ${row.id}`} says="with a ghost: where a way would put it">
            <Line row={row} ghost={ghosts?.get(row.id)} isChosen={row.id === chosen} onChoose={setChosen} />
          </State>
        ))}
      </Exhibit>
      <Exhibit of="UnknownLine" isWide says="A limit that cannot be judged yet, with what it lacks and the way there.">
        {unknown.map((row) => (
          <div key={row.id} className="margin-chart">
            <div className="margin-lines">
              <div className="margin-row">
                <UnknownLine row={row} onFollow={onFollow} />
              </div>
            </div>
          </div>
        ))}
        {unknown.length === 0 && <p>Everything is written now. Undo shows the row again.</p>}
      </Exhibit>
    </>
  );
} // prettier-ignore

/** The ways of one short limit, worked out here and now: the shoot is small. */
export function useWays({ shoot, written }: Bench, limit: Margin | undefined): readonly Way[] {
  const id = limit?.state === 'short' ? limit.id : undefined;
  return useMemo(() => (id === undefined ? [] : waysFor(shoot, written, 'drop', id)), [shoot, written, id]);
}

/** The whole chart, and the ways to close what is chosen in it. */
export function Charts({ bench, onFollow }: LimitsProps) {
  const { margins, title } = bench.planOf('drop');
  const [chosen, setChosen] = useState<string>();
  const [shown, setShown] = useState<Way>();
  const [helped, setHelped] = useState<Margin>();
  const margin = margins.find(({ id, stops }) => id === chosen && stops) ?? worstOf(margins);
  const ways = useWays(bench, margin);
  const bare = bench.planOf('bare');
  return (
    <>
      <Exhibit of="MarginChart" isWide says="Every limit on one axis. Choose one with the arrows; point at a way beneath to see where each bar would go; ? explains a limit.">
        <MarginChart
          label={`Limits of ${title}, in stops`}
          rows={chartRows(margins)}
          {...(shown ? { ghosts: ghostsOf(shown.margins) } : {})}
          {...(margin ? { chosen: margin.id } : {})}
          onChoose={setChosen}
          onFollow={onFollow}
          onHelp={(id) => setHelped(margins.find((each) => each.id === id))}
        />
      </Exhibit>
      <Exhibit of="WayCard" isWide says={margin ? `The ways to close ${margin.title.toLowerCase()}, each planned again in full. Pressing one does it; undo is at the top.` : 'Nothing is short or tight now.'}>
        <div className="exhibit-column">
          {ways.map((way) => (
            <WayCard
              key={JSON.stringify(way.patch)}
              {...wayCardOf(way, margin!.id)}
              isShown={way === shown}
              onShow={() => setShown(way)}
              onHide={() => setShown(undefined)}
              onApply={() => {
                setShown(undefined);
                bench.commit(way.patch, way.title);
              }}
            />
          ))}
        </div>
        {ways.length === 0 && <p>Choose a limit that is short, or undo.</p>}
      </Exhibit>
      <Exhibit of="MarginTable" isWide says="What somebody who cannot see the chart is read instead. In a place it is heard only; here it is shown.">
        <div className="exhibit-table" role="region" aria-label="The table, which scrolls sideways" tabIndex={0}>
          <MarginTable label={`Limits of ${bare.title}`} rows={chartRows(bare.margins)} />
        </div>
      </Exhibit>
      <Sheet isOpen={helped !== undefined} title={helped?.title ?? ''} onClose={() => setHelped(undefined)}>
        {helped && <p>{LIMIT_HELP[helped.id].what}</p>}
        <Button onClick={() => setHelped(undefined)}>Back to the gallery</Button>
      </Sheet>
    </>
  );
} // prettier-ignore
