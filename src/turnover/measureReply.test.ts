import { describe, expect, test } from 'vitest';
import { measured } from '../../test/footage/measured.ts';
import { measuredClip, SMALL_SCENE } from '../../test/footage/measuredClip.ts';
import { synthetic, type Scene } from '../../test/footage/synthetic.ts';
import { readShootText } from '../document/text.ts';
import type { FlickerLine } from '../measure/types.ts';
import { planShoot } from '../plan/plan.ts';
import { readFileSync } from 'node:fs';
import { PLAIN } from './lines.ts';
import { fittingLamps, heldAgainst, plannedShot, type PlannedShot } from './measureAgainst.ts';
import { measureCsv } from './measureCsv.ts';
import { clipReply, measureReply, type MeasuredClip } from './measureReply.ts';
import { MeasureReply } from './measureSchema.ts';
import { clipLines } from './measureText.ts';

const drop = { radius_px: 6, bright: 0.9, x_px: () => 80, y_px: (t_s: number) => -12 + 1500 * Math.max(0, t_s - 0.04) };
const left = (x: number) => (x < 0.4 ? 0.5 : 0);

const SHOT: PlannedShot = {
  id: 'pour',
  title: 'Pour',
  captureRate_fps: 1000,
  playback_fps: 25,
  exposureTime_s: 1 / 2000,
  fieldWidth_m: 0.16,
  deliveredPixel_m: 0.16 / 1920,
  speed_m_per_s: 1.5,
  blur_px: 9,
  actionTime_s: 0.072,
  swing_stops: 0.01,
  highlights_stops: 0.5,
  lamps: [
    { id: 'key', title: 'Key', ripple_Hz: 100, depthFraction: 0.02 },
    { id: 'fill', title: 'Fill', ripple_Hz: 120, depthFraction: 0.02 },
    { id: 'fast', title: 'Fast', ripple_Hz: 25_000, depthFraction: 0.5 },
  ],
};

const scenes: readonly (readonly [string, Partial<Scene>])[] = [
  ['a still set', {}],
  ['a drop', { drop }],
  ['a drop under a lamp on the left that flickers', { drop, lamps: [{ light: { kind: 'steady' } }, { light: { kind: 'ripple', f_Hz: 100, depth: 0.5 }, share: left }] }], // prettier-ignore
  [
    'a drop let go after a light has come on',
    {
      drop: { ...drop, y_px: (t_s: number) => 14 + 900 * Math.max(0, t_s - 0.09) },
      signal: { x_px: 150, y_px: 85, radius_px: 3, bright: 0.8, on_s: 0.0603 },
    },
  ],
  ['a few frames', { frames: 5 }],
  ['burnt-out light', { white_e: 90_000 }],
  ['a picture that moves', { shift_px: (frame: number) => [0.3 * frame, 0] as const }],
];

const clipOf = (scene: Partial<Scene>, more: Partial<MeasuredClip> = {}): MeasuredClip => measuredClip(scene, { notes: ['A note.'], ...more }); // prettier-ignore

describe.each(scenes)('the reply of %s', (_, scene) => {
  const clip = clipOf(scene, { shot: SHOT });
  const reply = clipReply(clip);

  test('fits its schema, has its keys in that order, and survives being printed', () => {
    const whole = measureReply([reply], []);
    expect(JSON.stringify(MeasureReply.parse(JSON.parse(JSON.stringify(whole))))).toBe(JSON.stringify(whole));
  });

  test('is told in lines that hold every sentence, none with a blank at its end', () => {
    const lines = clipLines(reply, PLAIN);
    expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
    const words = lines.join(' ').replaceAll(/\s+/g, ' ');
    for (const says of [...reply.verdict, ...reply.against.map((of) => of.says), ...reply.notes]) expect(words).toContain(says); // prettier-ignore
    expect(words).not.toMatch(/\b(?:NaN|undefined|Infinity|unknown)\b/);
  });

  test('calls nothing safe', () => expect(JSON.stringify(reply)).not.toMatch(/\bsafe/i));

  test('is the same when it is made again', () => expect(clipReply(clip)).toEqual(reply));
});

describe('what is said', () => {
  const says = (scene: Partial<Scene>, shot?: PlannedShot) =>
    clipReply(clipOf(scene, shot && { shot })).verdict.join(' ');

  test('of a lamp on one side names its size, rate and place, and with a shot the lamp that fits', () => {
    const scene = scenes[2]![1];
    expect(says(scene)).toMatch(/^Pulses 1[67] % \(0\.4\d+ stops\) at (?:99|100)[.\d]* Hz, on the left; 2\.5 Hz on the screen: as lamps on mains of 50 Hz do\. A lamp at 900, 1100 and 1900 Hz would look the same\./); // prettier-ignore
    expect(says(scene, SHOT)).toMatch(/: Key fits\./);
  });

  test('of a light that flashes on the screen warns of photosensitive people', () => {
    const flashing: Partial<Scene> = { lamps: [{ light: { kind: 'ripple', f_Hz: 180, depth: 0.4 } }] };
    expect(says(flashing)).toContain('photosensitive people');
    expect(says(scenes[2]![1])).not.toContain('photosensitive');
  });

  test('of a still set says so, and how little would have been found', () => {
    expect(says({})).toMatch(/^No flicker\. From 0\.0\d+ % on, and faster than 33 Hz, it would have been found\./);
    expect(says({})).toContain('Action: none found. The picture stands still.');
  });

  test('of a drop says how it moves, when, and how fast with a shot', () => {
    expect(says({ drop }, SHOT)).toMatch(/Movement: 1\.5 px a frame down, the fastest 1\.5 px, 1\.5 m\/s; its smear is 0\.7\d px\./);
    expect(says({ drop })).toMatch(/Action: frames \d+ to \d+, most at \d+: \d+ ms on the set, [\d.]+ s on the screen\. Keep \d+ to \d+ of 180\./);
  }); // prettier-ignore
});

test('a light that shows when something was fired is told with the first movement after it', () => {
  const [, scene] = scenes.find(([title]) => title.includes('let go'))!;
  const { verdict, signal, reach } = clipReply(clipOf(scene));
  const said = verdict.find((says) => says.startsWith('A light comes on'))!;
  expect(said).toMatch(
    /^A light comes on in frame 60; the first movement after it is in frame 9[0-2], 3[0-2] ms later\.$/,
  );
  expect(signal!.movementIndex! - signal!.frameIndex).toBeGreaterThanOrEqual(30);
  expect(reach!.left_px).toBeGreaterThan(60);
  expect(reach!.right_px).toBeLessThan(100);
});

describe('held against a plan', () => {
  const of = (scene: Partial<Scene>, shot: Partial<PlannedShot> = {}) =>
    Object.fromEntries(heldAgainst(clipOf(scene).measurement, { ...SHOT, ...shot }).map((one) => [one.what, one]));

  test('a drop that is as planned is as planned in all', () => {
    const found = of({ drop, frames: 200 });
    expect(Object.keys(found).sort()).toEqual(['blur', 'duration', 'flicker', 'highlights', 'speed']);
    for (const { state } of Object.values(found)) expect(state).toBe('as planned');
    // A hundred and sixty pixels of the clip are 1,920 of what is delivered.
    expect(found['blur']!.measured / ((1.5 / 2) * 12)).toBeCloseTo(1, 1);
  });

  test.each([
    ['flicker', { lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.2 } }] }, {}, 'worse'],
    ['flicker', {}, { swing_stops: 0.4 }, 'better'],
    ['blur', { drop }, { blur_px: 3 }, 'worse'],
    ['blur', { drop }, { blur_px: 40 }, 'better'],
    ['speed', { drop }, { speed_m_per_s: 3 }, 'differs'],
    ['duration', { drop }, { actionTime_s: 0.2 }, 'differs'],
    ['highlights', { white_e: 90_000 }, {}, 'worse'],
    ['highlights', {}, { highlights_stops: -1 }, 'better'],
  ] as const)('%s can be otherwise: %j against %j is %s', (what, scene, shot, state) =>
    expect(of(scene as Partial<Scene>, shot)[what]).toMatchObject({ state }),
  );

  test('what the plan does not say, or the clip does not show, is left out', () => {
    const { id, title, lamps } = SHOT;
    expect(heldAgainst(clipOf({ drop }).measurement, { id, title, lamps })).toEqual([]);
    expect(Object.keys(of({ frames: 5 })).sort()).toEqual(['highlights']);
  });

  test('every shot of the demo gives a plan to hold clips against', () => {
    const { shoot } = readShootText(readFileSync(new URL('../../demo/shoot.yaml', import.meta.url), 'utf8'));
    for (const shot of planShoot(shoot).shots) {
      const planned = plannedShot(shoot, shot);
      expect(planned.captureRate_fps).toBeGreaterThan(24);
      expect(planned.fieldWidth_m).toBeGreaterThan(0);
      expect(() => heldAgainst(clipOf({ drop, frames: 60 }).measurement, planned)).not.toThrow();
    }
  });
});

test('what moves as the plan of a shot says has the blur that the plan says, whatever the camera records or the clip holds', () => {
  const text = readFileSync(new URL('../../demo/shoot.yaml', import.meta.url), 'utf8');
  const { shoot } = readShootText(text.replace('pixels: 3840 x 2160', 'pixels: 1920 x 1080'));
  const { measurement } = clipOf({ drop, frames: 60 });
  const known = planShoot(shoot).shots.flatMap((shot) => {
    const planned = plannedShot(shoot, shot);
    return planned.blur_px !== undefined && planned.speed_m_per_s! > 0 ? [{ shot, planned }] : [];
  });
  expect(known.length).toBeGreaterThan(3);
  // More is recorded than is delivered.
  expect(known.some(({ shot, planned }) => Math.abs(planned.fieldWidth_m! / planned.deliveredPixel_m! / shot.settings!.widthCount - 1) > 0.4)).toBe(true);
  for (const { planned } of known)
    for (const width of [640, 1920]) {
      const perFrame_px = (planned.speed_m_per_s! / planned.captureRate_fps! / planned.fieldWidth_m!) * width;
      const clip = { ...measurement, width, frameRate_fps: planned.captureRate_fps!, motion: { ...measurement.motion!, fastest_px: perFrame_px } };
      const found = heldAgainst(clip, planned).find(({ what }) => what === 'blur')!;
      expect(found.measured / planned.blur_px!, planned.id).toBeCloseTo(1, 2);
    }
}); // prettier-ignore

describe('lamps that fit a line', () => {
  const line = (beat_Hz: number): FlickerLine => ({ beat_Hz, deviation_Hz: 0.05 }) as FlickerLine;
  const ids = (beat_Hz: number, frameRate_fps = 1000) => fittingLamps(line(beat_Hz), SHOT, frameRate_fps).map(({ id, order }) => `${id}${order}`); // prettier-ignore

  test.each([
    [100.4, ['key1']],
    [119.2, ['fill1']],
    [200, ['key2']],
    [240.5, ['fill2']],
    [157, []],
  ])('at %d Hz are %j', (beat_Hz, expected) => expect(ids(beat_Hz)).toEqual(expected));

  test('by aliases too, and a lamp too fast for its rate to be known fits nothing', () => {
    expect(ids(20, 120)).toEqual(['key1', 'fill1'].slice(0, 1));
    expect(ids(0.3)).toEqual([]);
  });
});

test('the table has a line a frame, and nothing where a frame is missing', () => {
  const { planes, scene, truth, title } = synthetic('x', { ...SMALL_SCENE, frames: 20 });
  const measurement = measured({ planes, scene, truth, title }, (frame) => (frame < 10 ? frame : frame + 2));
  const lines = measureCsv([{ name: 'a.mkv', measurement }])
    .trimEnd()
    .split('\r\n');
  expect(lines).toHaveLength(23);
  expect(lines[0]).toMatch(/^clip,frame,captureTime_s,screenTime_s,isCounted,mean,/);
  expect(lines[11]).toMatch(/^a\.mkv,10,0\.01,0\.4,no,,,,/);
  expect(lines[13]).toMatch(/^a\.mkv,12,0\.012,0\.48,yes,0\.\d+,/);
});
