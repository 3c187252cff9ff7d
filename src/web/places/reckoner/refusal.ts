/** Why a law has no answer, in the words of its form rather than those of its function. */
import { showNumber, type UnitSystem } from '../../../base/quantity.ts';
import { inputsOf, resultsOf, type AnyLaw, type InputField } from '../../../laws/law.ts';
import { said, sayValue } from './lawText.ts';

const PHRASES: readonly (readonly [from: RegExp, to: string])[] = [
  [/positive and finite/, 'above zero'],
  [/zero or above and finite/, 'zero or above'],
  [/\bmust be finite\b/, 'must be a finite number'],
];

const NUMBER = /(?<![\w.])-?(?:\d+(?:\.\d+)?(?:e[+-]?\d+)?|Infinity)(?![\w.:])/gi;

/** A name of code as words: `focalLength_m` → "focal length". */
const asWords = (name: string): string =>
  name
    .split('_')[0]!
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();

/** "Exposure time" inside a sentence: "exposure time"; names such as EI stay as they are. */
export const lowered = (title: string) =>
  /^[A-Z][a-z]/.test(title) ? title[0]!.toLowerCase() + title.slice(1) : title;

const CODE_NAME = /\b(?:[a-z]+(?:[A-Z][a-z]*)+(?:_\w+)?|[a-z]+_\w+)\b/g;

/** A number on its own in a sentence about a field: shown as that field would be. */
function showIn(field: Pick<InputField, 'name' | 'kind'> | undefined, text: string, system: UnitSystem): string {
  const value = Number(text);
  if (!Number.isFinite(value)) return 'without end';
  const isPositive = value > 0;
  if (field?.kind && (isPositive || (field.kind !== 'fStop' && field.kind !== 'tStop')))
    return said(sayValue(field, value, system));
  return showNumber(value, 4);
}

/** "exposureTime_s must be positive and finite, got 0" → "Exposure time must be above zero; it is 0 s". */
export function sayRefusal(of: AnyLaw, message: string, system: UnitSystem): string {
  const fields = [...inputsOf(of), ...resultsOf(of)];
  const [, name = ''] = /^(\S+) must /.exec(message) ?? [];
  const subject = fields.find((field) => field.name === name);
  const [claim = '', got] = message.split(/, got (?=[^,]*$)/);
  let words = claim.replace(CODE_NAME, (word) => {
    const field = fields.find((each) => each.name === word);
    return field ? lowered(field.title) : asWords(word);
  });
  for (const [from, to] of PHRASES) words = words.replace(from, to);
  words = words.replace(NUMBER, (text) => (text.length > 5 ? showNumber(Number(text), 4) : text));
  words = words.replace(
    /from (\S+) (to|to below) (\S+)$/,
    (_, low: string, to: string, high: string) =>
      `from ${showIn(subject, low, system)} ${to} ${showIn(subject, high, system)}`,
  );
  const sentence = words.charAt(0).toUpperCase() + words.slice(1);
  if (got === undefined) return sentence;
  const isNumber = /^-?(?:[\d.]+(?:e[+-]?\d+)?|Infinity)$/i.test(got);
  const value = isNumber ? showIn(subject, got, system) : got.replace(CODE_NAME, asWords);
  return `${sentence}; it is ${value}`;
}
