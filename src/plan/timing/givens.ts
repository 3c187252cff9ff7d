/** What a shot's timing is given: latencies, travels, spreads, the meeting and the trigger, each with the key it stands under. */
import type { Cue, Rig, Shoot, Shot } from '../../document/schema.ts';
import { NINETIETH_SPREADS } from '../../laws/chance/normal.ts';
import { put, type Asked, type Effective, type GivenEntry, type Givens } from '../givens.ts';
import { isUnread } from '../unread.ts';
import { cueName } from './steps.ts';
import { cuesOf, meetingPlaces, timingStructureOf, type TravelBy } from './structure.ts';
import { measuredJitterRatio, MEETING_SHARE, STATED_JITTER_RATIO, usualRig, usualTrigger, WANTED } from './usual.ts';

/** Everything the timing is given beyond what the shot itself gives; nothing where neither a cue nor a trigger is written. */
export function timingGivens(shoot: Shoot, { shot, at }: Effective): Givens {
  const givens: Givens = new Map();
  const timing = timingStructureOf(shot);
  cuesOf(shot).forEach(([id, cue], place) => {
    const path = `${at('cues')}/cues/${id}`;
    addCue(givens, { shoot, cue, path, place, title: cue.title ?? id, by: timing.cues[place]!.by });
  });
  if (timing.cues.length > 0) addMoment(givens, shot, at('meeting'));
  if (meetingPlaces(timing).length > 0) addMeeting(givens, shot, { meeting: at('meeting'), cues: at('cues') });
  if (timing.trigger !== 'none') addTrigger(givens, shot, { trigger: at('trigger'), catch: at('catchFraction') });
  return givens;
}

interface OneCue {
  readonly shoot: Shoot;
  readonly cue: Cue;
  readonly path: string;
  readonly place: number;
  readonly title: string;
  readonly by: TravelBy;
}

/** A number that follows from what is written, and is nobody's guess. */
const settled = (title: string, value: number, path: string): GivenEntry => ({ title, value, path, spread: 0 });

function addCue(givens: Givens, { shoot, cue, path, place, title, by }: OneCue): void {
  const name = (of: string) => cueName(place, of);
  const from = (of: string, words: string, key: string, value: number | undefined, otherwise?: Asked['otherwise']) =>
    put(givens, cue, path, { name: name(of), title: `${words}: ${title}`, key, value, ...(otherwise ? { otherwise } : {}) });
  addRig(givens, { shoot, cue, path, title }, name);
  from('Height_m', 'How far it falls', 'height', cue.fallHeight_m);
  from('Distance_m', 'How far it goes', 'distance', cue.travel_m);
  const isPour = by === 'pour';
  from('LaunchSpeed_m_per_s', isPour ? 'Speed at the mouth' : 'Speed', 'speed', cue.launchSpeed_m_per_s, isPour ? { value: 0, why: 'it starts from rest' } : undefined);
  givens.set(name('LaunchSpread_m_per_s'), settled(`Spread of its speed: ${title}`, (cue.launchSpeedSpread_m_per_s ?? 0) / NINETIETH_SPREADS, `${path}/speed`));
  from('Acceleration_m_per_s2', 'Acceleration', 'acceleration', cue.acceleration_m_per_s2);
  from('Angle_deg', 'Angle above level', 'angle', cue.launchAngle_deg, { value: 0, why: 'it leaves level' });
  from('Arm_m', 'Arm', 'arm', cue.arm_m);
  from('Release_deg', 'Angle of release', 'swing', cue.release_deg);
  from('Diameter_m', 'Diameter', 'diameter', cue.diameter_m);
  from('Density_kg_per_m3', 'Density', 'density', cue.density_kg_per_m3);
  from('Place_m', 'Spread of its place of release', 'place', cue.placeSpread_m);
  from('Meets_s', 'When it must arrive, after the meeting', 'meets', cue.arrival_s);
  from('Settle_s', 'Rest before that moment', 'settle', cue.settle_s);
  if (by === 'unread') givens.set(name('Travel_s'), { title: `What the rig sets going: ${title}`, value: NaN, path: `${path}/does`, spread: 0, isUnread: true });
  else from('Travel_s', by === 'lights' ? 'How long the lamps take to come up' : 'Travel', 'travel', cue.travelTime_s);
  givens.set(name('TravelSpread_s'), settled(`Spread of its travel as measured: ${title}`, (cue.travelTimeSpread_s ?? 0) / NINETIETH_SPREADS, `${path}/travel`));
} // prettier-ignore

/** Latency and jitter: as written of the rig, from how its latency varies, or as usual for its kind. */
function addRig(givens: Givens, { shoot, cue, path, title }: Pick<OneCue, 'shoot' | 'cue' | 'path' | 'title'>, name: (of: string) => string): void {
  const rig: Rig | undefined = cue.rig === undefined ? undefined : shoot.kit.rigs[cue.rig];
  if (!rig) {
    for (const of of ['Latency_s', 'Jitter_s']) put(givens, cue, path, { name: name(of), title: `The rig of ${title}`, key: 'rig', value: undefined });
    return;
  }
  const at = `/kit/rigs/${cue.rig!}`;
  const words = rig.title ?? cue.rig!;
  const usual = isUnread(rig, 'kind') ? undefined : usualRig(rig.kind);
  const latency: Asked = { name: name('Latency_s'), title: `Latency: ${words}`, key: 'latency', value: rig.latency_s, spread: rig.latencySpread_s, usual: { ratio: 0.1 } };
  put(givens, rig, at, usual ? { ...latency, otherwise: usual.latency_s } : latency);
  const varies_s = rig.latencySpread_s === undefined ? 0 : rig.latencySpread_s / NINETIETH_SPREADS;
  const seen = varies_s > 0 ? { value: varies_s, spread: varies_s * STATED_JITTER_RATIO, why: `from the ± of the latency of ${words}` } : undefined;
  const otherwise = seen ?? usual?.jitter_s;
  const jitter: Asked = { name: name('Jitter_s'), title: `Jitter, one standard deviation: ${words}`, key: 'jitter', value: rig.jitter_s, usual: { ratio: rig.isMeasured === true ? measuredJitterRatio(rig.firingCount) : STATED_JITTER_RATIO } };
  put(givens, rig, at, otherwise ? { ...jitter, otherwise } : jitter);
} // prettier-ignore

/** A record that cannot be read lacks every key of it. */
const holderOf = <T extends object>(shot: Shot, record: string, of: T, keys: readonly string[]): T & { readonly unread?: readonly string[] } =>
  isUnread(shot, record) && Object.values(of).every((value) => value === undefined) ? { ...of, unread: keys } : of; // prettier-ignore

function addMoment(givens: Givens, shot: Shot, at: string): void {
  const meeting = holderOf(shot, 'meeting', shot.meeting, ['at']);
  if (meeting.meetingAt_s === undefined && !isUnread(meeting, 'at')) return;
  put(givens, meeting, `${at}/meeting`, { name: 'meetAt_s', title: 'When they meet', key: 'at', value: meeting.meetingAt_s });
} // prettier-ignore

function addMeeting(givens: Givens, shot: Shot, at: { readonly meeting: string; readonly cues: string }): void {
  const path = `${at.meeting}/meeting`;
  const meeting = holderOf(shot, 'meeting', shot.meeting, ['tolerance', 'chance']);
  const title = 'Time within which all must arrive';
  // A cue that cannot be read may be one that must meet: nobody knows how many there are.
  if (isUnread(shot, 'cues')) givens.set('meetTolerance_s', { title: 'Every cue', value: NaN, path: `${at.cues}/cues`, spread: 0, isUnread: true });
  else if (timingStructureOf(shot).tolerance === 'fixed') put(givens, meeting, path, { name: 'meetTolerance_s', title, key: 'tolerance', value: meeting.meetingTolerance_s });
  else givens.set('meetShareFraction', { title: 'Share of the frame within which they meet', value: MEETING_SHARE, path: `${path}/tolerance`, spread: 0, assumed: 'a twentieth of the frame width; common practice, no source' });
  put(givens, meeting, path, { name: 'meetWantedFraction', title: 'Takes in which all should meet', key: 'chance', value: meeting.meetingChanceFraction, otherwise: { value: WANTED.meeting, why: 'four takes in five; common practice, no source' } });
} // prettier-ignore

function addTrigger(givens: Givens, shot: Shot, at: { readonly trigger: string; readonly catch: string }): void {
  const path = `${at.trigger}/trigger`;
  const trigger = holderOf(shot, 'trigger', shot.trigger, ['by', 'answers', 'latency', 'jitter', 'post', 'early', 'never']);
  const from = (asked: Asked) => put(givens, trigger, path, asked);
  const timing = timingStructureOf(shot);
  const by = trigger.by ?? 'person';
  // What triggers is not known: nor is how fast it is.
  const known = isUnread(trigger, 'by') ? { ...trigger, unread: ['latency', 'jitter'] } : trigger;
  const usual = usualTrigger(by);
  const own = (asked: Asked) => put(givens, known, path, asked);
  own({ name: 'triggerMean_s', title: 'Delay of the trigger, on average', key: 'latency', value: trigger.triggerLatency_s, spread: trigger.triggerLatencySpread_s, usual: { ratio: 0.1 }, otherwise: usual.latency_s });
  own({ name: 'triggerSpread_s', title: 'Spread of that delay, one standard deviation', key: 'jitter', value: trigger.triggerJitter_s, usual: { ratio: STATED_JITTER_RATIO }, otherwise: usual.jitter_s });
  if (timing.trigger === 'device') givens.set('triggerTail_s', settled('Mean of its late tail', 0, `${path}/by`));
  if (timing.answers === 'fixed') from({ name: 'triggerAnswers_s', title: 'When what it answers happens', key: 'answers', value: trigger.triggerCue_s, otherwise: { value: 0, why: 'it answers the start of the action' } });
  if (timing.post === 'fixed') from({ name: 'postTriggerFraction', title: 'Share of the memory kept after the trigger', key: 'post', value: trigger.postTriggerFraction });
  from({ name: 'falseFireFraction', title: 'How often it fires of its own before the action', key: 'early', value: trigger.falseFireFraction, otherwise: { value: 0, why: 'nobody has counted any' } });
  from({ name: 'noFireFraction', title: 'How often it does not fire', key: 'never', value: trigger.noFireFraction, otherwise: { value: 0, why: 'nobody has counted any' } });
  put(givens, shot, at.catch, { name: 'catchWantedFraction', title: 'Takes in which the memory should hold the action', key: 'catch', value: shot.catchFraction, otherwise: { value: WANTED.catch, why: 'nineteen takes in twenty; common practice, no source' } });
} // prettier-ignore
