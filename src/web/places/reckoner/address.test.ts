import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, lawNamed } from '../../../laws/catalogue.ts';
import { inputsOf } from '../../../laws/law.ts';
import { readSearch, writeSearch } from '../../searchText.ts';
import { OWN_NAMES, readAsked, shortName, writeAsked } from './address.ts';

const LIGHT = lawNamed('light-needed')!;

test('an address names inputs without their units', () => {
  const asked = { texts: { stop: 'T8', exposureTime_s: '1/2000 s', isoSpeed: '800' }, over: 'exposureTime_s' };
  expect(writeSearch(writeAsked(LIGHT, asked))).toBe('?stop=T8&exposureTime=1/2000+s&isoSpeed=800&over=exposureTime');
});

test('an input named with its unit is known as well', () => {
  expect(readAsked(LIGHT, { exposureTime_s: '1/500 s' }).asked.texts).toEqual({ exposureTime_s: '1/500 s' });
});

test('what the law does not take is told, not dropped in silence', () => {
  const { asked, strays } = readAsked(LIGHT, { stop: 'T8', shutter: '180°', over: 'shutter', units: 'cubits' });
  expect(strays).toEqual(['shutter=180°']);
  expect(asked).toEqual({ texts: { stop: 'T8' }, over: undefined, and: undefined, of: undefined, units: undefined });
});

test('an empty field leaves no trace in the address', () => {
  expect(writeAsked(LIGHT, { texts: { stop: ' ', isoSpeed: '400' } })).toEqual({ isoSpeed: '400' });
});

describe.each(CATALOGUE.map((law) => [law.id, law] as const))('%s', (_, law) => {
  test('has names in addresses that are all different, and none of the page’s own', () => {
    const short = Object.keys(law.takes).map((name) => shortName(law, name));
    expect(new Set(short).size).toBe(short.length);
    for (const own of OWN_NAMES) expect(short).not.toContain(own);
  });

  test('comes back from its address with every text, unit and picture', () => {
    const names = inputsOf(law).map(({ name }) => name);
    const texts = fc.dictionary(fc.constantFrom(...names), fc.stringMatching(/^\S.{0,20}\S$/));
    const picked = fc.option(fc.constantFrom(...names), { nil: undefined });
    const asked = fc.record({
      texts,
      over: picked,
      and: picked,
      of: fc.option(fc.constantFrom(...Object.keys(law.gives)), { nil: undefined }),
      units: fc.constantFrom('metric' as const, 'imperial' as const, undefined),
    });
    fc.assert(
      fc.property(asked, (all) => {
        const address = writeSearch(writeAsked(law, all));
        expect(readAsked(law, readSearch(address))).toEqual({ asked: { ...all, texts: { ...all.texts } }, strays: [] });
      }),
      { numRuns: 20 },
    );
  });
});
