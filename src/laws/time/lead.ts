/**
 * When to give a signal, so that what it sets going is there at the same moment as the one that takes longest.
 *
 *     lead = latency + travel + rest        fire = longest lead − lead
 *
 * Times count from the first signal, which goes to the one with the longest lead; all are there that lead after it.
 *
 * @source cue-practice the sums
 */
import { requireNotNegative, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

/** When to fire after the first signal. Throws RangeError for negative times, or a lead beyond the longest. */
export function fireOffset_s(given: {
  readonly latency_s: number;
  readonly travel_s: number;
  readonly rest_s?: number;
  readonly longestLead_s: number;
}): number {
  const { latency_s, travel_s, rest_s = 0, longestLead_s } = given;
  requireNotNegative({ latency_s, travel_s, rest_s, longestLead_s });
  const lead_s = latency_s + travel_s + rest_s;
  // Sums of the same times in another order may differ in their last digit.
  requireWithin(0, longestLead_s * (1 + 1e-12), { lead_s });
  return Math.max(0, longestLead_s - lead_s);
}

export const fireOffset = law(fireOffset_s, {
  id: 'fire-offset',
  title: 'When to give a signal',
  says: 'When a rig is fired after the first signal, so that all arrive at once.',
  equation: 'fire = longest lead − (latency + travel + rest)',
  takes: {
    latency_s: { title: 'Latency', note: 'from signal to movement' },
    travel_s: { title: 'Travel', note: 'from movement to arrival' },
    rest_s: { title: 'Rest', default: 0, note: 'where it must be still before the moment' },
    longestLead_s: { title: 'Longest lead', note: 'latency, travel and rest of the one that takes longest' },
  },
  gives: { fireOffset_s: 'Fire it at, after the first signal' },
  holds:
    'Latencies and travels as they are on average. Measure both with the camera: it has the best clock on the set.',
  sources: ['cue-practice'],
  cautions: ['moving-rigs', 'pressure-and-projectiles'],
  words: ['cue', 'offset', 'delay', 'controller', 'latency', 'lead', 'fire', 'rig', 'meeting'],
  example: { latency_s: 0.015, travel_s: 0.354675, longestLead_s: 0.459657 },
});
