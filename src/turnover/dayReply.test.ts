import { describe, expect, test } from 'vitest';
import { dayRead, dayWith, dayWritten, TWO_SHOTS } from '../../test/days.ts';
import { changed, DEMO } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import { dayReply } from './dayReply.ts';
import { dayLines } from './dayText.ts';
import { DayReply } from './planSchema.ts';

const broken = readShoot(
  changed(TWO_SHOTS, { '/shots/one/times/review': 'long', '/kit/cameras/body/saveRate': 'fast' }),
);
const brokenDay = dayRead(broken.shoot, { dayCount: 5 });

const DAYS = [
  ['the demo', dayWritten(DEMO, { dayCount: 30 }), []],
  ['a day with nothing set', dayWith({ '/shoot/day': {}, '/kit/drives': undefined, '/kit/products': undefined, '/shots/two/hero': undefined }), []],
  ['a day half done, with meals and elements', dayWith({ '/shoot/day/now': '01:00', '/shoot/day/wrap': '02:00', '/shots/one/soFar': { done: true }, '/shots/two/elements': ['Plate'], '/shoot/day/meals': ['01:30'] }), []],
  ['a day with problems', brokenDay, broken.problems],
  ['an empty day', dayWritten({ longsecond: 1 }), []],
] as const; // prettier-ignore

describe.each(DAYS)('%s', (_, day, problems) => {
  const reply = dayReply('Title', day, problems);

  test('fits its schema, and survives being printed', () => {
    expect(DayReply.safeParse(JSON.parse(JSON.stringify(reply))).error).toBeUndefined();
  });

  test('has its keys in the order of the schema', () => {
    expect(JSON.stringify(reply)).toBe(JSON.stringify(DayReply.parse(reply)));
  });

  test('is told in lines without a trailing blank, with every sentence and warning in them', () => {
    const text = dayLines('Title', day);
    expect(text.filter((line) => line !== line.trimEnd())).toEqual([]);
    const words = text.join(' ').replaceAll(/\s+/g, ' ');
    for (const { says } of day.warnings) expect(words).toContain(says.slice(0, 40));
    for (const { path } of [...day.missing, ...day.assumed]) expect(words).toContain(path);
  });
});

test('numbers are the day’s own, to nine digits', () => {
  const day = dayWritten(DEMO, { dayCount: 30 });
  const reply = dayReply('Demo', day, []);
  expect(reply.wrap.late_s).toBeCloseTo(day.wrap.late_s, 3);
  expect(reply.blocks).toHaveLength(day.blocks.length);
  expect(reply.shots.map(({ shotId }) => shotId)).toEqual([...day.order]);
});

test('what cannot be read is named', () => {
  expect(brokenDay.missing.map(({ path }) => path)).toEqual(expect.arrayContaining(['/shots/one/times/review', '/kit/cameras/body/saveRate'])); // prettier-ignore
  expect(dayLines('x', brokenDay).join('\n')).toContain('Missing');
});
