import { ratioOf, printRational } from '../../../base/rational.ts';
import { showNumber, showQuantity } from '../../../base/quantity.ts';
import type { Clocks } from '../../../plan/types.ts';
import { Figure } from '../../parts/Figure.tsx';
import { TwoClocks } from '../../parts/TwoClocks.tsx';
import { useShot } from './shotContext.ts';
import { saidShown } from './showValue.ts';

/** "50 × slower", or the range of a profile. */
function sayStretch(slowest: number, fastest: number): string {
  const slower = (fraction: number) => (fraction > 1 ? `${showNumber(fraction, 2)} × faster` : `${showNumber(1 / fraction, 2)} ×`);
  if (Math.abs(slowest / fastest - 1) < 0.005 && Math.abs(slowest - 1) < 0.005) return 'in real time';
  if (Math.abs(slowest / fastest - 1) < 0.005) return fastest > 1 ? slower(fastest) : `${slower(slowest)} slower`;
  if (fastest > 1) return `${slower(fastest)} to ${slower(slowest)} slower`;
  return `${showNumber(1 / fastest, 2)} to ${slower(slowest)} slower`;
} // prettier-ignore

/** The shot on its two clocks: on the set, and on the screen. */
export function ShotClocks() {
  const { plan } = useShot();
  return <PlannedClocks clocks={plan.clocks} />;
}

/** The two clocks as planned, or what they still lack. */
export function PlannedClocks({ clocks }: { readonly clocks: Clocks | undefined }) {
  if (!clocks || !(clocks.actionTime_s > 0) || !(clocks.screenTime_s > 0)) {
    return <p className="clocks-none">The two clocks start once the shot has a length, a time on screen and a camera.</p>;
  }
  const { actionTime_s, handles_s, screenTime_s, samples, playRate, slowestFraction, fastestFraction, recordTime_s } =
    clocks;
  const kept_s = actionTime_s + 2 * handles_s;
  const real = showQuantity('time', actionTime_s, { digits: 3 });
  const screen = showQuantity('time', screenTime_s, { digits: 3 });
  const stretch = sayStretch(slowestFraction, fastestFraction);
  const held = recordTime_s === undefined ? undefined : saidShown(showQuantity('time', recordTime_s, { digits: 2 }));
  const handles = handles_s > 0 ? ` with ${saidShown(showQuantity('time', handles_s))} kept before and after` : '';
  const play = printRational(playRate);
  return (
    <TwoClocks
      spanTime_s={actionTime_s}
      padTime_s={handles_s}
      screenTime_s={screenTime_s}
      samples={samples}
      {...(recordTime_s === undefined ? {} : { heldTime_s: recordTime_s })}
      words={{
        real: 'On the set',
        screen: 'On screen',
        ...(held === undefined ? {} : { held: `memory holds ${held}` }),
        isHeldShort: recordTime_s !== undefined && recordTime_s < kept_s,
        says: `${saidShown(real)} on the set${handles} play for ${saidShown(screen)} on screen at ${play} frames a second, ${stretch}${held === undefined ? '' : `; memory holds ${held}`}.`,
      }}
      realFigure={<Figure {...real} />}
      screenFigure={
        <span>
          <Figure {...screen} /> <span className="clock-rate">at {ratioOf(playRate) % 1 === 0 ? play : showNumber(ratioOf(playRate), 5)}</span>
        </span>
      }
      stretchFigure={stretch}
    />
  );
} // prettier-ignore
