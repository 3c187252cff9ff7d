import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, DEMO, readSound, SMALL } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { planShoot, shotOrder } from './plan.ts';
import type { Plan, ShotPlan } from './types.ts';

const planOf = (written: Written): Plan => planShoot(readShoot(written).shoot);
const byId = ({ shots }: Plan): Readonly<Record<string, ShotPlan>> =>
  Object.fromEntries(shots.map((shot) => [shot.id, shot]));
const IDS = Object.keys(DEMO['shots'] as object);

describe('the order of shots', () => {
  test('is the stated one, then the rest as written, each once', () => {
    const order = ['honey', 'pour-1'];
    expect(shotOrder(readSound(changed(DEMO, { '/order/shots': order })))).toEqual([...order, ...IDS.filter((id) => !order.includes(id))]); // prettier-ignore
    expect(shotOrder(readSound(changed(DEMO, { '/order': undefined })))).toEqual(IDS);
  });

  test('passes over shots that are not there', () => {
    expect(shotOrder(readShoot(changed(DEMO, { '/order/shots': ['gone', 'honey'] })).shoot)[0]).toBe('honey');
  });

  test('numbers the plans from one', () => {
    const plan = planOf(changed(DEMO, { '/order/shots': ['ramp', 'honey'] }));
    expect(plan.shots.map(({ id, number }) => [id, number]).slice(0, 2)).toEqual([['ramp', 1], ['honey', 2]]);
  }); // prettier-ignore

  test('changes nothing in a plan but its number', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(IDS), (order) => {
        const shuffled = byId(planOf(changed(DEMO, { '/order/shots': order })));
        for (const [id, plan] of Object.entries(byId(planOf(DEMO))))
          expect({ ...shuffled[id]!, number: 0 }).toEqual({ ...plan, number: 0 });
      }),
      { numRuns: 3 },
    );
  });
});

describe('plans are kept', () => {
  /** Ids of shots whose plan is another object after a change. */
  const planned = (changes: Readonly<Record<string, Written | undefined>>): readonly string[] => {
    const before = planOf(DEMO);
    const after = byId(planOf(changed(DEMO, changes)));
    return before.shots.filter((shot) => after[shot.id] !== shot).map(({ id }) => id);
  };

  test('for all but the shot that was edited', () => {
    for (const id of IDS) expect(planned({ [`/shots/${id}/depth`]: '4 mm' })).toEqual([id]);
  });

  test('where nothing was edited that they are made from', () => {
    expect(planned({})).toEqual([]);
    expect(planned({ '/shoot/title': 'Another name', '/board/b1/words': 'More amber.', '/kit/drives/raid/used': '1 TB' })).toEqual([]); // prettier-ignore
  });

  test('but not where light, kit, deliverables, defaults or the meter changed', () => {
    expect(planned({ '/lighting/soft-side/illuminance': '22 klx' })).toEqual(['honey']);
    expect(planned({ '/lighting/top-key/illuminance': '70 klx' })).toEqual(['crown', 'quinces', 'ramp', 'shatter']);
    for (const path of [
      '/kit/cameras/heron/readNoise',
      '/kit/lenses/macro-65/closeFocus',
      '/kit/attachments/splash-glass/loss',
      '/deliverables/film/rate',
      '/defaults/handles',
      '/shoot/meterConstant',
    ])
      // prettier-ignore
      expect([path, planned({ [path]: undefined })]).toEqual([path, IDS]);
  });

  test('but not where the meter constant is now unreadable', () => {
    const without = changed(DEMO, { '/shoot/meterConstant': undefined });
    const untold = planOf(without);
    const unread = planOf(changed(without, { '/shoot/meterConstant': 'the usual' }));
    expect(byId(unread)['honey']).not.toBe(byId(untold)['honey']);
    expect(byId(unread)['honey']!.margins.find(({ id }) => id === 'light')!.state).toBe('unknown');
  });

  test('and are what planning from scratch gives', () => {
    fc.assert(
      fc.property(fc.constantFrom(...IDS), fc.integer({ min: 1, max: 40 }), (id, depth_mm) => {
        const written = changed(DEMO, { [`/shots/${id}/depth`]: `${depth_mm} mm` });
        expect(planOf(written)).toEqual(planOf(structuredClone(written)));
      }),
      { numRuns: 4 },
    );
  });

  test('through an edit and its undo', () => {
    const before = planOf(DEMO);
    const edited = planOf(changed(DEMO, { '/shots/honey/depth': '4 mm' }));
    const undone = planOf(DEMO);
    expect(undone.shots).toEqual(before.shots);
    expect(undone.shots.map((shot, i) => shot === edited.shots[i])).toEqual(
      edited.shots.map(({ id }) => id !== 'honey'),
    );
  });
});

describe('totals', () => {
  const { totals, shots, margins: whole } = planOf(DEMO);

  test('add what the shots hold, each take that is kept counted', () => {
    const written = DEMO['shots'] as Readonly<Record<string, { readonly takes?: number; readonly kept?: number }>>;
    // The defaults plan four takes and keep two.
    const kept = (id: string) => written[id]!.kept ?? 2;
    expect([kept('crown'), kept('honey')]).toEqual([3, 2]);
    expect(totals.takeCount).toBe(IDS.reduce((sum, id) => sum + (written[id]!.takes ?? 4), 0));
    expect(totals.keptSize_B).toBeCloseTo(shots.reduce((sum, { id, keptSize_B }) => sum + keptSize_B! * kept(id), 0), 3);
    expect(totals.saveTime_s).toBeCloseTo(shots.reduce((sum, { id, saveTime_s }) => sum + saveTime_s! * kept(id), 0), 9);
    expect(totals.screenTime_s).toBeCloseTo(7 + 5 + 6 + 8 + 6 + 2 + 4 + 3 + 6 + 5 + 4, 1);
  }); // prettier-ignore

  test('count the margins of every state', () => {
    const count = (state: string) => [...shots.flatMap(({ margins }) => margins), ...whole].filter((margin) => margin.state === state).length; // prettier-ignore
    expect([totals.shortCount, totals.tightCount, totals.unknownCount]).toEqual([count('short'), count('tight'), count('unknown')]); // prettier-ignore
    expect(totals.shortCount).toBeGreaterThan(0);
  });
});

test('an empty document has an empty plan', () => {
  expect(planOf({ longsecond: 1 })).toEqual({
    title: 'Untitled shoot',
    shots: [],
    margins: [],
    matches: [],
    references: [],
    totals: { screenTime_s: 0, takeCount: 0, keptSize_B: 0, saveTime_s: 0, shortCount: 0, tightCount: 0, unknownCount: 0 }, // prettier-ignore
  });
});

test('a shot of which nothing is written names all that is missing, and plans the rest', () => {
  const plan = planOf(changed(SMALL, { '/shots/two': {} }));
  const [one, two] = plan.shots;
  expect(one!.settings).toBeDefined();
  expect(two!.missing.map(({ path }) => path)).toEqual(
    expect.arrayContaining(['/shots/two/screenTime', '/shots/two/action/duration', '/shots/two/frameWidth']),
  );
});
