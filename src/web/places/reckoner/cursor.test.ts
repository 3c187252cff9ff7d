import { describe, expect, test } from 'vitest';
import { lawNamed } from '../../../laws/catalogue.ts';
import { exampleOf, inputsOf, resultsOf } from '../../../laws/law.ts';
import { cursorNumber, tell } from './cursor.ts';
import { exampleTexts, readTexts } from './lawText.ts';
import { work } from './work.ts';

const of = lawNamed('light-needed')!;
const input = (name: string) => inputsOf(of).find((each) => each.name === name)!;
const telling = {
  of,
  given: exampleOf(of),
  fields: [input('stop'), input('exposureTime_s')],
  result: resultsOf(of)[0]!,
  system: 'metric',
} as const;

describe('what a picture says', () => {
  test('is the law as things stand, where nobody points', () => {
    expect(tell(telling)).toMatchObject({ where: 'T8, 1/2000 s', says: '40 klx', isRefused: false });
  });

  test('is the law with what is pointed at in the place of what is given', () => {
    expect(tell(telling, { stop: 'T16' })).toMatchObject({ where: 'T16, 1/2000 s', says: '160 klx' });
  });

  test('is why there is no answer, in words, where the law refuses', () => {
    const told = tell(telling, { exposureTime_s: '0 s' });
    expect(told).toMatchObject({ isRefused: true, says: 'Exposure time must be above zero; it is 0 s' });
    expect(told.value).toBeUndefined();
  });

  test('names a default that nobody has given', () => {
    const fields = [input('meterConstant_lx_s')];
    expect(tell({ ...telling, fields }).where).toBe('250 lx·s');
  });
});

test('a cursor stands where its text says, and nowhere for other inputs', () => {
  const cursor = { texts: { stop: 'T11' }, isByKey: true };
  expect(cursorNumber(cursor, input('stop'))).toBeCloseTo(2 ** 3.5, 12);
  expect(cursorNumber(cursor, input('isoSpeed'))).toBeUndefined();
  expect(cursorNumber(undefined, input('stop'))).toBeUndefined();
});

describe('a form worked out', () => {
  const reading = (texts: Readonly<Record<string, string>>) => readTexts(of, { texts, before: {}, system: 'metric' });

  test('has its results by name', () => {
    expect(work(of, reading(exampleTexts(of)), 'metric')).toEqual({
      values: { illuminance_lx: 40_000 },
      refusal: undefined,
    });
  });

  test('has neither results nor a refusal while an input is missing or cannot be read', () => {
    const none = { values: undefined, refusal: undefined };
    expect(work(of, reading({ stop: 'T8' }), 'metric')).toEqual(none);
    expect(work(of, reading({ ...exampleTexts(of), stop: 'wide open' }), 'metric')).toEqual(none);
  });

  test('says why the law refuses', () => {
    const { values, refusal } = work(of, reading({ ...exampleTexts(of), isoSpeed: '0' }), 'metric');
    expect(values).toBeUndefined();
    expect(refusal).toBe('Exposure index must be above zero; it is 0');
  });
});
