/** The flicker of a shot in words: what its frames do, and what each lamp is taken for. */
import type { FlickerLamp, ShotFlicker } from '../plan/types.ts';
import { onOneLine } from './lines.ts';

/** Lamps told in a line. */
const MOST_LAMPS = 6;

/** "Left head: diodes pulsed at 25 kHz, 50 % lit, assumed". */
function lampWords({ title, says, basis, unknown }: FlickerLamp): string {
  return unknown === undefined ? `${title}: ${says}${basis === 'assumed' ? ', assumed' : ''}` : `${title}: not known, ${unknown}`; // prettier-ignore
}

/** One line, unwrapped; lamps that are taken for the same are told once. */
export function flickerWords({ lamps, verdict }: ShotFlicker): string {
  const counting = lamps.filter(({ shareFraction, unknown }) => shareFraction > 0 || unknown !== undefined);
  const told = [...new Set((counting.length > 0 ? counting : lamps).map(lampWords))];
  const more = told.length > MOST_LAMPS ? [`and ${told.length - MOST_LAMPS} more`] : [];
  const says = verdict?.why ?? 'Not known yet.';
  return onOneLine(`Flicker: ${says} ${[...told.slice(0, MOST_LAMPS), ...more].join('; ')}.`);
}
