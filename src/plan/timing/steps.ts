/** The steps of a shot's model that make its timing: when each cue fires, how often all meet, what the trigger keeps. */
import { spreadsMeetFraction, threeMeet } from '../../laws/chance/cuesMeet.ts';
import { arrivalSpread } from '../../laws/chance/delays.ts';
import { pairMeets } from '../../laws/chance/meeting.ts';
import { bestTriggerSetting, triggerCatch } from '../../laws/chance/triggerCatch.ts';
import { pourFront } from '../../laws/fluids/pourFront.ts';
import { dragFallSpeed, dragFallTime, fallSpeed, fallTime } from '../../laws/motion/fall.ts';
import { dragFlight, flight } from '../../laws/motion/flight.ts';
import { railMove } from '../../laws/motion/move.ts';
import { swing, swingOf } from '../../laws/motion/swing.ts';
import type { Builder } from '../model.ts';
import { hasSpeed, meetingPlaces, travels, type CueStructure, type TimingStructure } from './structure.ts';

/** The name of a number of the cue at a place. */
export const cueName = (place: number, name: string): string => `cue${place}${name}`;

/** Adds all steps of the timing; nothing where neither a cue nor a trigger is written. */
export function addTiming(m: Builder, timing: TimingStructure): void {
  if (timing.cues.length > 0) addMoment(m, timing);
  timing.cues.forEach((cue, i) => addCue(m, i, cue));
  if (timing.cues.length > 0) addFirstSignal(m, timing);
  if (meetingPlaces(timing).length > 0) addMeeting(m, timing);
  if (timing.trigger !== 'none') addTrigger(m, timing);
}

function addMoment(m: Builder, { meetingAt }: TimingStructure): void {
  if (meetingAt === 'middle')
    m.choose('meetAt_s', { title: 'When they meet', says: 'half way through the action' }, { covered: 'coveredTime_s' }, ({ covered }) => covered! / 2);
} // prettier-ignore

function addCue(m: Builder, place: number, cue: CueStructure): void {
  const at = (name: string): string => cueName(place, name);
  addTravel(m, at, cue);
  addSpread(m, at, cue);
  m.choose(
    at('Fire_s'),
    { title: 'When its signal is given', says: 'back from when it must be there: less its rest, its travel and its latency' },
    {
      meet: 'meetAt_s',
      ...(cue.isOffset ? { after: at('Meets_s') } : {}),
      ...(cue.rests ? { rest: at('Settle_s') } : {}),
      ...(travels(cue) ? { travel: at('Travel_s') } : {}),
      latency: at('Latency_s'),
    },
    ({ meet, after = 0, rest = 0, travel = 0, latency }) => meet! + after - rest - travel - latency!,
  );
} // prettier-ignore

type Named = (name: string) => string;

const AIR = (at: Named) => ({ diameter_m: at('Diameter_m'), density_kg_per_m3: at('Density_kg_per_m3') });
const THROW = (at: Named) => ({ distance_m: at('Distance_m'), speed_m_per_s: at('LaunchSpeed_m_per_s'), angle_deg: at('Angle_deg') }); // prettier-ignore

/** How long it travels, unless that was measured, and how fast it arrives. */
function addTravel(m: Builder, at: Named, { by, isMeasured }: CueStructure): void {
  const travel = at('Travel_s');
  const speed = at('ArrivalSpeed_m_per_s');
  const height = { fallHeight_m: at('Height_m') };
  switch (by) {
    case 'fall':
      if (!isMeasured) m.law(travel, fallTime, height);
      m.law(speed, fallSpeed, height);
      break;
    case 'fall-air':
      if (!isMeasured) m.law(travel, dragFallTime, { ...height, ...AIR(at) });
      m.law(speed, dragFallSpeed, { ...height, ...AIR(at) });
      break;
    case 'flight':
      if (!isMeasured) m.lawGiving(travel, flight, 'flightTime_s', THROW(at));
      m.lawGiving(speed, flight, 'arrivalSpeed_m_per_s', THROW(at));
      break;
    case 'flight-air':
      if (!isMeasured) m.lawGiving(travel, dragFlight, 'flightTime_s', { ...THROW(at), ...AIR(at) });
      m.lawGiving(speed, dragFlight, 'arrivalSpeed_m_per_s', { ...THROW(at), ...AIR(at) });
      break;
    case 'swing': {
      const arm = { arm_m: at('Arm_m'), release_deg: at('Release_deg') };
      if (!isMeasured) m.lawGiving(travel, swing, 'swingTime_s', arm);
      m.lawGiving(speed, swing, 'lowestSpeed_m_per_s', arm);
      break;
    }
    case 'pour': {
      const pour = { ...height, speed_m_per_s: at('LaunchSpeed_m_per_s') };
      if (!isMeasured) m.lawGiving(travel, pourFront, 'pourTime_s', pour);
      m.lawGiving(speed, pourFront, 'arrivalSpeed_m_per_s', pour);
      break;
    }
    case 'move': {
      const move = { distance_m: at('Distance_m'), topSpeed_m_per_s: at('LaunchSpeed_m_per_s'), acceleration_m_per_s2: at('Acceleration_m_per_s2') }; // prettier-ignore
      if (!isMeasured) m.lawGiving(travel, railMove, 'moveTime_s', move);
      m.lawGiving(at('Peak_m_per_s'), railMove, 'peakSpeed_m_per_s', move);
      break;
    }
    case 'still':
    case 'lights':
    case 'unread':
  }
}

/** How far its arrival varies: by its signal, by where and how fast it is let go, and by what was seen of its travel. */
function addSpread(m: Builder, at: Named, { by, hasPlace, variesInSpeed, variesInTravel }: CueStructure): void {
  const spread = at('Spread_s');
  const seen = variesInTravel ? { seen: at('TravelSpread_s') } : {};
  let other = variesInTravel ? at('TravelSpread_s') : undefined;
  if (variesInSpeed) {
    const over = at(by === 'pour' ? 'ArrivalSpeed_m_per_s' : 'LaunchSpeed_m_per_s');
    m.choose(
      at('OtherSpread_s'),
      { title: 'Spread of its travel', says: 'as its speed varies, so does its time, and what was seen of it beside' },
      { ...seen, speed: at('LaunchSpread_m_per_s'), over, travel: at('Travel_s') },
      (of) => Math.hypot(of['seen'] ?? 0, (of['speed']! * of['travel']!) / of['over']!),
    );
    other = at('OtherSpread_s');
  }
  if (by === 'swing' && hasPlace) {
    m.choose(
      at('OtherSpread_s'),
      { title: 'Spread of its travel', says: 'by how much longer a release higher on its arc takes' },
      { ...seen, place: at('Place_m'), arm: at('Arm_m'), release: at('Release_deg') },
      (of) => Math.hypot(of['seen'] ?? 0, swingSpread_s(of['place']!, of['arm']!, of['release']!)),
    );
    other = at('OtherSpread_s');
  }
  if (hasPlace && hasSpeed(by) && by !== 'swing')
    m.law(spread, arrivalSpread, {
      latencySpread_s: at('Jitter_s'),
      heightSpread_m: at('Place_m'),
      speed_m_per_s: at('ArrivalSpeed_m_per_s'),
      ...(other === undefined ? {} : { otherSpread_s: other }),
    });
  else
    m.choose(
      spread,
      { title: 'Spread of the arrival, one standard deviation', says: 'its signal and its travel vary each on its own' },
      { jitter: at('Jitter_s'), ...(other === undefined ? {} : { travel: other }) },
      ({ jitter, travel = 0 }) => Math.hypot(jitter!, travel),
    );
} // prettier-ignore

/** What a release that much farther along the arc adds to the time to the lowest point. */
function swingSpread_s(place_m: number, arm_m: number, release_deg: number): number {
  const step_deg = Math.min(0.01, release_deg / 4, (179 - release_deg) / 4 || 0.01);
  const time_s = (deg: number) => swingOf({ arm_m, release_deg: deg }).swingTime_s;
  const slope_s_per_deg = (time_s(release_deg + step_deg) - time_s(release_deg - step_deg)) / (2 * step_deg);
  return Math.abs(slope_s_per_deg) * ((place_m / arm_m) * (180 / Math.PI));
}

function addFirstSignal(m: Builder, { cues }: TimingStructure): void {
  const fires = Object.fromEntries(cues.map((_, i) => [`fire${i}`, cueName(i, 'Fire_s')]));
  m.choose('firstSignal_s', { title: 'The first signal', says: 'the earliest of all' }, fires, (of) =>
    Math.min(...Object.keys(fires).map((name) => of[name]!)),
  );
}

function addMeeting(m: Builder, timing: TimingStructure): void {
  const { cues, tolerance } = timing;
  const places = meetingPlaces(timing);
  if (tolerance === 'of-frame') {
    const moving = places.filter((i) => hasSpeed(cues[i]!.by));
    const speeds = Object.fromEntries(moving.map((i) => [`speed${i}`, cueName(i, 'ArrivalSpeed_m_per_s')]));
    m.choose(
      'meetTolerance_s',
      { title: 'Time within which all must arrive', says: 'what the fastest of them takes across that share of the frame' },
      { share: 'meetShareFraction', frame: 'frameWidth_m', ...speeds },
      ({ share, frame, ...of }) => (share! * frame!) / Math.max(...Object.keys(speeds).map((name) => of[name]!)),
    );
  }
  const [first, second, third, ...more] = places.map((i) => cueName(i, 'Spread_s'));
  const title = 'Takes in which all meet';
  const two = { firstSpread_s: first!, secondSpread_s: second!, window_s: 'meetTolerance_s' };
  if (third === undefined) m.law('meetingFraction', pairMeets, two, title);
  else if (more.length === 0) m.law('meetingFraction', threeMeet, { firstSpread_s: first!, secondSpread_s: second!, thirdSpread_s: third, window_s: 'meetTolerance_s' }, title);
  else {
    const inputs = Object.fromEntries([first!, second!, third, ...more].map((name, i) => [`spread${i}`, name]));
    m.choose(
      'meetingFraction',
      { title, as: 'fraction', says: 'the sum over which of them comes first, as law three-meet has it for three' },
      { window: 'meetTolerance_s', ...inputs },
      ({ window, ...of }) => spreadsMeetFraction(Object.keys(inputs).map((name) => of[name]!), window!),
    );
  }
  m.given('meetWantedFraction');
} // prettier-ignore

/** As many memories as a shot may be tried with. */
const MOST_KEPT = 64;

/** The law as it is, its answers kept: lenses and stops are tried by the hundred, and none of them changes the memory. */
const BEST_SETTING = {
  ...bestTriggerSetting,
  compute: (() => {
    const kept = new Map<string, ReturnType<typeof bestTriggerSetting.compute>>();
    return (given: Parameters<typeof bestTriggerSetting.compute>[0]) => {
      const key = Object.values(given).join();
      let best = kept.get(key);
      if (!best) {
        if (kept.size >= MOST_KEPT) kept.clear();
        kept.set(key, (best = bestTriggerSetting.compute(given)));
      }
      return best;
    };
  })(),
};

/** Of a person's spread: the part that is even about the middle, and the late tail, in the shape of reaction.ts. */
export const EVEN_PART = 1 / Math.sqrt(5);
export const TAIL_PART = 2 / Math.sqrt(5);

function addTrigger(m: Builder, { trigger, answers, post }: TimingStructure): void {
  if (trigger === 'person') {
    const of = { mean: 'triggerMean_s', spread: 'triggerSpread_s' };
    const says = 'of how far a person’s delay varies, half as much lies evenly about its middle as in its late tail';
    m.choose('triggerMiddle_s', { title: 'Middle of the delay', says }, of, ({ mean, spread }) => mean! - TAIL_PART * spread!);
    m.choose('triggerEven_s', { title: 'Spread about the middle', says }, of, ({ spread }) => EVEN_PART * spread!);
    m.choose('triggerTail_s', { title: 'Mean of its late tail', says }, of, ({ spread }) => TAIL_PART * spread!);
  }
  if (answers === 'first-signal')
    m.choose('triggerAnswers_s', { title: 'When what it answers happens', says: 'the first signal to the rigs triggers too' }, { first: 'firstSignal_s' }, ({ first }) => first!);
  const isPerson = trigger === 'person';
  const keeping = {
    recordTime_s: 'recordTime_s',
    action_s: 'coveredTime_s',
    headHandle_s: 'handles_s',
    tailHandle_s: 'handles_s',
    cueAt_s: 'triggerAnswers_s',
    normalMean_s: isPerson ? 'triggerMiddle_s' : 'triggerMean_s',
    normalSpread_s: isPerson ? 'triggerEven_s' : 'triggerSpread_s',
    tailMean_s: 'triggerTail_s',
  };
  if (post === 'solved') m.lawGiving('postTriggerFraction', BEST_SETTING, 'postTriggerFraction', keeping);
  m.lawGiving('caughtFraction', triggerCatch, 'caughtFraction', { ...keeping, postTriggerFraction: 'postTriggerFraction' });
  m.choose(
    'triggerFraction',
    { title: 'Takes in which the memory holds the whole action', as: 'fraction', says: 'those it catches, of the takes in which it fires when it should' },
    { caught: 'caughtFraction', early: 'falseFireFraction', never: 'noFireFraction' },
    ({ caught, early, never }) => caught! * (1 - early!) * (1 - never!),
  );
  m.given('catchWantedFraction');
} // prettier-ignore
