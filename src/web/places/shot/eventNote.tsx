import type { ReactNode } from 'react';
import { showNumber, type UnitSystem } from '../../../base/quantity.ts';
import { eventOf, type EventReading } from '../../../plan/events.ts';
import { withDefaults } from '../../../plan/givens.ts';
import { AssumedMark } from '../../parts/AssumedMark.tsx';
import { FILLED, figureWords, isFilled, spanWords } from './eventEdits.ts';
import { findWritten } from './shotEdits.ts';
import { useShot } from './shotContext.ts';

/** Nearer than this, what a person wrote is what the event says. */
const SAME = 0.02;

/** How sure the event is of a figure: as it is usually met, or about the figures that somebody set. */
function bandOf({ event, figures, spread }: EventReading, key: keyof typeof FILLED, isSet: boolean, system: UnitSystem): string {
  const { figure, kind } = FILLED[key];
  if (figure !== 'duration_s' && figure !== 'speed_m_per_s') return '';
  if (!isSet) return `, usually ${spanWords(kind, event!.typical[figure], system)}`;
  return `, give or take ${showNumber((100 * spread![figure]) / figures![figure], 2)} %`;
} // prettier-ignore

/** What stands under a field that the shot's event fills in, or would. */
export function useEventNote(): (key: string) => ReactNode {
  const { open, shotId, system } = useShot();
  const { action } = withDefaults(open.shoot, shotId).shot;
  const reading = eventOf(action);
  const { event, figures } = reading ?? {};
  return (key) => {
    if (!event || !figures || !isFilled(key)) return undefined;
    const { figure, kind } = FILLED[key];
    const value = figures[figure];
    if (value === undefined) return undefined;
    if (findWritten(open.written, shotId, key).holder === 'nobody')
      return (
        <span className="event-note">
          <AssumedMark /> from the event{bandOf(reading!, key, Object.keys(action.parameters).length > 0, system)}
        </span>
      );
    const own = action[figure];
    return own !== undefined && Math.abs(own / value - 1) > SAME
      ? `yours; the event says ${figureWords(kind, value, system)}`
      : undefined;
  };
}
