import { describe, expect, test } from 'vitest';
import { changed, readSound, SMALL } from '../../test/shoots.ts';
import { applyPatch } from '../document/patch.ts';
import type { Written, WrittenRecord } from '../document/written.ts';
import { planShoot } from './plan.ts';
import { DARK_REFERENCE } from './references.ts';

const ONE = (SMALL['shots'] as WrittenRecord)['one'] as WrittenRecord;
const withPlate = (plate: Readonly<Record<string, Written>>, more: Readonly<Record<string, Written | undefined>> = {}) =>
  changed(SMALL, { '/shots/plate': { ...ONE, title: 'Plate', matches: 'one', ...plate }, ...more }); // prettier-ignore
const matchIn = (written: Written) => planShoot(readSound(written)).matches;

describe('a plate', () => {
  test('with the same settings matches', () => {
    expect(matchIn(withPlate({}))).toEqual([{ shotId: 'plate', matchesId: 'one', differences: [] }]);
  });

  test('shot at another rate and stop does not, and says both values of each', () => {
    const [match] = matchIn(withPlate({ stop: 'T16', rate: 100 }, { '/shots/one/stop': 'T8', '/shots/one/rate': 400 }));
    expect(match!.differences.map(({ what, here, there }) => [what, here, there])).toEqual(
      expect.arrayContaining([
        ['stop', 'T16', 'T8'],
        ['rate', '100 fps', '400 fps'],
      ]),
    );
  });

  test('may differ in what it was allowed to', () => {
    const plate = { rate: 100, shutter: '1/2000 s', index: 800, stop: 'T8', mayDiffer: ['rate'] };
    const [match] = matchIn(withPlate(plate, { '/shots/one/rate': 400, '/shots/one/shutter': '1/2000 s', '/shots/one/index': 800, '/shots/one/stop': 'T8' })); // prettier-ignore
    expect(match!.differences).toEqual([]);
  });

  test('framed otherwise, or under other light, does not match', () => {
    const side = { title: 'Side', illuminance: '40 klx' };
    const [match] = matchIn(withPlate({ frameWidth: '300 mm', lighting: 'side' }, { '/lighting/side': side }));
    expect(match!.differences.map(({ what }) => what)).toEqual(expect.arrayContaining(['distance', 'lighting']));
    expect(match!.differences.find(({ what }) => what === 'lighting')).toMatchObject({ here: 'Side', there: 'Key' });
  });

  test('is brought to match by the changes that come with its differences', () => {
    const written = withPlate(
      { frameWidth: '300 mm', stop: 'T16', rate: 100, shutter: '1/500 s', index: 400 },
      { '/shots/one/stop': 'T8', '/shots/one/rate': 400, '/shots/one/shutter': '1/2000 s', '/shots/one/index': 800 },
    );
    const [match] = matchIn(written);
    expect(match!.differences).toHaveLength(5);
    const mended = applyPatch(written, match!.differences.flatMap(({ patch }) => patch)) as WrittenRecord; // prettier-ignore
    expect(matchIn(mended)[0]!.differences).toEqual([]);
  });

  test('of itself, or of a shot that cannot be settled, is not judged', () => {
    expect(matchIn(changed(SMALL, { '/shots/one/matches': 'one' }))).toEqual([]);
    expect(matchIn(withPlate({}, { '/shots/one/screenTime': undefined }))).toEqual([]);
  });
});

describe('reference rolls', () => {
  const due = (more: Readonly<Record<string, Written | undefined>>) =>
    planShoot(readSound(changed(SMALL, more))).references.map(({ shotId, what, because }) => [shotId, what, because]);
  const two = (more: Readonly<Record<string, Written>>) => ({ ...ONE, title: 'Two', ...more });

  test('that a shot asks for are owed', () => {
    expect(due({ '/shots/one/references': ['Grey card'] })).toEqual([['one', 'Grey card', 'asked for by this shot']]);
  });

  test('are not owed again by a shot with the very same settings', () => {
    expect(due({ '/defaults/references': ['Grey card'], '/shots/two': two({}) })).toHaveLength(1);
  });

  test('are due again when a setting changed, which they name', () => {
    const side = { title: 'Side', illuminance: '40 klx ± 5 %', reading: 'metered' };
    const list = due({ '/defaults/references': ['Grey card'], '/lighting/side': side, '/shots/two': two({ lighting: 'side', stop: 'T8' }), '/shots/one/stop': 'T11', '/shots/one/index': 800, '/shots/two/index': 800 }); // prettier-ignore
    expect(list).toEqual([
      ['one', 'Grey card', 'asked for by this shot'],
      ['two', 'Grey card', 'stop and light changed since One'],
    ]);
  });

  test('of the dark are due for each body, and again after the changes its camera names', () => {
    const rule = { '/kit/cameras/body/darkReference': ['mode', 'shutter'] };
    expect(due({ ...rule, '/shots/two': two({ stop: 'T16' }) })).toEqual([
      ['one', DARK_REFERENCE, 'first roll of Body'],
    ]);
    expect(due({ ...rule, '/shots/one/shutter': '1/2000 s', '/shots/two': two({ shutter: '1/4000 s' }) })).toEqual([
      ['one', DARK_REFERENCE, 'first roll of Body'],
      ['two', DARK_REFERENCE, 'shutter changed since One'],
    ]);
  });
});
