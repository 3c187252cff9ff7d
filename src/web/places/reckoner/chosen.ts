/** What the pictures of a law are drawn over where nobody has said. */
import { inputsOf, type InputField } from '../../../laws/law.ts';
import { isAperture, isDrawable, numberOf } from './axis.ts';
import { asInput, resultNumber, type Asking } from './sample.ts';

/** A result that changes by less than this share says little along an axis. */
const LEAST_CHANGE = 0.02;

function isFelt(asking: Asking, field: InputField): boolean {
  const value = numberOf(asking.given[field.name] ?? field.default);
  const now = resultNumber(asking);
  if (value === undefined || now === undefined) return true;
  const tried = [value * 1.5, value / 1.5, value + 1]
    .map((each) => resultNumber({ ...asking, given: { ...asking.given, [field.name]: asInput(field, each) } }))
    .filter((each) => each !== undefined);
  return tried.some((each) => Math.abs(each - now) > LEAST_CHANGE * Math.abs(now));
}

/**
 * The inputs that can run along an axis, the likeliest first: those the result feels, of these apertures, then what
 * has to be given, then what has a default.
 */
export function drawableInputs(asking: Asking): readonly InputField[] {
  const rank = (field: InputField) =>
    (isFelt(asking, field) ? 0 : 4) + (isAperture(field) ? 0 : field.default === undefined ? 1 : 2);
  return inputsOf(asking.of)
    .filter(isDrawable)
    .map((field) => ({ field, at: rank(field) }))
    .sort((a, b) => a.at - b.at)
    .map(({ field }) => field);
}
