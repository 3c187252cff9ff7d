import type { HeroLife } from '../../../plan/types.ts';
import { Panel } from '../../parts/Panel.tsx';
import { labelTick, tickStep_s, ticksWithin } from '../../parts/ticks.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { lifeLines, saysLife, timeSaid } from './lifeWords.ts';
import { useShot } from './shotContext.ts';
import './life.css';

const HEIGHT = { ruler: 20, bar: 14, gap: 6, all: 66 } as const;
/** Room about the scale for the ends of labels. */
const PAD_px = 14;
/** A label every so many pixels. */
const LABEL_px = 74;

/** Real time from the first light on: how long the product is sure to last, how long it may, and how long a take lights it. */
function LifeDrawing({ life: { life, lightOn_s } }: { readonly life: HeroLife }) {
  const [ref, width_px] = useWidth<HTMLDivElement>();
  const span_s = Math.max(life.high, lightOn_s ?? 0, 1e-3) * 1.06;
  const x = (time_s: number) => PAD_px + (time_s / span_s) * Math.max(0, width_px - 2 * PAD_px);
  const step_s = tickStep_s({ span_s, most: Math.max(2, Math.floor((width_px - 2 * PAD_px) / LABEL_px)) });
  const lifeY = HEIGHT.ruler + HEIGHT.gap;
  const takeY = lifeY + HEIGHT.bar + HEIGHT.gap;
  const isShort = lightOn_s !== undefined && lightOn_s > life.low;
  return (
    <div ref={ref} className="life-drawing" aria-hidden="true">
      {width_px > 0 && (
        <svg width={width_px} height={HEIGHT.all} viewBox={`0 0 ${width_px} ${HEIGHT.all}`}>
          <defs>
            <pattern id="life-credible" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect className="life-stripe" width="2" height="6" />
            </pattern>
            <pattern id="life-short" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect className="life-stripe-short" width="3" height="6" />
            </pattern>
          </defs>
          {ticksWithin({ from_s: 0, to_s: span_s, step_s }).map((time_s) => (
            <g key={time_s}>
              <path className="life-tick" d={`M${x(time_s)} ${HEIGHT.ruler - 5}v5`} />
              <text x={x(time_s)} y={HEIGHT.ruler - 8} textAnchor={time_s === 0 ? 'start' : 'middle'}>
                {labelTick({ time_s, step_s })}
              </text>
            </g>
          ))}
          <path className="life-axis" d={`M${x(0)} ${HEIGHT.ruler}H${x(span_s)}`} />
          <rect className="life-may" x={x(life.low)} y={lifeY} width={Math.max(0, x(life.high) - x(life.low))} height={HEIGHT.bar} />
          <rect className="life-sure" x={x(0)} y={lifeY} width={Math.max(1, x(life.low) - x(0))} height={HEIGHT.bar} />
          {lightOn_s !== undefined && (
            <>
              <rect className="life-take" x={x(0)} y={takeY} width={x(Math.min(lightOn_s, life.low)) - x(0)} height={HEIGHT.bar} />
              {isShort && <rect className="life-over" x={x(life.low)} y={takeY} width={x(lightOn_s) - x(life.low)} height={HEIGHT.bar} />}
              <path className={isShort ? 'life-end is-short' : 'life-end'} d={`M${x(life.low)} ${lifeY}V${takeY + HEIGHT.bar + 3}`} />
            </>
          )}
        </svg>
      )}
    </div>
  );
} // prettier-ignore

function Legend({ life: { life, lightOn_s } }: { readonly life: HeroLife }) {
  const isShort = lightOn_s !== undefined && lightOn_s > life.low;
  return (
    <ul className="life-legend" aria-hidden="true">
      <li className="is-sure">the shortest, {timeSaid(life.low)}</li>
      {life.high > life.low && <li className="is-may">as credible, to {timeSaid(life.high)}</li>}
      {lightOn_s !== undefined && <li className={isShort ? 'is-over' : 'is-take'}>a take lights it, {timeSaid(lightOn_s)}</li>}
    </ul>
  );
} // prettier-ignore

/** How long the product lasts under its light, where that is worked out: drawn in real time, with everything it rests on. */
export function LifeClock() {
  const { plan, system, trace } = useShot();
  const { heroLife } = plan;
  if (!heroLife) return null;
  return (
    <Panel title="Under the light" aside="worked out from the light, on the cautious side" className="life-panel">
      <p className="life-says">{saysLife(heroLife)}</p>
      <LifeDrawing life={heroLife} />
      <Legend life={heroLife} />
      <dl className="life-lines">
        {lifeLines(heroLife, system).map(({ label, value, says, name }) => (
          <div key={name}>
            <dt>{label}</dt>
            <dd>
              <button type="button" onClick={() => trace(name)}>
                {value}
                <span className="hidden-text">: where this comes from</span>
              </button>
            </dd>
            <dd className="life-line-says">{says}</dd>
          </div>
        ))}
      </dl>
      <p className="life-foot">
        <button type="button" onClick={() => trace('heroLife_s')}>
          Where the time comes from
        </button>{' '}
        A spare piece under these lamps, with a watch, says it better: write what it stood as how long the product lasts.
      </p>
    </Panel>
  );
} // prettier-ignore
