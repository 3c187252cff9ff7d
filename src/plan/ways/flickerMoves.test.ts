/** Moves against flicker, each where it has something to offer, and what it must not offer. */
import { describe, expect, test } from 'vitest';
import { changed, marginOf, planned, readSound, SMALL } from '../../../test/shoots.ts';
import { applyPatch } from '../../document/patch.ts';
import type { Written } from '../../document/written.ts';
import { sineWaveform } from '../../laws/flicker/waveform.ts';
import type { Way } from '../types.ts';
import { tellWaveforms } from '../waveforms.ts';
import { waysFor } from './ways.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

const READING = { illuminance: '40 klx', distance: '2 m', beam: '30°', field: '60°' };
const KIT: Readonly<Record<string, Written>> = {
  ripple: { title: 'Ripple', kind: 'led', ...READING, pieces: 3, waveform: { kind: 'led-ripple', depth: '20 %' } },
  pulses: { title: 'Pulses', kind: 'led', ...READING, pieces: 3, waveform: { kind: 'led-pulses', rate: '2 kHz' } },
  unsaid: { title: 'Unsaid', kind: 'led', ...READING },
  two: { title: 'Two', kind: 'tungsten', power: '2 kW', ...READING, pieces: 3 },
};
const TEN: Written = { title: 'Ten', kind: 'tungsten', power: '10 kW', ...READING };
const STEADY: Written = { title: 'Steady', kind: 'led', ...READING, waveform: { kind: 'steady' } };

const AT = '0 m, -2 m, 0 m';

/** The small shoot, lit by lamps that are worked out. */
const lit = (lamps: Written, changes: Changes = {}): Written => changed(SMALL, { '/lighting/key': { title: 'Key', lamps }, '/kit/lamps': KIT, ...changes }); // prettier-ignore

function ways(lamps: Written, changes: Changes = {}): readonly Way[] {
  const written = lit(lamps, changes);
  return waysFor(readSound(written), written, 'one', 'flicker');
}

const slow = (fps: number, shutter?: string): Changes => ({ '/shots/one/rate': fps, '/shots/one/screenTime': undefined, '/shots/one/blur': undefined, ...(shutter === undefined ? {} : { '/shots/one/shutter': shutter }) }); // prettier-ignore

interface Case {
  readonly move: string;
  readonly lamps: Written;
  readonly changes?: Changes;
  readonly title: RegExp;
  readonly says?: RegExp;
  readonly touchesFixed?: boolean;
  readonly closes?: boolean;
}

const CASES: readonly Case[] = [
  { move: 'null-shutter', lamps: { a: { lamp: 'ripple', at: AT } }, changes: { ...slow(80, '1/160 s') }, title: /^Set the shutter to 1\/100 s$/, says: /forgives mains that drift; changes the shutter/, touchesFixed: true },
  { move: 'null-shutter', lamps: { a: { lamp: 'ripple', at: AT } }, changes: slow(80), title: /^Set the shutter to 1\/100 s$/ },
  { move: 'null-shutter', lamps: { a: { lamp: 'pulses', at: AT } }, changes: slow(900, '1/1500 s'), title: /^Set the shutter to 1\/1000 s$/, says: /not quite as written/, touchesFixed: true },
  { move: 'null-shutter', lamps: { a: { lamp: 'pulses', at: AT }, b: { lamp: 'ripple', at: AT } }, changes: slow(37, '1/143 s'), title: /^Set the shutter to 1\/(100|50) s$/, says: /Ripple and Pulses|Pulses and Ripple/, touchesFixed: true },
  { move: 'lock-rate', lamps: { a: { lamp: 'ripple', at: AT } }, changes: slow(80, '1/1000 s'), title: /^Record at 100 fps$/, says: /takes can differ; changes the rate/, touchesFixed: true },
  { move: 'lock-rate', lamps: { a: { lamp: 'ripple', at: AT } }, changes: slow(36, '1/1000 s'), title: /^Record at 33\.33 fps$/, touchesFixed: true },
  { move: 'split-phases', lamps: { a: { lamp: 'two', at: AT }, b: { lamp: 'two', at: AT }, c: { lamp: 'two', at: AT } }, changes: { '/shoot/mains/phases': 3 }, title: /^Feed the lamps from 3 phases$/, says: /licensed electrician/ },
  { move: 'other-lamp', lamps: { a: { lamp: 'ripple', at: AT, title: 'Rim' } }, changes: { '/kit/lamps/steady': STEADY }, title: /^Use Steady for Rim$/, says: /worked out again/ },
  { move: 'other-lamp', lamps: { a: { lamp: 'ripple', at: AT } }, changes: { '/kit/lamps/steady': { ...(STEADY as object), availability: 'hire' } }, title: /^Hire Steady for Ripple$/ },
  { move: 'larger-filament', lamps: { a: { lamp: 'two', at: AT } }, changes: { '/kit/lamps/ten': TEN }, title: /^Use Ten for Two$/, says: /10 kW cools more slowly/ },
  { move: 'full-level', lamps: { a: { lamp: 'pulses', at: AT, level: '50 %' } }, changes: { '/kit/modifiers/scrim': { title: 'Double scrim', loss: '1 stop' }, '/kit/lamps/pulses/waveform': { kind: 'led-pulses', rate: '20 kHz', duty: '95 %' }, ...slow(1100, '1/3000 s') }, title: /^Full level: Pulses with Double scrim$/, says: /while they are dimmed/ },
  { move: 'accept-flicker', lamps: { a: { lamp: 'two', at: AT } }, title: /^Accept a swing of 0\.0\d+ stop$/, says: /nothing that is clipped/ },
]; // prettier-ignore

describe('a move', () => {
  test.each(CASES)('$move is a way to close flicker: $title', ({ move, lamps, changes, title, says, touchesFixed = false, closes = true }) => {
    const offered = ways(lamps, changes).filter((way) => way.move === move);
    expect(offered.map((way) => way.title)).toEqual(expect.arrayContaining([expect.stringMatching(title)]));
    const way = offered.find((of) => title.test(of.title))!;
    expect([way.closes, way.touchesFixed]).toEqual([closes, touchesFixed]);
    expect(way.gain_stops).toBeGreaterThan(0);
    if (says) expect(way.says).toMatch(says);
    const after = marginOf(planned(applyPatch(lit(lamps, changes), way.patch)), 'flicker');
    expect(after.stops!.value).toBeCloseTo(way.stops, 9);
  }); // prettier-ignore
});

describe('no move', () => {
  const movesOf = (lamps: Written, changes: Changes = {}) => ways(lamps, changes).map(({ move }) => move);
  const titlesOf = (lamps: Written, changes: Changes = {}) => ways(lamps, changes).map(({ title }) => title);

  test('calls a rate above the ripple locked, nor a shutter that does not fit the frame', () => {
    const moves = movesOf({ a: { lamp: 'ripple', at: AT } });
    expect(moves).not.toContain('lock-rate');
    expect(moves).not.toContain('null-shutter');
  });

  test('locks a rate to pulses that keep a time of their own', () => {
    expect(movesOf({ a: { lamp: 'pulses', at: AT } }, slow(900, '1/1500 s'))).not.toContain('lock-rate');
  });

  test('knows a shutter for pulses whose rate nobody wrote', () => {
    expect(movesOf({ a: { lamp: 'unsaid', at: AT } }, slow(900, '1/60000 s'))).not.toContain('null-shutter');
  });

  test('splits lamps over phases that are not there, that keep no step, or a lamp alone', () => {
    const three = { a: { lamp: 'two', at: AT }, b: { lamp: 'two', at: AT }, c: { lamp: 'two', at: AT } };
    expect(movesOf(three)).not.toContain('split-phases');
    const phases = { '/shoot/mains/phases': 3 };
    expect(movesOf({ a: { lamp: 'two', at: AT } }, phases)).not.toContain('split-phases');
    expect(movesOf({ a: { lamp: 'pulses', at: AT }, b: { lamp: 'pulses', at: AT } }, phases)).not.toContain('split-phases'); // prettier-ignore
    const split = Object.fromEntries(Object.entries(three).map(([id, lamp], i) => [id, { ...lamp, phase: i + 1 }]));
    expect(movesOf(split, phases)).not.toContain('split-phases');
  });

  test('uses a lamp that nobody wants, that stands already, or that flickers as much', () => {
    const unwanted = { ...(STEADY as object), availability: 'unwanted' };
    const titles = titlesOf({ a: { lamp: 'ripple', at: AT } }, { '/kit/lamps/steady': unwanted });
    expect(titles.filter((title) => title.includes('Steady'))).toEqual([]);
    const lamps = { a: { lamp: 'ripple', at: AT }, b: { lamp: 'steady', at: AT } };
    expect(titlesOf(lamps, { '/kit/lamps/steady': STEADY }).filter((title) => title.includes('Use Steady'))).toEqual(
      [],
    );
    expect(titlesOf({ a: { lamp: 'two', at: AT } }).filter((title) => title.includes('Ripple'))).toEqual([]);
  });

  test('accepts what a grade cannot take out', () => {
    expect(movesOf({ a: { lamp: 'ripple', at: AT } })).not.toContain('accept-flicker');
  });

  test('is needed where flicker is within what is allowed', () => {
    expect(ways({ a: { lamp: 'ripple', at: AT } }, { '/shots/one/flicker': '3 stops' })).toEqual([]);
  });
});

describe('three phases', () => {
  test('of unequal lamps are shared out so that least is left', () => {
    const lamp = (share: string): Written => ({ lamp: 'two', share });
    const lamps = { a: lamp('40 %'), b: lamp('20 %'), c: lamp('20 %'), d: lamp('20 %') };
    const way = ways(lamps, { '/shoot/mains/phases': 3, '/lighting/key/illuminance': '40 klx' }).find(({ move }) => move === 'split-phases')!; // prettier-ignore
    // 0.4, 0.2 + 0.2 and 0.2: no better than 0.4 against 0.4 and 0.2, which leaves a fifth.
    const after = marginOf(planned(applyPatch(lit(lamps, { '/shoot/mains/phases': 3, '/lighting/key/illuminance': '40 klx' }), way.patch)), 'flicker'); // prettier-ignore
    const before = marginOf(planned(lit(lamps, { '/shoot/mains/phases': 3, '/lighting/key/illuminance': '40 klx' })), 'flicker'); // prettier-ignore
    expect(after.have! / before.have!).toBeCloseTo(0.2, 2);
  });
});

describe('a lamp that is measured at full level alone', () => {
  const sha256 = 'c'.repeat(64);
  const changes: Changes = {
    '/kit/lamps': { m: { title: 'Measured', kind: 'led', ...READING, measured: { full: { file: 'rec' } } } },
    '/kit/modifiers/scrim': { title: 'Double scrim', loss: '1 stop' },
    '/files': { rec: { name: 'rec.csv', sha256, size: '1 kB', kind: 'waveform' } },
  };
  const lamps = { a: { lamp: 'm', at: AT, level: '50 %' } };

  test('is unknown dimmed, and known again at full level with a scrim or from farther off', () => {
    const written = lit(lamps, changes);
    const shoot = readSound(written);
    tellWaveforms(shoot, new Map([[sha256, sineWaveform({ ripple_Hz: 100, depthFraction: 0.002 })]]));
    const found = waysFor(shoot, written, 'one', 'flicker');
    expect(found.map(({ title }) => title)).toEqual(expect.arrayContaining([expect.stringMatching(/with Double scrim$/), expect.stringMatching(/from 2\.8 m$/)])); // prettier-ignore
    expect(found.every(({ closes }) => closes)).toBe(true);
  });
});
