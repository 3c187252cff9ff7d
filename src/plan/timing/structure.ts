/** What decides which steps a shot's timing has: how each cue travels, and what the trigger answers. */
import type { Cue, Shot } from '../../document/schema.ts';
import { isUnread } from '../unread.ts';

/** What works out how long a cue travels; `unread` where what it does cannot be read. */
export type TravelBy = 'still' | 'fall' | 'fall-air' | 'flight' | 'flight-air' | 'swing' | 'pour' | 'move' | 'lights' | 'unread'; // prettier-ignore

export interface CueStructure {
  readonly by: TravelBy;
  /** Its travel was measured, and is not worked out. */
  readonly isMeasured: boolean;
  /** Where it is let go varies. */
  readonly hasPlace: boolean;
  /** How fast it leaves varies. */
  readonly variesInSpeed: boolean;
  /** Its travel was seen to vary. */
  readonly variesInTravel: boolean;
  /** It arrives at another moment than the meeting. */
  readonly isOffset: boolean;
  /** It must rest before that moment. */
  readonly rests: boolean;
  readonly isApart: boolean;
}

export interface TimingStructure {
  /** In the order written. */
  readonly cues: readonly CueStructure[];
  readonly meetingAt: 'fixed' | 'middle';
  /** `of-frame`: within a share of the frame of one another. */
  readonly tolerance: 'fixed' | 'of-frame';
  readonly trigger: 'none' | 'person' | 'device';
  readonly answers: 'fixed' | 'first-signal';
  readonly post: 'fixed' | 'solved';
}

/** Of a shot without cues or trigger. */
export const NO_TIMING: TimingStructure = {
  cues: [],
  meetingAt: 'middle',
  tolerance: 'fixed',
  trigger: 'none',
  answers: 'fixed',
  post: 'solved',
};

/** What acts where it is has no way to go, unless somebody measured one. */
export const travels = ({ by, isMeasured }: CueStructure): boolean => by !== 'still' || isMeasured;

/** Ways of travelling that end with a speed. */
export const hasSpeed = (by: TravelBy): boolean => !['still', 'move', 'lights', 'unread'].includes(by);

/** Whether a key is written, be it that it cannot be read. */
const isWritten = <T extends { readonly unread?: readonly string[] }>(of: T, key: string, read: keyof T): boolean =>
  of[read] !== undefined || isUnread(of, key);

function travelOf(cue: Cue): TravelBy {
  if (isUnread(cue, 'does')) return 'unread';
  const inAir = isWritten(cue, 'diameter', 'diameter_m') || isWritten(cue, 'density', 'density_kg_per_m3');
  switch (cue.does ?? 'acts') {
    case 'acts':
      return 'still';
    case 'falls':
      return inAir ? 'fall-air' : 'fall';
    case 'flies':
      return inAir ? 'flight-air' : 'flight';
    case 'swings':
      return 'swing';
    case 'pours':
      return 'pour';
    case 'moves':
      return 'move';
    case 'lights':
      return 'lights';
  }
}

function structureOfCue(cue: Cue): CueStructure {
  const by = travelOf(cue);
  return {
    by,
    isMeasured: isWritten(cue, 'travel', 'travelTime_s'),
    hasPlace: (cue.placeSpread_m ?? 0) > 0 || isUnread(cue, 'place'),
    variesInSpeed: (by.startsWith('flight') || by === 'pour') && (cue.launchSpeedSpread_m_per_s ?? 0) > 0,
    variesInTravel: (cue.travelTimeSpread_s ?? 0) > 0,
    isOffset: isWritten(cue, 'meets', 'arrival_s'),
    rests: isWritten(cue, 'settle', 'settle_s'),
    isApart: cue.isApart === true,
  };
}

/** The cues of a shot in the order written. */
export const cuesOf = ({ cues }: Shot): readonly (readonly [id: string, cue: Cue])[] => Object.entries(cues);

/** Whether somebody wrote what triggers the camera. */
export function hasTrigger(shot: Shot): boolean {
  return isUnread(shot, 'trigger') || Object.values(shot.trigger).some((value) => value !== undefined);
}

/** The places of the cues that must meet; fewer than two have nothing to meet. */
export function meetingPlaces({ cues }: Pick<TimingStructure, 'cues'>): readonly number[] {
  const places = cues.flatMap(({ isApart }, i) => (isApart ? [] : [i]));
  return places.length < 2 ? [] : places;
}

export function timingStructureOf(shot: Shot): TimingStructure {
  const { meeting, trigger } = shot;
  if (cuesOf(shot).length === 0 && !hasTrigger(shot)) return NO_TIMING;
  const cues = cuesOf(shot).map(([, cue]) => structureOfCue(cue));
  const isMeetingUnread = isUnread(shot, 'meeting');
  const met = meetingPlaces({ cues }).map((i) => cues[i]!);
  const isToleranceFixed = isWritten(meeting, 'tolerance', 'meetingTolerance_s') || isMeetingUnread || isUnread(shot, 'cues'); // prettier-ignore
  const by = trigger.by ?? 'person';
  const hasSignal = by === 'electric' && cues.length > 0;
  return {
    cues,
    meetingAt: isWritten(meeting, 'at', 'meetingAt_s') || isMeetingUnread ? 'fixed' : 'middle',
    tolerance: isToleranceFixed || !met.some((cue) => hasSpeed(cue.by)) ? 'fixed' : 'of-frame',
    trigger: !hasTrigger(shot) ? 'none' : by === 'person' ? 'person' : 'device',
    answers: hasSignal && !isWritten(trigger, 'answers', 'triggerCue_s') ? 'first-signal' : 'fixed',
    post: isWritten(trigger, 'post', 'postTriggerFraction') ? 'fixed' : 'solved',
  };
}
