/** Each move in a small shoot where it has something to offer, and what it must not do there. */
import { describe, expect, test } from 'vitest';
import { MEETING, PERSON, RIGS } from '../../../test/cues.ts';
import { changed, readSound, SMALL } from '../../../test/shoots.ts';
import { applyPatch, writtenValueAt } from '../../document/patch.ts';
import type { Written } from '../../document/written.ts';
import type { LimitId, Way } from '../types.ts';
import { waysFor } from './ways.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

function ways(changes: Changes, limit: LimitId): readonly Way[] {
  const written = changed(SMALL, changes);
  return waysFor(readSound(written), written, 'one', limit);
}

const DARK: Changes = { '/lighting/key/illuminance': '2 klx' };
const BRIGHT: Changes = {
  '/lighting/key/illuminance': '400 klx',
  '/shots/one/stop': 'T4',
  '/shots/one/highlights': '2.5 stops',
};
const FASTER = { title: 'Faster', pixels: '1280 x 720', rate: '9000 fps' };
const macro = (SMALL['kit'] as { lenses: { macro: Written } }).lenses.macro as Readonly<Record<string, Written>>;
const LONG = { ...macro, title: 'Long', focalLength: '180 mm', closeFocus: '500 mm', frontToSensor: '300 mm' };
const QUICK = { ...((SMALL['kit'] as { cameras: { body: Readonly<Record<string, Written>> } }).cameras.body), title: 'Quick', modes: { whole: { title: 'Quick whole', pixels: '1920 x 1080', rate: '20000 fps' } }, availability: 'hire' }; // prettier-ignore

/** Dark chocolate under one hot lamp two metres off, with diodes in the kit that give four fifths of its light. */
const MELTING: Changes = {
  '/kit/lamps': {
    fresnel: { title: 'Fresnel', kind: 'tungsten', illuminance: '50 klx', distance: '2 m', beam: '20°', field: '35°', face: { width: '250 mm' } },
    diodes: { title: 'Diodes', kind: 'led', illuminance: '40 klx', distance: '2 m', beam: '20°', field: '35°', face: { width: '250 mm' } },
  },
  '/lighting/key': { title: 'Key', lamps: { rim: { title: 'Rim', lamp: 'fresnel', at: '0 m, -2 m, 0 m' } } },
  '/kit/products': { curl: { title: 'Curl', warms: 'dark-chocolate', start: '18 °C', thickness: '2 mm' } },
  '/shoot/air': '18 °C',
  '/shots/one/hero': { product: 'curl', lightOn: '1 min' },
}; // prettier-ignore

/** A person at a button whose memory holds too little. */
const SLIPPING: Changes = { ...PERSON, '/kit/cameras/body/memory': '1.3 GB' };

/** One of three rigs varies too much. */
const SHAKY: Changes = {
  ...MEETING,
  '/kit/rigs/latch': { title: 'Latch', kind: 'latch', latency: '30 ms', jitter: '3 ms' },
};

interface Case {
  readonly move: string;
  readonly limit: LimitId;
  readonly changes: Changes;
  readonly title: RegExp;
  readonly says?: RegExp;
  readonly touchesFixed?: boolean;
}

const CASES: readonly Case[] = [
  { move: 'accept-blur', limit: 'light', changes: DARK, title: /^Accept [\d.]+ px of blur$/ },
  { move: 'accept-blur', limit: 'blur', changes: { '/shots/one/shutter': '1/500 s' }, title: /^Accept 20 px of blur$/ },
  { move: 'open-shutter', limit: 'light', changes: { '/lighting/key/illuminance': '600 lx', '/shots/one/blur': undefined }, title: /^Open the shutter to 354°$/, says: /trails longer/ },
  { move: 'open-shutter', limit: 'light', changes: { ...DARK, '/shots/one/shutter': '20°' }, title: /^Open the shutter to \d+°$/, says: /was fixed/, touchesFixed: true },
  { move: 'accept-less-depth', limit: 'light', changes: { '/lighting/key/illuminance': '9 klx', '/shots/one/depth': '60 mm', '/shots/one/signalToNoise': '34 dB' }, title: /^Ask for [\d.]+ mm of depth$/ },
  { move: 'accept-less-depth', limit: 'depth', changes: { '/shots/one/stop': 'T2.8', '/shots/one/depth': '20 mm' }, title: /^Ask for 12 mm of depth$/ },
  { move: 'more-light', limit: 'light', changes: DARK, title: /^Bring Key to [\d.]+ klx$/, says: /power and heat/ },
  { move: 'accept-noise', limit: 'light', changes: { ...DARK, '/shots/one/signalToNoise': '34 dB' }, title: /^Accept [\d.]+ dB of signal over noise$/ },
  { move: 'fit-filter', limit: 'light', changes: { ...DARK, '/lighting/key/illuminance': '1.6 klx' }, title: /^Take off Glass$/, says: /splash/ },
  { move: 'fit-filter', limit: 'highlights', changes: BRIGHT, title: /^Fit ND 0.3$/ },
  { move: 'accept-fewer-highlights', limit: 'highlights', changes: { '/shots/one/index': 400, '/shots/one/highlights': '3 stops', '/shots/one/stop': 'T4' }, title: /^Ask for [\d.]+ stops above middle grey$/ },
  { move: 'shorter-on-screen', limit: 'frame-rate', changes: { '/shots/one/screenTime': '60 s' }, title: /^Let it last 40 s on screen$/ },
  { move: 'shorter-on-screen', limit: 'frame-rate', changes: { '/shots/one/speed/constant': '1/300' }, title: /^Play it at 1\/200 of real time$/ },
  { move: 'shorter-on-screen', limit: 'frame-rate', changes: { '/shots/one/speed/knots': [{ at: '0 s', speed: 1 }, { at: '9 s', speed: '1/300' }] }, title: /^Slow down to 1\/\d+ and no further$/ },
  { move: 'shorter-on-screen', limit: 'screen-time', changes: { '/shots/one/rate': 500 }, title: /^Let it last 4 s on screen$/ },
  { move: 'other-mode', limit: 'frame-rate', changes: { '/shots/one/rate': 8000, '/kit/cameras/body/modes/faster': FASTER, '/shots/one/camera': 'body', '/shots/one/mode': 'whole' }, title: /^Record Faster$/, touchesFixed: true },
  { move: 'other-lens', limit: 'clearance', changes: { '/shots/one/clearance': '1.2 m', '/kit/lenses/long': LONG, '/shots/one/lens': 'macro' }, title: /^Use Long$/, touchesFixed: true },
  { move: 'other-lens', limit: 'clearance', changes: { '/shots/one/clearance': '1.2 m', '/kit/lenses/long': { ...LONG, availability: 'hire' } }, title: /^Hire Long$/ },
  { move: 'wider-frame', limit: 'depth', changes: { '/shots/one/depth': '900 mm' }, title: /^Frame [\d.]+ mm wide$/ },
  { move: 'wider-frame', limit: 'in-the-picture', changes: { '/shots/one/action/width': '260 mm' }, title: /^Frame 260 mm wide$/ },
  { move: 'less-reframe', limit: 'picture-size', changes: { '/shots/one/reframe': '20 %' }, title: /^Hold nothing back for repositioning$/ },
  { move: 'leave-out', limit: 'picture-size', changes: { '/deliverables/big': { title: 'Big', rate: 25, pixels: '3840 x 2160' } }, title: /^Leave Big out of this shot$/ },
  { move: 'set-fixed', limit: 'stop-range', changes: { '/shots/one/stop': 'T2' }, title: /^Set T2.8$/, touchesFixed: true },
  { move: 'set-fixed', limit: 'stop-range', changes: { '/shots/one/stop': 'T45' }, title: /^Set T32$/, touchesFixed: true },
  { move: 'set-fixed', limit: 'index-range', changes: { '/shots/one/index': 25600 }, title: /^Rate it at EI 12800$/, touchesFixed: true },
  { move: 'set-fixed', limit: 'shutter', changes: { '/shots/one/shutter': '1/4000000 s' }, title: /^Set the shutter to 1.1000000 s$/, touchesFixed: true },
  { move: 'fit-tube', limit: 'focus', changes: { '/kit/lenses/macro/closeFocus': '600 mm', '/shots/one/frameWidth': '60 mm', '/shots/one/action/width': '20 mm', '/shots/one/action/height': '20 mm' }, title: /^Fit Tube$/ },
  { move: 'fit-tube', limit: 'focus', changes: { '/shots/one/attachments': ['tube-25'] }, title: /^Take off Tube$/ },
  { move: 'shorter-handles', limit: 'buffer', changes: { '/shots/one/handles': '12 s' }, title: /^Keep handles of 10 s$/, says: /trigger/ },
  { move: 'ask-less', limit: 'diffraction', changes: { '/shots/one/stop': 'T32', '/shots/one/diffraction': '1 px' }, title: /^Accept a diffraction disc of [\d.]+ px$/ },
  { move: 'ask-less', limit: 'clearance', changes: { '/shots/one/clearance': '1.2 m' }, title: /^Make do with 1 m of clearance$/ },
  { move: 'ask-less', limit: 'hero-life', changes: { '/shots/one/hero/life': '1 min' }, title: /^Light it for 59 s a take$/, says: /stand-in/ },
  { move: 'dim-lamps', limit: 'hero-life', changes: MELTING, title: /^Dim Rim to 44 %$/, says: /warmer in colour/ },
  { move: 'dim-lamps', limit: 'hero-life', changes: { ...MELTING, '/lighting/key/illuminance': '40 klx', '/lighting/key/reading': 'metered' }, title: /^Dim Rim to 55 %$/ },
  { move: 'move-back', limit: 'hero-life', changes: MELTING, title: /^Take Rim back to 3 m$/, says: /less light/ },
  { move: 'swap-lamps', limit: 'hero-life', changes: MELTING, title: /^Use Diodes in place of Rim$/, says: /tenth of the heat.*0\.3 stops less/ },
  { move: 'swap-lamps', limit: 'hero-life', changes: { ...MELTING, '/kit/lamps/diodes/availability': 'hire' }, title: /^Hire Diodes in place of Rim$/ },
  { move: 'stand-in', limit: 'hero-life', changes: { ...MELTING, '/shots/one/times/roll': '12 s' }, title: /^Light the hero for the roll alone, 12 s$/, says: /burn in/ },
  { move: 'ask-less', limit: 'hero-life', changes: MELTING, title: /^Light it for 2\d s a take$/ },
  { move: 'dim-lamps', limit: 'eye-distance', changes: MELTING, title: /^Dim Rim to 3\d %$/ },
  { move: 'move-back', limit: 'eye-distance', changes: MELTING, title: /^Take Rim back to 3\.\d m$/ },
  { move: 'swap-lamps', limit: 'eye-distance', changes: MELTING, title: /^Use Diodes in place of Rim$/ },
  { move: 'set-fixed', limit: 'light', changes: { '/lighting/key/illuminance': '15 klx', '/shots/one/stop': 'T16' }, title: /^Set T/, touchesFixed: true },
  { move: 'set-fixed', limit: 'blur', changes: { '/shots/one/shutter': '1/500 s' }, title: /^Set the shutter to 1\/3200 s$/, touchesFixed: true },
  { move: 'set-fixed', limit: 'noise', changes: { '/shots/one/index': 12800, '/shots/one/signalToNoise': '30 dB' }, title: /^Rate it at EI \d+$/, touchesFixed: true },
  { move: 'let-it-be-solved', limit: 'light', changes: { ...DARK, '/shots/one/stop': 'T22' }, title: /^Let the stop be worked out$/, touchesFixed: true },
  { move: 'best-trigger', limit: 'trigger-catch', changes: { ...PERSON, '/shots/one/trigger/post': '50 %' }, title: /^Keep 20 % of the memory after the trigger$/, says: /fixed, 50 %/, touchesFixed: true },
  { move: 'electric-trigger', limit: 'trigger-catch', changes: { ...SLIPPING, ...MEETING }, title: /^Trigger by a signal of the controller as the action starts$/, says: /lead from the controller/ },
  { move: 'electric-trigger', limit: 'trigger-catch', changes: { ...SLIPPING, ...RIGS, '/shots/one/cues': { jet: { rig: 'nozzle', does: 'acts' } }, '/shots/one/meeting/at': '0 s' }, title: /^Trigger by the first signal to the rigs$/ },
  { move: 'shorter-handles', limit: 'trigger-catch', changes: SLIPPING, title: /^Keep handles of \d+ ms$/, says: /cut/ },
  { move: 'shorter-on-screen', limit: 'trigger-catch', changes: SLIPPING, title: /^Let it last [\d.]+ s on screen$/ },
  { move: 'other-mode', limit: 'trigger-catch', changes: { ...SLIPPING, '/kit/cameras/body/modes/eight': { title: 'Eight bits', pixels: '1920 x 1080', rate: '5000 fps', bits: 8 }, '/shots/one/camera': 'body', '/shots/one/mode': 'whole' }, title: /^Record Eight bits$/, touchesFixed: true },
  { move: 'fewer-partitions', limit: 'trigger-catch', changes: { ...PERSON, '/kit/cameras/body/memory': '6.4 GB', '/kit/cameras/body/partitions': 5 }, title: /^Divide the memory of Body by 4$/, says: /4 rolls before one must be saved, not 5/ },
  { move: 'fewer-partitions', limit: 'buffer', changes: { '/kit/cameras/body/partitions': 64 }, title: /^Divide the memory of Body by 51$/ },
  { move: 'fewer-good-takes', limit: 'trigger-catch', changes: SLIPPING, title: /^Be content with \d+ % of takes kept whole, and plan 4 takes$/, says: /resets/ },
  { move: 'fewer-good-takes', limit: 'meeting', changes: { ...MEETING, '/shots/one/meeting/chance': '90 %' }, title: /^Be content with 66 % of takes that meet, and plan 5 takes$/ },
  { move: 'more-time-to-meet', limit: 'meeting', changes: { ...MEETING, '/shots/one/meeting/chance': '90 %' }, title: /^Let them meet within 3 ms$/, says: /further apart/ },
  { move: 'steadier-rig', limit: 'meeting', changes: { ...SHAKY, '/kit/rigs/spare': { title: 'Spare valve', kind: 'valve' } }, title: /^Fire Spare valve for Berry$/, says: /100 µs in place of 3 ms, as is usual/ },
  { move: 'steadier-rig', limit: 'meeting', changes: { ...SHAKY, '/kit/rigs/spare': { title: 'Spare latch', kind: 'latch', jitter: '1 ms', availability: 'hire' } }, title: /^Hire and fire Spare latch for Berry$/ },
  { move: 'other-body', limit: 'frame-rate', changes: { '/shots/one/screenTime': '60 s', '/kit/cameras/quick': QUICK }, title: /^Hire Quick$/ },
]; // prettier-ignore

describe('a move', () => {
  test.each(CASES)(
    '$move is a way where $limit is short',
    ({ move, limit, changes, title, says, touchesFixed = false }) => {
      const found = ways(changes, limit);
      const offered = found.filter((way) => way.move === move);
      expect([found.length > 0, offered.map((way) => way.title)]).toEqual([true, expect.arrayContaining([expect.stringMatching(title)])]); // prettier-ignore
      const way = offered.find((of) => title.test(of.title))!;
      expect(way.gain_stops).toBeGreaterThan(0);
      expect(way.touchesFixed).toBe(touchesFixed);
      if (says) expect(way.says).toMatch(says);
    },
  );
});

describe('no move', () => {
  const movesOf = (changes: Changes, limit: LimitId) => ways(changes, limit).map(({ move }) => move);

  test('lowers a clearance that the action itself needs', () => {
    expect(movesOf({ '/shots/one/action/towardsLens': '1.2 m' }, 'clearance')).not.toContain('ask-less');
  });

  test('leaves out the deliverable that frames the shot', () => {
    expect(movesOf({ '/deliverables/film/pixels': '3840 x 2160' }, 'picture-size')).not.toContain('leave-out');
  });

  test('fits what is not here, or what is fitted already', () => {
    expect(movesOf({ ...BRIGHT, '/kit/attachments/nd-1/availability': 'hire' }, 'highlights')).not.toContain('fit-filter');
    expect(movesOf({ ...BRIGHT, '/shots/one/attachments': ['nd-1'] }, 'highlights')).not.toContain('fit-filter');
  });

  test('uses what nobody wants', () => {
    const quick = { ...QUICK, availability: 'unwanted' };
    expect(movesOf({ '/shots/one/screenTime': '60 s', '/kit/cameras/quick': quick }, 'frame-rate')).not.toContain('other-body');
  });

  test('opens the shutter where blur is what shortens it', () => {
    expect(movesOf(DARK, 'light')).not.toContain('open-shutter');
  });
}); // prettier-ignore

describe('more light', () => {
  test('does not pass for read on the set', () => {
    const [way] = ways(DARK, 'light').filter(({ move }) => move === 'more-light');
    const after = applyPatch(changed(SMALL, DARK), way!.patch);
    expect(writtenValueAt(after, '/lighting/key/reading')).toBe('stated');
    expect(writtenValueAt(after, '/lighting/key/illuminance')).not.toMatch(/±/);
  });

  test('says which other shots it lights', () => {
    const two = { ...DARK, '/shots/two': { title: 'Two', lighting: 'key' } };
    expect(ways(two, 'light').find(({ move }) => move === 'more-light')!.says).toMatch(/it also lights Two/);
  });
});

test('a filter that the defaults fit is taken off this shot alone', () => {
  const written = changed(SMALL, { '/lighting/key/illuminance': '1.6 klx', '/shots/one/attachments': undefined, '/defaults/attachments': ['glass'] }); // prettier-ignore
  const way = waysFor(readSound(written), written, 'one', 'light').find(({ move }) => move === 'fit-filter')!;
  expect(way.patch).toEqual([{ op: 'add', path: '/shots/one/attachments', value: [] }]);
  expect(way.gain_stops).toBeGreaterThan(0.3);
});

test('what the defaults fix is said to be fixed for other shots too', () => {
  const written = changed(SMALL, { '/lighting/key/illuminance': '2 klx', '/defaults/stop': 'T22' });
  const way = waysFor(readSound(written), written, 'one', 'light').find(({ move }) => move === 'let-it-be-solved')!;
  expect(way.patch).toEqual([{ op: 'remove', path: '/defaults/stop' }]);
  expect(way.says).toMatch(/every shot/);
});

test('a profile too slow for its camera even in real time is sped up by a number, not by a fraction of nothing', () => {
  const fast = { '/shots/one/speed/knots': [{ at: '0 s', speed: 2 }, { at: '9 s', speed: 0.7 }], '/kit/cameras/body/modes/whole/rate': '20 fps' }; // prettier-ignore
  const [way] = ways(fast, 'frame-rate').filter(({ move }) => move === 'shorter-on-screen');
  expect(way!.title).toBe('Run it no slower than 1.3 × real time');
  expect(way!.closes).toBe(true);
});
