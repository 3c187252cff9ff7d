/** Long times in the two units a person would say them in. */
import { showQuantity, type Shown } from '../base/quantity.ts';

const part = (count: number, unit: string): readonly Shown[] => (count === 0 ? [] : [{ number: String(count), unit }]);

/** 101 s is 1 min and 41 s, 7525 s is 2 h and 5 min; below a minute as any other time: 6.5 s. */
export function longTime(time_s: number): readonly Shown[] {
  const whole_s = Math.round(time_s);
  if (whole_s < 60) return [showQuantity('time', time_s)];
  const minutes = Math.floor(whole_s / 60);
  if (minutes < 60) return [...part(minutes, 'min'), ...part(whole_s % 60, 's')];
  const rounded = Math.round(whole_s / 60);
  return [...part(Math.floor(rounded / 60), 'h'), ...part(rounded % 60, 'min')];
}
