/** Whether what is typed of a clip can be meant; nothing typed takes back what was told. */
import { Fault } from '../../../base/fault.ts';
import { parseQuantity } from '../../../base/quantity.ts';
import { parseCurve } from '../../../measure/curveText.ts';
import type { Checked } from '../../parts/QuantityField.tsx';

const RIGHT: Checked = { ok: true };
const LARGEST_CODE = 65_535;
const LONGEST_NOTE = 500;
const FASTEST_fps = 10_000_000;

export function checkRate(text: string): Checked {
  if (text.trim() === '') return RIGHT;
  const parsed = parseQuantity('rate', text);
  if (!parsed.ok) return parsed;
  if (parsed.value > 0 && parsed.value <= FASTEST_fps) return RIGHT;
  return { ok: false, why: 'a camera takes more than no frames a second, and fewer than ten million' };
}

export function checkCurve(text: string): Checked {
  if (text.trim() === '') return RIGHT;
  try {
    parseCurve(text);
    return RIGHT;
  } catch (error) {
    if (error instanceof Fault) return { ok: false, why: `${error.what}. ${error.mend}` };
    throw error;
  }
}

export const checkBlack = (text: string): Checked =>
  text.trim() === '' || (/^\s*\d{1,5}\s*$/.test(text) && Number(text) <= LARGEST_CODE) ? RIGHT : { ok: false, why: `a code value is a whole number from 0 to ${LARGEST_CODE}` }; // prettier-ignore

export const checkNote = (text: string): Checked =>
  [...text.trim()].length <= LONGEST_NOTE ? RIGHT : { ok: false, why: `a note has at most ${LONGEST_NOTE} characters` };
