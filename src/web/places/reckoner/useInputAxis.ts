import { useMemo, useState } from 'react';
import { exampleOf, type AnyLaw, type InputField } from '../../../laws/law.ts';
import { inputAxis, numberOf, placeOn, type Axis } from './axis.ts';
import { sampleCurve, trimAxis, type Asking } from './sample.ts';

const TRIM_POINTS = 61;

/** An axis kept where it is while the value stays well inside it, so that a picture does not slip away under the hand. */
function useSteadyAxis(key: string, value: number, make: () => Axis): Axis {
  const [held, setHeld] = useState<{ readonly key: string; readonly axis: Axis }>();
  const at = held ? placeOn(held.axis, value) : Number.NaN;
  if (held?.key === key && at > 0.02 && at < 0.98) return held.axis;
  const axis = make();
  const isSame = held?.key === key && held.axis.from === axis.from && held.axis.to === axis.to;
  if (!isSame) setHeld({ key, axis });
  return axis;
}

export interface AxisAsk {
  readonly law: AnyLaw;
  readonly asking: Asking;
  readonly field: InputField;
  readonly value: number;
  readonly reach: number;
}

/** The axis of one input around where it stands, without most of what the law refuses. */
export function useInputAxis({ law, asking, field, value, reach }: AxisAsk): Axis {
  const whole = useSteadyAxis(`${law.id} ${field.name} ${reach}`, value, () =>
    inputAxis(field, {
      value,
      likely: numberOf(exampleOf(law)[field.name]),
      isConstant: numberOf(field.default) !== undefined && field.default !== 0,
      reach,
    }),
  );
  return useMemo(
    () => trimAxis(whole, sampleCurve(asking, { over: field, axis: whole, count: TRIM_POINTS }), value),
    [asking, field, whole, value],
  );
}
