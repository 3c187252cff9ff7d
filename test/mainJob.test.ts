/**
 * The main job held against the world: whole shots written as a person writes them, read, planned, and compared with
 * worked examples that others published. Each says which of its givens makes the plan the published case; what is left
 * to the plan is not given.
 */
import { describe, expect, test } from 'vitest';
import type { Written } from '../src/document/written.ts';
import { printed } from './published.ts';
import { changed, marginOf, planned, stopsAt } from './shoots.ts';

/** A body, a lens and a light without character: pitch 10 µm, T-stops that are f-stops, marks that allow for close focus. */
const PLAIN: Written = {
  longsecond: 1,
  deliverables: { film: { rate: 24, pixels: '1920 x 1080' } },
  kit: {
    cameras: {
      body: {
        pitch: '10 µm',
        modes: { whole: { pixels: '1920 x 1080', rate: '10000 fps', bits: 12 } },
        memory: '64 GB',
        deadTime: '0 s',
        baseIndex: 800,
      },
    },
    lenses: {
      lens: { focalLength: '50 mm', widest: 'T1', narrowest: 'T64', transmittance: 1, pupilMagnification: 1, stopIncludesExtension: true },
    },
  },
  lighting: { light: { illuminance: '1 klx', luminance: '100 cd/m²', reading: 'metered' } },
  shots: { one: { action: { duration: '1 s' }, screenTime: '1 s', frameWidth: '2 m', lighting: 'light' } },
}; // prettier-ignore

const EXTENDS = { '/kit/lenses/lens/stopIncludesExtension': false };
const plan = (changes: Readonly<Record<string, Written | undefined>>) => planned(changed(PLAIN, changes));

/** A figure agrees with the digits its source prints. */
function agrees(value: number, asPrinted: string): void {
  const { value: expected, tolerance } = printed(asPrinted);
  expect(Math.abs(value - expected), `${value} against ${asPrinted}`).toBeLessThanOrEqual(tolerance * (1 + 1e-9));
}

const LUX_OF_A_FOOTCANDLE = 1 / 0.3048 ** 2;

describe('a table lit for T4', () => {
  // Given: 24 fps, 1/50 s, T4, EI 800, and a meter of 25 fc·s. The light is left to the plan.
  const shot = { '/shoot/meterConstant': `${25 * LUX_OF_A_FOOTCANDLE} lx·s`, '/shots/one/shutter': '1/50 s', '/shots/one/stop': 'T4', '/shots/one/index': 800 }; // prettier-ignore

  test('footcandle-note: T4 at EI 800 and 1/50 s needs 25.0 footcandles', () => {
    agrees(marginOf(plan(shot), 'light').need! / LUX_OF_A_FOOTCANDLE, '25.0');
  });

  test('footcandle-note: 25 footcandles on the table are just enough, and twice as many a stop to spare', () => {
    agrees(stopsAt(plan({ ...shot, '/lighting/light/illuminance': '25 fc' }), 'light'), '0.00');
    agrees(stopsAt(plan({ ...shot, '/lighting/light/illuminance': '50 fc' }), 'light'), '1.00');
  });

  test('shutter-formula: 1/50 s at 24 fps is 172.8°, and fits the frame', () => {
    const { settings, margins } = plan(shot);
    expect(settings!.captureRate_fps).toBe(24);
    agrees(settings!.shutterAngle_deg, '172.8');
    expect(marginOf({ margins }, 'shutter').state).toBe('spare');
  });

  test('sunlight-thread: f/16 at one over the index asks for the 7680 footcandles of full sun, by 30 fc·s', () => {
    const sun = { '/shoot/meterConstant': `${30 * LUX_OF_A_FOOTCANDLE} lx·s`, '/shots/one/shutter': '1/125 s', '/shots/one/stop': 'T16', '/shots/one/index': 125 }; // prettier-ignore
    agrees(marginOf(plan(sun), 'light').need! / LUX_OF_A_FOOTCANDLE, '7680');
  });
});

describe('the same second, four times as long', () => {
  // Given: one second of action, how long it lasts on screen at 24, a stop and an index. Rate and shutter are the plan's.
  const shot = (screenTime: string) => plan({ '/shots/one/screenTime': screenTime, '/shots/one/stop': 'T4', '/shots/one/index': 800 }); // prettier-ignore

  test('ramp-thread: from 24 fps to 96 fps at one angle the light is 2.00 stops further off', () => {
    const [normal, slow] = [shot('1 s'), shot('4 s')];
    expect([normal.settings!.captureRate_fps, slow.settings!.captureRate_fps]).toEqual([24, 96]);
    agrees(stopsAt(normal, 'light') - stopsAt(slow, 'light'), '2.00');
  });

  test('shutter-formula and ramp-thread: nobody asking for less, the shutter is 180°, 1/48 s at 24 fps and 1/192 s at 96', () => {
    const [normal, slow] = [shot('1 s'), shot('4 s')];
    agrees(1 / normal.settings!.exposureTime_s, '48');
    // 192 is no number of two figures; the camera is set to what it asks for all the same.
    agrees(1 / slow.settings!.exposureTime_s, '192');
    expect([normal.settings!.shutterAngle_deg, slow.settings!.shutterAngle_deg]).toEqual([180, 180]);
  });
});

describe('exposure values', () => {
  // Given: 24 fps, a stop, 1/64 s and EI 100, which make the exposure value; 250 lx·s is the plan's own constant.
  const shot = { '/shots/one/shutter': '1/64 s', '/shots/one/index': 100 };

  test('ev-table: EV 14 is 40,960 lx', () => {
    const { margins, assumed } = plan({ ...shot, '/shots/one/stop': 'T16' });
    agrees(marginOf({ margins }, 'light').need!, '40,960');
    expect(assumed).toContainEqual(expect.objectContaining({ name: 'meterConstant_lx_s', value: 250 }));
  });

  test('ev-table: EV 12 behind two stops of filter asks for the same 40,960 lx', () => {
    const nd = { '/kit/attachments/nd': { kind: 'nd', loss: '2 stops' }, '/shots/one/attachments': ['nd'] };
    agrees(marginOf(plan({ ...shot, ...nd, '/shots/one/stop': 'T8' }), 'light').need!, '40,960');
  });

  test('ev-table: EV 12 is 512 cd/m² of what is seen through the glass', () => {
    const through = plan({ ...shot, '/shots/one/stop': 'T8', '/shots/one/seen': 'lit-through' });
    expect(marginOf(through, 'light').kind).toBe('luminance');
    agrees(marginOf(through, 'light').need!, '512');
  });

  test('meter-thread: f/16 at one over the index is 3200 cd/m², and f/8 is 800', () => {
    const mirrored = { '/shots/one/shutter': '1/125 s', '/shots/one/index': 125, '/shots/one/seen': 'by-reflection' };
    agrees(marginOf(plan({ ...mirrored, '/shots/one/stop': 'T16' }), 'light').need!, '3200');
    agrees(marginOf(plan({ ...mirrored, '/shots/one/stop': 'T8' }), 'light').need!, '800');
  });
});

describe('a drawing copied at half its size', () => {
  // Given: a 12 in lens whose marks do not allow for its bellows, and a frame twice the picture's width: magnification 0.5,
  // bellows at 18 in. One frame in twenty seconds leaves the shutter its eight or eighteen.
  const shot = { '/kit/lenses/lens/focalLength': '12 in', '/kit/cameras/body/modes/whole/pixels': '5000 x 4000', '/kit/cameras/body/pitch': '10 µm', '/deliverables/film/pixels': '5000 x 4000', '/shots/one/frameWidth': '10 cm', '/shots/one/rate': '1/20', '/shots/one/stop': 'T16', '/shots/one/index': 100 }; // prettier-ignore
  const need = (changes: Readonly<Record<string, Written>>) => marginOf(plan({ ...shot, ...changes }), 'light').need!;

  test('close-up-textbook: 10 cm drawn 5 cm high needs 2.25 times the light', () => {
    const exposure = { '/shots/one/shutter': '8 s' };
    expect(plan({ ...shot, ...EXTENDS, ...exposure }).settings!.magnificationRatio).toBeCloseTo(0.5, 12);
    agrees(need({ ...EXTENDS, ...exposure }) / need(exposure), '2.25');
  });

  test('army-copy-course: an exposure of 8 s becomes one of 18 s in the same light', () => {
    agrees(need({ ...EXTENDS, '/shots/one/shutter': '18 s' }) / need({ '/shots/one/shutter': '8 s' }), '1.0000');
  });
});

describe('life size', () => {
  // Given: a frame as wide as the picture on the sensor, 19.2 mm, and a lens whose marks do not allow for it.
  const lifeSize = { ...EXTENDS, '/shots/one/frameWidth': '19.2 mm' };

  test('pupil-thread and meter-thread: f/8 at life size exposes as f/16, so 3200 cd/m² at one over the index', () => {
    const shot = plan({ ...lifeSize, '/shots/one/stop': 'T8', '/shots/one/shutter': '1/125 s', '/shots/one/index': 125, '/shots/one/seen': 'lit-through' }); // prettier-ignore
    expect(shot.settings!.magnificationRatio).toBeCloseTo(1, 12);
    agrees(marginOf(shot, 'light').need!, '3200');
  });

  test('four-focal-lengths: the sensor stands four focal lengths from the subject', () => {
    agrees(plan(lifeSize).settings!.sensorToSubject_m, '0.2000');
  });

  // Worked by hand: 340 · 8² · (1 + 1)² · 1000 / 1600.
  test('worked by hand: 1000 fps with the shutter open all frame, EI 1600, T8 and a dome of 340 lx·s need 54,400 lx', () => {
    const shot = plan({ ...lifeSize, '/shoot/meterConstant': '340 lx·s', '/shots/one/rate': 1000, '/shots/one/shutter': '360°', '/shots/one/stop': 'T8', '/shots/one/index': 1600 }); // prettier-ignore
    agrees(shot.settings!.exposureTime_s, '0.001');
    agrees(marginOf(shot, 'light').need!, '54400');
    expect(marginOf(shot, 'shutter').state).toBe('spare');
  });
});

describe('a part on a moving belt', () => {
  // Given: 96 mm across 1920 pixels, 50 µm a pixel on the part.
  const belt = { '/shots/one/frameWidth': '96 mm' };

  test('machine-vision-blur: 500 mm/s for 100 µs is a blur of 1.00 px', () => {
    const shot = plan({ ...belt, '/shots/one/action/speed': '500 mm/s', '/shots/one/shutter': '100 µs', '/shots/one/blur': '1 px' }); // prettier-ignore
    agrees(marginOf(shot, 'blur').have!, '1.00');
    agrees(stopsAt(shot, 'blur'), '0.00');
  });

  // Left to the plan: the shutter.
  test('machine-vision-blur: 2000 mm/s and one pixel allowed is a shutter of 25 µs', () => {
    const shot = plan({ ...belt, '/shots/one/action/speed': '2000 mm/s', '/shots/one/blur': '1 px' });
    agrees(shot.settings!.exposureTime_s, '25e-6');
    expect(shot.reasons.exposureTime_s!.says).toBe('the longest the blur allows');
  });

  // Worked by hand: 3.13 m/s · 0.5 · (1/4000 s) / 10 µm = 39.125; two pixels take 12.78 µs, which is set as 1/79 000 s.
  test('worked by hand: a drop at 3.13 m/s, half life size, smears 39.1 px in 1/4000 s', () => {
    const drop = { '/shots/one/frameWidth': '38.4 mm', '/shots/one/action/speed': '3.13 m/s' };
    agrees(marginOf(plan({ ...drop, '/shots/one/shutter': '1/4000 s', '/shots/one/blur': '2 px' }), 'blur').have!, '39.1'); // prettier-ignore
    const frozen = plan({ ...drop, '/shots/one/rate': 2000, '/shots/one/blur': '2 px' });
    agrees(1 / frozen.settings!.exposureTime_s, '79000');
    expect(frozen.settings!.shutterAngle_deg).toBeLessThanOrEqual(9.2);
  });
});

describe('an eighth of a second that lasts six', () => {
  // Given: the action's length, its time on screen, and the picture. Rate, memory and save are the plan's.
  const shot = { '/shots/one/action/duration': '0.12 s', '/shots/one/screenTime': '6 s' };

  test('common practice, no source: 0.12 s over 6 s at 24 is 1200 fps, and 24000/1001 asks for no more than 1199', () => {
    expect(plan(shot).settings!.captureRate_fps).toBe(1200);
    expect(plan({ ...shot, '/deliverables/film/rate': '24000/1001' }).settings!.captureRate_fps).toBe(1199);
  });

  // Two pixels of 12 bits in three bytes: 1920 · 1080 · 3/2 = 3,110,400 a frame, 144 frames.
  test('packed-pixels: 1920 × 1080 at 12 bits keeps 3,110,400 bytes a frame', () => {
    agrees(plan(shot).keptSize_B! / 144, '3110400');
  });

  // 4096 · 2160 · 3/2 = 13,271,040; 64·10⁹ / (13,271,040 · 1000) s.
  test('packed-pixels: 64 GB hold 4.8225 s of 4096 × 2160 at 12 bits and 1000 fps', () => {
    const big = { '/kit/cameras/body/modes/whole/pixels': '4096 x 2160', '/shots/one/rate': 1000 };
    const { margins, clocks } = plan({ ...shot, ...big });
    agrees(marginOf({ margins }, 'buffer').have!, '4.8225');
    agrees(clocks!.recordTime_s!, '4.8225');
    agrees(marginOf({ margins }, 'buffer').need!, '0.12');
  });

  test('ethernet-payload: over 10 Gb/s with timestamps it is saved at 94.1482 % of the line', () => {
    const link = { '/kit/cameras/body/saveRate': `${((1500 - 52) / 1538) * 1.25} GB/s` };
    const { keptSize_B, saveTime_s } = plan({ ...shot, ...link });
    agrees((100 * (keptSize_B! / saveTime_s!)) / 1.25e9, '94.1482');
  });
});

describe('close up, how deep and how sharp', () => {
  // Given: a blur circle of 1.9 pixels of 10 µm, 0.019 mm; T-stops that are f-stops; the magnification by the frame.
  const depth = (magnification: number, stop: string) =>
    1000 * marginOf(plan({ '/shots/one/frameWidth': `${19.2 / magnification} mm`, '/shots/one/unsharpness': '1.9 px', '/shots/one/stop': stop, '/shots/one/depth': '1 mm' }), 'depth').have!; // prettier-ignore

  test.each([
    [0.1, 'T2.8', '12'],
    [0.5, 'T4', '0.91'],
    [1.5, 'T2.8', '0.12'],
    [2.5, 'T2', '0.043'],
  ])('macro-depth-table: at magnification %d and %s the sharp depth is %s mm', (magnification, stop, asPrinted) => {
    agrees(depth(magnification, stop), asPrinted);
  });

  // Given: a frame so wide that magnification costs nothing.
  test('airy-examples: at 550 nm and f/4 the disc is 5.37 µm, here of pixels of 10 µm', () => {
    const far = plan({ '/shots/one/frameWidth': '500 m', '/shots/one/stop': 'T4' });
    agrees(10 * marginOf(far, 'diffraction').have!, '5.37');
  });

  // f²/(N·c) with the focal length left out, as its page has it: focused at 9470 mm, all from half of that is sharp.
  test('hyperfocal-page: 50 mm at f/8 with 0.033 mm is sharp to infinity from 9470 mm', () => {
    const at = (sensorToSubject_m: number) => {
      const objectDistance_m = sensorToSubject_m;
      const frame_m = (0.0192 * (objectDistance_m - 0.05)) / 0.05;
      return marginOf(plan({ '/shots/one/frameWidth': `${frame_m} m`, '/shots/one/unsharpness': '3.3 px', '/shots/one/stop': 'T8', '/shots/one/depth': '1 m' }), 'depth').have!; // prettier-ignore
    };
    // A thousand metres is the most that is counted as depth.
    expect(at(9.47 + 0.055)).toBe(1000);
    expect(at(9.47 - 0.05)).toBeGreaterThan(500);
    expect(at(9.0)).toBeLessThan(200);
  });
});

describe('several pictures out of one', () => {
  const crop = (mode: string, deliverable: string) =>
    plan({ '/kit/cameras/body/modes/whole/pixels': mode, '/deliverables/film/pixels': deliverable });

  test.each([
    ['4096 x 2160', '1850 x 1000', '3996'],
    ['2048 x 1080', '1850 x 1000', '1998'],
    ['1920 x 1080', '400 x 300', '1440'],
  ])('cinema-containers: %s holds a picture shaped as %s that is %s pixels wide', (mode, deliverable, asPrinted) => {
    agrees(marginOf(crop(mode, deliverable), 'picture-size').have!, asPrinted);
  });

  // Given: the frame is 1 m wide across the first deliverable, 1.85 in 4096 × 2160.
  test('cinema-containers: framed for 1.85, the whole 4096 pixels see 4096/3996 of the frame', () => {
    const shot = planned(changed(PLAIN, {
      '/kit/cameras/body/modes/whole/pixels': '4096 x 2160',
      '/deliverables': { flat: { rate: 24, pixels: '1998 x 1080' }, whole: { rate: 24, pixels: '4096 x 2160' } },
      '/shots/one/frameWidth': '1 m',
      '/shots/one/action/width': '1.2 m',
    }));
    const { have, need, detail } = marginOf(shot, 'in-the-picture');
    expect([have, detail]).toEqual([1.2, 'flat, across']);
    expect(need).toBeCloseTo(1, 9);
    agrees(marginOf(shot, 'picture-size').have!, '4096');
  }); // prettier-ignore
});
