/** What the timing of a shot says that no limit does: what to measure, and what a hand must not do. */
import { sayList } from '../../base/sayList.ts';
import { say } from '../ways/words.ts';
import type { CueTiming, ShotTiming } from './types.ts';

/** Signals nearer than this are one; a signal of its own for the trigger lies further off than the other. */
const ONE_SIGNAL_s = 0.001;
const OWN_SIGNAL_s = 0.02;

export function timingNotes(timing: ShotTiming | undefined): readonly string[] {
  if (!timing) return [];
  return [...timing.impossible.map(({ says }) => says), ...latencyNote(timing), ...dominantNote(timing), ...handsNote(timing), ...signalNote(timing)]; // prettier-ignore
}

/** Signals worked back through a latency that nobody measured. */
function latencyNote({ cues }: ShotTiming): readonly string[] {
  const guessed = cues.filter(({ prefix, assumed }) => assumed.some(({ name }) => name === `${prefix}Latency_s`));
  if (guessed.length === 0) return [];
  const whose = sayList(guessed.map(({ title }) => title));
  return [`The latency behind ${whose} is assumed, so ${guessed.length === 1 ? 'its signal is a first guess' : 'their signals are first guesses'}: film the rig once with its signal in the picture before anything has to meet.`];
} // prettier-ignore

/** Which cue to make steadier first, and to measure first where its jitter is nobody's measurement. */
function dominantNote({ meeting, cues }: ShotTiming): readonly string[] {
  const cue = cues.find(({ id }) => id === meeting?.dominant);
  if (!meeting || !cue || meeting.chanceFraction === undefined) return [];
  const isShort = meeting.chanceFraction < meeting.wantedFraction;
  const isGuessed = cue.assumed.some(({ name }) => name === `${cue.prefix}Jitter_s`);
  if (!isShort && !isGuessed) return [];
  const share = `${Math.round(cue.shareOfSpreadFraction * 100)} %`;
  const steady = meeting.dominantSpreadNeeded_s;
  const enough = !isShort ? '' : steady === undefined ? ' Steadying it alone would not do.' : ` It would do at ${say('time', steady)} in place of ${say('time', cue.spread_s!)}.`;
  const measure = isGuessed ? ' Its jitter is assumed: thirty shots of it with this camera measure it.' : '';
  return [`${cue.title} varies most, with ${share} of what keeps them apart.${enough}${measure}`];
} // prettier-ignore

/** Two hands never meet as one controller does. */
function handsNote({ cues }: ShotTiming): readonly string[] {
  const byHand = cues.filter(({ rigKind, isApart }) => rigKind === 'person' && !isApart);
  const met = cues.filter(({ isApart }) => !isApart);
  if (byHand.length === 0 || met.length < 2) return [];
  return [`${sayList(byHand.map(({ title }: CueTiming) => title))} ${byHand.length === 1 ? 'is' : 'are'} let go by hand: let a person fire one controller, and the controller fire all that must meet.`]; // prettier-ignore
}

/** A signal that triggers, written to come a little beside the one that is needed. */
function signalNote({ trigger, cues }: ShotTiming): readonly string[] {
  if (trigger?.by !== 'electric') return [];
  const apart = cues.flatMap(({ title, fire_s }) => (fire_s === undefined ? [] : [{ title, apart_s: trigger.answers_s - fire_s }]));
  const [nearest] = apart.sort((a, b) => Math.abs(a.apart_s) - Math.abs(b.apart_s));
  if (!nearest || Math.abs(nearest.apart_s) <= ONE_SIGNAL_s || Math.abs(nearest.apart_s) > OWN_SIGNAL_s) return [];
  const side = nearest.apart_s > 0 ? 'after' : 'before';
  return [`The trigger is written to answer a signal ${say('time', Math.abs(nearest.apart_s))} ${side} that of ${nearest.title}: leave answers out, or check the cues.`];
} // prettier-ignore
