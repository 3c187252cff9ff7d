import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readShootText } from '../document/text.ts';
import { planShoot } from '../plan/plan.ts';
import type { Margin, Plan, ShotPlan, Way } from '../plan/types.ts';
import { marginLike, unknownMargin } from '../../test/margins.ts';
import { columnsOf, PAGE_COLUMNS, PLAIN } from './lines.ts';
import { planLines, type PlanTextOptions } from './planText.ts';
import { marginWords } from './words.ts';

const demo = readShootText(readFileSync(new URL('../../demo/shoot.yaml', import.meta.url), 'utf8'));
const demoPlan = planShoot(demo.shoot);

const { shoot } = readShootText(`longsecond: 1
kit:
  cameras: { heron: { title: Heron } }
  lenses: { long: { title: Long macro } }
`);

const SETTINGS = {
  camera: 'heron',
  mode: 'full',
  lens: 'long',
  captureRate_fps: 1000,
  exposureTime_s: 1 / 4000,
  shutterAngle_deg: 90,
  stop: 8,
  isoSpeed: 1600,
  widthCount: 4096,
  heightCount: 2304,
  focalLength_mm: 100,
  magnificationRatio: 0.25,
  sensorToSubject_m: 0.62,
  workingDistance_m: 0.41,
} as const;

function shotLike(given: Partial<ShotPlan> = {}): ShotPlan {
  return {
    id: 'pour',
    title: 'The pour',
    number: 3,
    settings: SETTINGS,
    reasons: {},
    margins: [marginLike()],
    alternatives: [],
    lamps: [],
    lampTimes: [],
    missing: [],
    assumed: [],
    cautions: [],
    notes: [],
    triedCount: 1,
    ...given,
  };
}

function planOf(...shots: readonly ShotPlan[]): Plan {
  const totals = { screenTime_s: 32, takeCount: 12, keptSize_B: 6.1e11, saveTime_s: 90, shortCount: 2, tightCount: 1, unknownCount: 0 }; // prettier-ignore
  return { title: 'A day of pouring', shots, margins: [], matches: [], references: [], totals };
}

const textOf = (plan: Plan, options: PlanTextOptions = {}) => planLines(plan, shoot, options).join('\n');

/** Lines whose columns hold this name. */
const rowOf = (text: string, name: string) => text.split('\n').find((line) => line.slice(5).startsWith(name))!;

describe('the plan of the demo as text', () => {
  const lines = planLines(demoPlan, demo.shoot);
  const text = lines.join('\n');

  test('begins with the title of the shoot', () => expect(lines[0]).toBe(demo.shoot.shoot.title));

  test('keeps every line within the page and leaves no blanks at its end', () => {
    for (const line of lines) {
      expect(columnsOf(line)).toBeLessThanOrEqual(PAGE_COLUMNS);
      expect(line).toBe(line.trimEnd());
    }
  });

  test('draws no boxes and has no colour', () => expect(text).not.toMatch(/[\u2500-\u257f\u001b]/));

  test('has a head for every shot, in order, with its number, title and id', () => {
    const heads = lines.filter((line) => /^\d/.test(line));
    expect(heads).toEqual(demoPlan.shots.map(({ number, title, id }) => `${String(number).padEnd(2)} ${title}  ${id}`));
  });

  test('prints every known margin as `marginWords` puts it', () => {
    const flat = text.replace(/\s+/g, ' ');
    for (const margin of demoPlan.shots.flatMap(({ margins }) => margins)) {
      const { name, figures, spare, band, state } = marginWords(margin);
      expect(flat).toContain([name, figures, spare, band, state].filter((part) => part !== '').join(' '));
    }
  });

  test('lists every assumption with its reason', () => {
    const flat = text.replace(/\s+/g, ' ');
    for (const { title, why } of demoPlan.shots.flatMap(({ assumed }) => assumed)) {
      expect(flat).toContain(title);
      expect(flat).toContain(why);
    }
  });

  test('ends with the totals and the storage', () => {
    const whole = lines.slice(lines.indexOf('The whole shoot')).join('\n');
    expect(whole).toContain(`${demoPlan.totals.takeCount} takes`);
    expect(whole).toMatch(/Storage +\S+ TB for \S+ GB/);
  });
});

describe('one shot', () => {
  test('settings are those to be called out: rate, shutter and angle, stop, index, format, lens, distance', () => {
    const text = textOf(planOf(shotLike()));
    expect(text).toContain('   1000 fps   shutter 1/4000 s (90°)   T8   EI 1600\n');
    expect(text).toContain('   Heron 4096 × 2304   Long macro at 620 mm, 410 mm clear\n');
  });

  test('the two clocks stand in one sentence: 25 fps over 1000 fps is forty times slower', () => {
    const clocks = { actionTime_s: 0.2, handles_s: 0.1, screenTime_s: 8, samples: [], playRate: { num: 25, den: 1 }, slowestFraction: 0.025, fastestFraction: 0.025 }; // prettier-ignore
    const text = textOf(planOf(shotLike({ clocks })));
    expect(text).toContain('200 ms of action with 100 ms before and after; 8 s on screen, 40 times slower');
  });

  test('a speed profile says how slow its slowest moment is', () => {
    const clocks = { actionTime_s: 2, handles_s: 0, screenTime_s: 8, samples: [], playRate: { num: 25, den: 1 }, slowestFraction: 1 / 32, fastestFraction: 1 }; // prettier-ignore
    expect(textOf(planOf(shotLike({ clocks })))).toContain(
      '2 s of action; 8 s on screen, at its slowest 32 times slower',
    );
  });

  test('short margins stand first, the shortest on top, and each state has its mark and word', () => {
    const margin = (id: Margin['id'], title: string, state: Margin['state'], value: number) =>
      marginLike({ id, title, state, stops: { value, low: value - 0.2, high: value + 0.2 } });
    const margins = [
      margin('frame-rate', 'Rate', 'spare', 0.8),
      margin('light', 'Light', 'short', -0.4),
      margin('depth', 'Depth', 'tight', 0.1),
      margin('blur', 'Blur', 'short', -1.1),
      unknownMargin({ id: 'focus', title: 'Focus' }),
    ];
    const rows = textOf(planOf(shotLike({ margins })))
      .split('\n')
      .filter((line) => / (short|tight|spare|unknown)( |$)/.test(line) && line.startsWith('   '))
      .slice(0, 5);
    expect(rows.map((row) => row.slice(3, 10).trim())).toEqual(['! Blur', '! Light', 'Rate', '~ Depth', '? Focus']);
  });

  test('hard limits are told from matters of taste', () => {
    const margins = [marginLike({ title: 'Wall', isHard: true }), marginLike({ id: 'blur', title: 'Fade' })];
    const text = textOf(planOf(shotLike({ margins })));
    expect(rowOf(text, 'Wall')).toMatch(/ hard$/);
    expect(rowOf(text, 'Fade')).toMatch(/ taste$/);
  });

  test('what is missing is named in its row, and listed once with its path', () => {
    const margins = [unknownMargin(), unknownMargin({ id: 'depth', title: 'Depth' })];
    const text = textOf(planOf(shotLike({ margins })));
    expect(rowOf(text, 'Light')).toContain('unknown  lacks Frame width');
    expect(text.match(/\/shots\/a\/frameWidth/g)).toHaveLength(1);
    expect(text).toContain('Frame width, not written yet: /shots/a/frameWidth');
  });

  test('a shot without settings says so', () => {
    const { settings: _, ...rest } = shotLike();
    expect(textOf(planOf(rest))).toContain('No settings yet');
  });

  test('cautions are printed with the shot', () => {
    const cautions = [{ key: 'own', says: 'Glass may break.' }];
    expect(textOf(planOf(shotLike({ cautions })))).toContain('   Take care: Glass may break.');
  });

  test('notes are printed with the shot', () => {
    expect(textOf(planOf(shotLike({ notes: ['The lens stands in its own light.'] })))).toContain(
      '   Note: The lens stands in its own light.',
    );
  });

  test('a name too long for its column moves the figures to the next line', () => {
    const detail = 'A version with a very long name indeed, for the screens above the entrance';
    const text = textOf(planOf(shotLike({ margins: [marginLike({ detail })] })));
    expect(text.replace(/\s+/g, ' ')).toContain(`Light, ${detail} 96 klx for 41 klx`);
    for (const line of text.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(PAGE_COLUMNS);
  });

  test('titles cannot act on the terminal', () => {
    expect(textOf(planOf(shotLike({ title: 'The \u001b[2Jpour' })))).not.toContain('\u001b');
  });

  test('the chosen shot alone is printed, with no totals', () => {
    const text = textOf(planOf(shotLike(), shotLike({ id: 'drop', title: 'The drop', number: 4 })), { only: 'drop' });
    expect(text).toContain('4  The drop');
    expect(text).not.toContain('The pour');
    expect(text).not.toContain('The whole shoot');
  });

  test('a shoot without shots says where shots are written', () => {
    expect(textOf(planOf())).toContain('No shots yet');
  });
});

describe('assumptions', () => {
  const assumption = (path: string) => ({ name: 'deadTime_s', title: 'Dead time', value: 1e-6, kind: undefined, why: 'no figure stated', path }); // prettier-ignore

  test('one that shots share is told once, with the shots it concerns', () => {
    const plan = planOf(
      shotLike({ assumed: [assumption('/shots/pour/x')] }),
      shotLike({ id: 'drop', number: 4, assumed: [assumption('/shots/drop/x')] }),
      shotLike({ id: 'splash', number: 5 }),
    );
    const text = textOf(plan).replace(/\s+/g, ' ');
    expect(text).toContain('Dead time 1 µs: no figure stated; shots 3, 4; to change it write /shots/*/x');
  });

  test('for one shot the path is the one to write', () => {
    const plan = planOf(shotLike({ assumed: [assumption('/shots/pour/x')] }));
    expect(textOf(plan)).toContain('Dead time 1 µs: no figure stated; to change it write /shots/pour/x');
  });
});

describe('ways', () => {
  const way = (given: Partial<Way> = {}): Way => ({
    move: 'more-light',
    title: 'Bring the key to 100 klx',
    says: 'lamps and heat to match',
    patch: [{ op: 'add', path: '/lighting/key/illuminance', value: '100 klx' }],
    stops: 0.1,
    gain_stops: 1.3,
    closes: true,
    breaks: [],
    touchesFixed: false,
    gives_stops: 1.3,
    margins: [],
    effects: [{ id: 'noise', title: 'Noise', change_stops: -0.4, state: 'tight' }],
    cost: 1,
    ...given,
  });
  const short = marginLike({ have: 41_000, need: 96_000, state: 'short', stops: { value: -1.2, low: -1.4, high: -1 } });
  const textWith = (...ways: readonly Way[]) =>
    textOf(planOf(shotLike({ margins: [short] })), { ways: new Map([['pour', new Map([['light', ways]])]]) });

  test('say what to write, what it gains and what else it moves', () => {
    const text = textWith(way());
    expect(text).toContain('Ways to close Light  41 klx for 96 klx  −1.2');
    expect(text).toContain('1  Bring the key to 100 klx: +1.3, closes it');
    expect(text).toContain('also moves noise −0.4 tight');
    expect(text).toContain('write /lighting/key/illuminance: 100 klx');
  });

  test('say when they touch what was fixed', () => {
    expect(textWith(way({ touchesFixed: true }))).toContain('changes what was fixed');
  });

  test('that only help say how much is still short', () => {
    expect(textWith(way({ closes: false, stops: -0.5 }))).toContain('still 0.5 short');
  });

  test('beyond five are counted', () => {
    const text = textWith(...Array.from({ length: 7 }, () => way()));
    expect(text).toContain('and 2 more, all of them in --json');
  });

  test('none at all is said', () => expect(textWith()).toContain('No single change found that helps.'));
});

test('colour dresses words and moves none of them', () => {
  const dress = (text: string) => `<${text}>`;
  const ink = { ...PLAIN, strong: dress, short: dress, tight: dress, spare: dress, unknown: dress, faint: dress };
  const dressed = planLines(demoPlan, demo.shoot, { ink });
  const bare = dressed.map((line) => line.replaceAll(/[<>]/g, '').trimEnd());
  expect(bare).toEqual(planLines(demoPlan, demo.shoot));
});
