import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { measured } from '../../../test/footage/measured.ts';
import { meanOf, synthetic, type LampLight } from '../../../test/footage/synthetic.ts';
import { applyPatch } from '../../document/patch.ts';
import { readShoot } from '../../document/read.ts';
import { isRecord, type Written } from '../../document/written.ts';
import { readMeasuredWaveform } from '../../laws/flicker/measured.ts';
import type { Measurement } from '../../measure/types.ts';
import { planShoot } from '../../plan/plan.ts';
import { tellWaveforms } from '../../plan/waveforms.ts';
import { PLAIN } from '../lines.ts';
import { learnEvent } from './learnEvent.ts';
import { learnLamp, type FileOf, type LearntLamp } from './learnLamp.ts';
import { learnLines } from './learnText.ts';
import { learnRig } from './learnRig.ts';
import { learntReply } from './learnReply.ts';
import { LearntReply } from './learnSchema.ts';
import type { Learning, Learnt } from './learnt.ts';
import { marginChangeWords } from './marginsChanged.ts';

const SHOOT: Written = {
  longsecond: 1,
  shoot: { mains: { voltage: '230 V', frequency: '50 Hz' } },
  deliverables: { film: { rate: 25, pixels: '1920 x 1080' } },
  kit: {
    cameras: { one: { pitch: '10 µm', activeArea: '2048 x 1152', modes: { full: { pixels: '2048 x 1152', rate: '4000 fps' } }, memory: '64 GB', headroom: '3 stops', baseIndex: 1000, lowestIndex: 500, highestIndex: 4000 } },
    lenses: { long: { focalLength: '100 mm', widest: 'T2.8', narrowest: 'T22' } },
    lamps: { panel: { title: 'Panel', kind: 'led', waveform: { kind: 'led-ripple', depth: '2 %' } }, spare: { kind: 'led' } },
    rigs: { latch: { title: 'Latch', kind: 'latch', latency: '20 ms ± 2 ms', note: 'New spring.' }, hand: { kind: 'person' } },
  },
  lighting: { key: { lamps: { panel: { lamp: 'panel', share: '100 %' } }, illuminance: '40 klx' } },
  defaults: { deliverables: ['film'], lens: 'long', camera: 'one', lighting: 'key', seen: 'lit-on', action: { duration: '60 ms', width: '30 mm' } },
  shots: {
    drop: { title: 'One drop', frameWidth: '64 mm', screenTime: '4 s', rate: 1000, shutter: '1/4000 s', action: { speed: '2 m/s' }, meeting: { tolerance: '3 ms' }, cues: { a: { rig: 'latch', does: 'acts' }, b: { rig: 'hand', does: 'acts' } } },
  },
}; // prettier-ignore

const DATE = '2027-03-09';
const taught = <Of extends Learnt>(learning: Learning<Of>): Of => {
  if (!learning.ok) throw new Error(learning.refusal.what);
  return learning.learnt;
};
const valueAt = (written: Written, path: string): unknown =>
  path.slice(1).split('/').reduce<unknown>((at, key) => (isRecord(at) ? at[key] : undefined), written); // prettier-ignore

const fileOf: FileOf = (text, name) => ({
  name,
  sha256: createHash('sha256').update(text).digest('hex'),
  size_B: Buffer.byteLength(text),
});

const TAKEN = { rate_fps: 1070, exposure_s: 1 / 4000 };
const cardOf = (light: LampLight): Measurement =>
  measured(synthetic('card', { ...TAKEN, width: 48, height: 32, frames: 600, seed: 6, blobs: 0, lamps: [{ light }] }));
const AS = { level: '', colour: '', supply: '' };

const RIPPLE: LampLight = { kind: 'ripple', f_Hz: 100, depth: 0.15 };
const PULSES: LampLight = { kind: 'pulses', f_Hz: 100, duty: 0.4, low: 0.5 };

describe.each([
  ['a ripple', RIPPLE],
  ['pulses', PULSES],
] as const)('a grey card under a lamp with %s', (_, light) => {
  const learnt = taught(
    learnLamp({ written: SHOOT, lampId: 'panel', clip: { name: 'SYNTHETIC card.mkv', measurement: cardOf(light) }, exposureTime_s: TAKEN.exposure_s, as: AS, date: DATE }, fileOf),
  );
  const after = applyPatch(SHOOT, learnt.patch);

  test('becomes a file that is read as a light record, with the very period that was learnt', () => {
    const read = readMeasuredWaveform(learnt.csv.text);
    if (!read.ok) throw new Error(read.refusal.what);
    expect(Math.abs(1 / read.waveform.period_s - 100)).toBeLessThan(0.003);
    expect(read.waveform.samples).toHaveLength(learnt.wave.period.samples.length);
    read.waveform.samples.forEach((of, i) => expect(Math.abs(of - learnt.wave.period.samples[i]!)).toBeLessThan(0.01));
    expect(read.notices).toEqual(['No dark reading was taken away: any offset of the sensor makes the ripple look shallower.']);
  });

  test('is named in the shoot, dated, with its conditions, and takes no problem with it', () => {
    const entry = valueAt(after, '/kit/lamps/panel/measured/measured-1') as Record<string, string>;
    expect(entry).toMatchObject({ title: `${DATE}, SYNTHETIC card.mkv`, file: 'light-1' });
    expect(entry['note']).toMatch(/^Measured 2027-03-09 from a grey card, SYNTHETIC card\.mkv: 600 frames at 1070 fps, shutter 1\/4000 s; .*SYNTHETIC: worked out, not filmed\.$/);
    expect(entry).not.toHaveProperty('ownRate');
    expect(valueAt(after, '/files/light-1')).toMatchObject({ sha256: fileOf(learnt.csv.text, '').sha256 });
    expect(readShoot(after).problems).toEqual(readShoot(SHOOT).problems);
  });

  test.each([
    { rate: 1000, shutter: '1/4000 s', exposure_s: 1 / 4000 },
    { rate: 2347, shutter: '1/3000 s', exposure_s: 1 / 3000 },
    { rate: 411, shutter: '1/500 s', exposure_s: 1 / 500 },
  ])('then plans what $rate fps at $shutter would show, within its error', ({ rate, shutter, exposure_s }) => {
    const written = applyPatch(after, [{ op: 'add', path: '/shots/drop/rate', value: rate }, { op: 'add', path: '/shots/drop/shutter', value: shutter }]);
    const { shoot } = readShoot(written);
    const read = readMeasuredWaveform(learnt.csv.text);
    if (!read.ok) throw new Error(read.refusal.what);
    tellWaveforms(shoot, new Map([[fileOf(learnt.csv.text, '').sha256, read.waveform]]));
    const { settings, flicker } = planShoot(shoot).shots[0]!;
    expect(settings).toMatchObject({ captureRate_fps: rate });
    const planned = flicker!.seen!.betweenTakes.peakToPeak_stops;
    const frames = Array.from({ length: 20_000 }, (_of, i) => meanOf(light, (i * 0.37) / 1000, (i * 0.37) / 1000 + exposure_s));
    const truth = Math.log2(Math.max(...frames) / Math.min(...frames));
    const error_stops = (2 * 1.5 * learnt.wave.lightDeviationFraction) / Math.min(...frames) / Math.LN2 + 0.003;
    expect(Math.abs(planned - truth)).toBeLessThan(error_stops);
  });

  test('says which limits change', () => {
    expect(learnt.margins.map(marginChangeWords).join('\n')).toMatch(/One drop, flicker: /);
    expect(learnt.changes[0]).toMatchObject({ before: expect.stringContaining('2 % deep') as string, says: 'as written' });
  });
}); // prettier-ignore

describe('a lamp', () => {
  const clip = { name: 'card.mov', measurement: cardOf(RIPPLE) };
  const given = { written: SHOOT, lampId: 'panel', clip, exposureTime_s: TAKEN.exposure_s, as: AS, date: DATE };
  const learn = (more: Partial<typeof given>): Learning<LearntLamp> => learnLamp({ ...given, ...more }, fileOf);

  test('is written as it was set', () => {
    const learnt = taught(learn({ as: { level: '40 %', colour: '4300 K', supply: 'generator' } }));
    const entry = learnt.patch.at(-1)!;
    expect(entry).toMatchObject({ value: { level: '40 %', colour: '4300 K', supply: 'generator' } });
    expect(learnt.says.join(' ')).toContain('a level of 40 %, 4300 K, the generator');
  });

  test('whose setting the shoot would not take is refused', () => {
    expect(learn({ as: { ...AS, level: 'half' } })).toMatchObject({ ok: false, refusal: { code: 'learn.not-taken' } });
  });

  test('that no kit has is refused with those there are', () => {
    expect(learn({ lampId: 'toString' })).toMatchObject({ ok: false, refusal: { code: 'learn.unknown-lamp', mend: expect.stringContaining('panel') as string } }); // prettier-ignore
  });

  test('with a rate of its own says so', () => {
    const light: LampLight = { kind: 'ripple', f_Hz: 137, depth: 0.1 };
    const own = { ...given, clip: { name: 'card.mov', measurement: cardOf(light) }, rate_Hz: 137 };
    expect(taught(learnLamp(own, fileOf)).patch.at(-1)).toMatchObject({ value: { ownRate: true } });
  });

  test('keeps the clip’s words and no more in its file', () => {
    const { csv } = taught(learn({ clip: { ...clip, name: 'odd; name\twith\u0000 marks/../x.mov' } }));
    expect(csv.name).toMatch(/^panel, [\p{L}\p{N} ._-]+\.csv$/u);
    expect(readMeasuredWaveform(csv.text).ok).toBe(true);
  });
});

/** A clip of a rig that is fired at a frame and moves some frames later. */
const fired = (name: string, latency_frames: number, frameRate_fps = 5000) => ({
  name,
  measurement: {
    frameRate_fps,
    signal: { frame: 100, movement: 100 + latency_frames, tile: 3, rise_stops: 1, litFraction: 1 },
  } as unknown as Measurement,
});

describe('a rig', () => {
  const clips = [118, 121, 126, 131, 117, 122, 125, 128, 120].map((frames, i) => fired(`take ${i + 1}.mov`, frames));
  const learnt = taught(learnRig({ written: SHOOT, rigId: 'latch', clips, date: DATE }));
  const after = applyPatch(SHOOT, learnt.patch);

  test('gets its latency with how far off it may be, its jitter, and that it was measured', () => {
    expect(valueAt(after, '/kit/rigs/latch')).toMatchObject({ latency: '24.40 ms ± 0.55 ms', jitter: '940 µs', measured: true, firings: clips.length }); // prettier-ignore
    expect(readShoot(after).problems).toEqual(readShoot(SHOOT).problems);
    const { latency_s, latencySpread_s } = readShoot(after).shoot.kit.rigs['latch']!;
    expect(latency_s).toBeCloseTo(0.0244, 12);
    expect(latencySpread_s).toBeCloseTo(0.00055, 12);
  });

  test('keeps its note and gets a line of when, how many and under what conditions', () => {
    const note = String(valueAt(after, '/kit/rigs/latch/note')).split('\n');
    expect(note[0]).toBe('New spring.');
    expect(note[1]).toMatch(/^Measured 2027-03-09 from 9 takes at 5000 fps \(take 1\.mov, .*: latency 24\.40 ms ± 0\.55 ms, jitter 940 µs, nine in ten by 25\.6 ms/); // prettier-ignore
  });

  test('says what it was before, and what the plan then makes of it', () => {
    expect(learnt.changes[0]).toMatchObject({ before: '20 ms ± 2 ms', says: 'as written' });
    expect(learnt.changes[1]!.says).toMatch(/usual for a spring latch/);
  });

  test('is never spoken of without care, and nothing is fired', () => {
    expect(learnt.cautions.join(' ')).toMatch(/stand clear.*Longsecond fires nothing/);
    expect([...learnt.says, ...learnt.notices, ...learnt.cautions].join(' ')).not.toMatch(/\bsafe\b/);
  });

  test('learnt from few takes, a wild one among them, says so', () => {
    const few = taught(learnRig({ written: SHOOT, rigId: 'latch', clips: [...clips.slice(0, 4), fired('wild.mov', 300), fired('dark.mov', 1)], date: DATE })); // prettier-ignore
    expect(few.notices.join('\n')).toMatch(/5 takes are few/);
    expect(few.notices.join('\n')).toMatch(/known to 45 %, as 5 takes tell it/);
    expect(few.notices.join('\n')).toMatch(/wild\.mov lies 34\.8 ms late/);
    expect(few.notices.join('\n')).toMatch(/dark\.mov is left out: it moves within 2 frames/);
  });

  test.each([
    ['latch', clips.slice(0, 2), 'rig.few-takes'],
    ['catapult', clips, 'learn.unknown-rig'],
  ])('%s: refused in words', (rigId, taken, code) => {
    expect(learnRig({ written: SHOOT, rigId, clips: taken, date: DATE })).toMatchObject({
      ok: false,
      refusal: { code },
    });
  });

  test('changes the limit that its times meet', () => {
    const loose = taught(learnRig({ written: SHOOT, rigId: 'hand', clips, date: DATE }));
    expect(loose.margins.map(marginChangeWords).join('\n')).toMatch(/One drop, (?:all arrive|meeting)/i);
  });
});

describe('an event', () => {
  const falls = (speed_px: number, seed: number): Measurement =>
    measured(
      synthetic('falls', {
        width: 128,
        height: 144,
        rate_fps: 1000,
        frames: 180,
        exposure_s: 1 / 4000,
        seed,
        lamps: [{ light: { kind: 'steady' } }],
        drop: {
          radius_px: 5,
          bright: 0.9,
          x_px: (t_s) => (t_s < 0.06 || t_s > 0.11 ? -50 : 60),
          y_px: (t_s) => 20 + speed_px * (1000 * t_s - 60),
        },
      }),
    );
  const take = (name: string, speed_px: number, seed: number) => ({ name, isWhole: true, measurement: falls(speed_px, seed) }); // prettier-ignore
  const clips = [take('one.mov', 1.4, 1), take('two.mov', 1.7, 2), take('three.mov', 1.6, 3)];
  const learnt = taught(learnEvent({ written: SHOOT, shotId: 'drop', clips, date: DATE }));
  const after = applyPatch(SHOOT, learnt.patch);

  test('puts what was measured into the shot alone, and leaves the defaults as they are', () => {
    // A pixel shows half a millimetre: 64 mm over 128.
    const { action } = readShoot(after).shoot.shots['drop']!;
    expect(Math.abs(action.speed_m_per_s! - 0.8)).toBeLessThan(0.05);
    expect(Math.abs(action.speedSpread_m_per_s! - 1.2816 * 0.076)).toBeLessThan(0.05);
    expect(Math.abs(action.duration_s! - 0.051)).toBeLessThan(0.005);
    expect(Math.abs(action.reachWidth_m! - 0.005)).toBeLessThan(0.0015);
    expect(readShoot(after).shoot.defaults).toEqual(readShoot(SHOOT).shoot.defaults);
    expect(readShoot(after).problems).toEqual(readShoot(SHOOT).problems);
  });

  test('tells old beside new, and which limits stand otherwise', () => {
    const of = Object.fromEntries(learnt.changes.map(({ path, before, says }) => [path, { before, says }]));
    expect(of['/shots/drop/action/speed']).toEqual({ before: '2 m/s', says: 'as written' });
    expect(of['/shots/drop/action/duration']).toEqual({ before: '60 ms', says: 'as written' });
    const [first] = learnt.margins.map(marginChangeWords);
    expect(first).toBe('One drop, in the picture, film, up and down: short, was spare (45 mm of 36 mm).');
  });

  test('is dated with the names of its clips', () => {
    expect(valueAt(after, '/shots/drop/note')).toMatch(/^Measured 2027-03-09 from one\.mov, two\.mov and three\.mov at 1000 fps: duration of the action/); // prettier-ignore
  });

  test('of which nothing was measured well is refused, and says why', () => {
    const still = [{ name: 'still.mov', isWhole: true, measurement: falls(0, 4) }];
    const none = measured(synthetic('still', { width: 64, height: 48, rate_fps: 1000, frames: 60, exposure_s: 1 / 4000, seed: 1, lamps: [{ light: { kind: 'steady' } }] })); // prettier-ignore
    const learning = learnEvent({ written: SHOOT, shotId: 'drop', clips: [{ ...still[0]!, measurement: none }], date: DATE }); // prettier-ignore
    expect(learning).toMatchObject({ ok: false, refusal: { code: 'learn.nothing-measured' } });
    expect(learning.ok ? [] : learning.notices).toContain('Duration of the action is not taken from still.mov: no action was found in it.'); // prettier-ignore
    expect(learnEvent({ written: SHOOT, shotId: 'nowhere', clips, date: DATE })).toMatchObject({ ok: false, refusal: { code: 'learn.unknown-shot' } }); // prettier-ignore
  });

  test('is printed with its patch, and told to programs in the form of its schema', () => {
    const lines = learnLines({ ok: true, learnt }, PLAIN);
    expect(lines[0]).toBe('What the clips teach');
    const at = lines.findIndex((line) => line.includes('As a JSON Patch'));
    expect(JSON.parse(lines.slice(at + 1).join('\n'))).toEqual(learnt.patch);
    const reply = learntReply('event', { ok: true, learnt });
    expect(LearntReply.parse(JSON.parse(JSON.stringify(reply)))).toEqual(reply);
    expect(applyPatch(SHOOT, reply.patch as Learnt['patch'])).toEqual(after);
  });

  test('refused is told to programs too', () => {
    const refused = learnEvent({ written: SHOOT, shotId: 'nowhere', clips, date: DATE });
    const reply = learntReply('event', refused);
    expect(LearntReply.parse(reply)).toMatchObject({ patch: [], refusal: { code: 'learn.unknown-shot' } });
    expect(learnLines(refused, PLAIN)).toContain('  Nothing that the shoot could take.');
  });
});
