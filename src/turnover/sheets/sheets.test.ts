import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sourceOf } from '../../../test/sheets.ts';
import { changed, DEMO, readSound, SMALL } from '../../../test/shoots.ts';
import { DUTIES } from '../../document/schema.ts';
import type { WrittenRecord } from '../../document/written.ts';
import { planShoot } from '../../plan/plan.ts';
import { columnsOf, PAGE_COLUMNS } from '../lines.ts';
import { marginWords } from '../words.ts';
import { peopleOf } from './morningSheet.ts';
import type { Block, Sheet, Source } from './sheet.ts';
import { sheetsFor } from './sheets.ts';
import { sheetLines } from './sheetText.ts';

const demo = sourceOf(DEMO);
const everything = (source: Source): readonly Sheet[] => [
  ...sheetsFor(source, { sheet: 'card' }),
  ...sheetsFor(source, { sheet: 'plan' }),
  ...sheetsFor(source, { sheet: 'morning' }),
  ...sheetsFor(source, { sheet: 'cues' }),
  ...sheetsFor(source, { sheet: 'day' }),
  ...sheetsFor(source, { sheet: 'dressing' }),
  ...Object.keys(DUTIES).flatMap((duty) => sheetsFor(source, { sheet: 'morning', duty })),
];

const text = (sheet: Sheet): string => sheetLines(sheet).join('\n');
const flat = (sheet: Sheet): string => text(sheet).replace(/\s+/g, ' ');
const blocksOf = <Name extends Block['block']>({ blocks }: Sheet, name: Name) =>
  blocks.filter((block): block is Extract<Block, { readonly block: Name }> => block.block === name);
const without = (written: WrittenRecord, key: string): WrittenRecord =>
  Object.fromEntries(Object.entries(written).filter(([name]) => name !== key));
const noCrew = sourceOf(without(DEMO, 'crew'));

describe('the card of a shot', () => {
  test.each(demo.plan.shots.map((shot) => [shot.id, shot] as const))(
    'of %s carries every limit, the short ones first, and every caution',
    (id, shot) => {
      const [card] = sheetsFor(demo, { sheet: 'card', shot: id });
      const rows = blocksOf(card!, 'bars')[0]!.rows;
      const words = blocksOf(card!, 'paragraph').map((block) => block.words);
      const ample = words.find((each) => each.startsWith('More than two stops to spare')) ?? '';
      for (const margin of shot.margins) {
        const isDrawn = rows.some(({ name }) => name === marginWords(margin).name);
        const isNamed = ample.includes(margin.title.toLowerCase());
        expect([margin.id, isDrawn !== isNamed]).toEqual([margin.id, true]);
        if (isNamed) expect([margin.state, margin.stops!.low >= 2]).toEqual(['spare', true]);
      }
      const firstOther = rows.findIndex(({ state }) => state !== 'short');
      expect(rows.slice(firstOther).every(({ state }) => state !== 'short')).toBe(true);
      const says = blocksOf(card!, 'caution').flatMap((block) => block.says);
      for (const caution of shot.cautions) expect(says).toContain(caution.says);
    },
  );

  test('prints the settings as the plan has them, and as they are called out', () => {
    const source = sourceOf(changed(SMALL, { '/shots/one/stop': 'T5.6⅓', '/shots/one/shutter': '1/2000 s' }));
    const [card] = sheetsFor(source, { sheet: 'card', shot: 'one' });
    const [large] = blocksOf(card!, 'figures');
    expect(large!.figures.map(({ number }) => number)).toEqual(expect.arrayContaining(['1/2000', 'T5.6⅓']));
  });

  test('comes with takes to keep, rolls owed, elements and rigs to tick off', () => {
    const source = sourceOf(
      changed(SMALL, {
        '/shots/one/references': ['Grey card'],
        '/shots/one/elements': ['Clean plate'],
        '/kit/rigs': { drop: { title: 'Dropper', latency: '12 ms ± 1 ms' } },
        '/shots/one/rigs': ['drop'],
        '/shots/one/kept': 2,
      }),
    );
    const card = flat(sheetsFor(source, { sheet: 'card', shot: 'one' })[0]!);
    for (const words of ['[ ] Grey card', '[ ] Clean plate', '[ ] Dropper (moves 12 ms ± 1 ms', '3, 2 to keep'])
      expect(card).toContain(words);
  });

  test('says how long the product lasts in the light, that it was worked out, and how slow its lamps are', () => {
    const melting = {
      '/kit/lamps': {
        arc: {
          title: 'Arc',
          kind: 'discharge',
          warmUp: '3 min',
          restrike: '10 min',
          illuminance: '90 klx',
          distance: '2 m',
          beam: '20°',
          field: '35°',
        },
      },
      '/lighting/key': { title: 'Key', lamps: { rim: { title: 'Rim', lamp: 'arc', at: '0 m, -2 m, 0 m' } } },
      '/kit/products': { curl: { title: 'Curl', warms: 'dark-chocolate', start: '18 °C', thickness: '2 mm' } },
      '/shoot/air': '18 °C',
      '/shots/one/hero': { product: 'curl', lightOn: '1 min' },
    };
    const source = sourceOf(changed(SMALL, melting));
    // 44 200 J/m² over 0.9 · 90 000 / 90 W/m².
    const card = flat(sheetsFor(source, { sheet: 'card', shot: 'one' })[0]!);
    expect(card).toContain(
      'at least 49 s, worked out from the light; up to 1.6 min is as credible; a take lights it for 1 min',
    );
    expect(card).toContain('Lamps to full 3 min before the roll: Rim takes that long to steady.');
    const product = sheetsFor(source, { sheet: 'morning', duty: 'product' }).map(flat).join(' ');
    expect(product).toContain('at least 49 s');
    expect(product).toContain('worked out from the light');
    const light = sheetsFor(source, { sheet: 'morning', duty: 'light' }).map(flat).join(' ');
    expect(light).toContain('Do not put Rim out between takes: 10 min before it lights again.');
    const written = sourceOf(changed(SMALL, { ...melting, '/shots/one/hero/life': '8 min' }));
    expect(flat(sheetsFor(written, { sheet: 'card', shot: 'one' })[0]!)).toContain('8 min, a take lights it for 1 min');
  });

  test('a caution never stands without deferring to local codes', () => {
    for (const sheet of everything(demo))
      for (const { says } of blocksOf(sheet, 'caution')) expect(says[says.length - 1]).toContain('local codes');
  });

  test('nothing on any sheet is called safe; a safety call is only a call', () => {
    for (const sheet of everything(demo)) expect(text(sheet)).not.toMatch(/\bsafe(ly|ty(?! calls?\b))?\b/i);
  });

  test('says what is missing where there is no answer yet', () => {
    const source = sourceOf({ longsecond: 1, shots: { a: { title: 'A thing falls' } } });
    const card = flat(sheetsFor(source, { sheet: 'card' })[0]!);
    expect(card).toContain('No settings yet');
    expect(card).toMatch(/Missing: .*camera/);
  });
});

describe('the plan on paper', () => {
  test('has a row for each shot, and every short limit of the plan', () => {
    const [sheet] = sheetsFor(demo, { sheet: 'plan' });
    const tables = blocksOf(sheet!, 'table');
    expect(tables[0]!.rows).toHaveLength(demo.plan.shots.length);
    expect(tables[1]!.rows).toHaveLength(demo.plan.totals.shortCount);
  });

  test('says whether the board adds up to the film', () => {
    const at = (length: string) =>
      flat(
        sheetsFor(
          sourceOf(
            changed(SMALL, { '/deliverables/film/length': length, '/board': { b1: { seconds: '4 s' }, b2: { seconds: '5 s' } } }),
          ),
          { sheet: 'plan' },
        )[0]!,
      ); // prettier-ignore
    expect(at('9 s')).toContain('The frames come to 9 s of 9 s (Film): it fits.');
    expect(at('8 s')).toContain('1 s too long');
    expect(at('12 s')).toContain('3 s not filled yet');
  });
});

describe('morning sheets', () => {
  test('with no crew written there is one for each duty', () => {
    expect(peopleOf(noCrew.shoot).map(({ id }) => id)).toEqual(Object.keys(DUTIES));
  });

  test('with a crew each person has one with all they look after, and a duty nobody has keeps its own', () => {
    const { shoot } = sourceOf(
      changed(SMALL, {
        '/crew': {
          ada: { title: 'Ada', does: ['data', 'camera'] },
          bo: { title: 'Bo', does: ['production', 'light', 'product'] },
        },
      }),
    );
    expect(peopleOf(shoot).map(({ id, duties }) => [id, duties])).toEqual([
      ['ada', ['camera', 'data']],
      ['bo', ['production', 'light', 'product']],
      ['rigs', ['rigs']],
    ]);
  });

  test('camera: what is changed by hand before each shot, and nothing where nothing changes', () => {
    const two = changed(SMALL, { '/shots/two': { ...((SMALL['shots'] as WrittenRecord)['one'] as WrittenRecord), title: 'Two' } }); // prettier-ignore
    const [sheet] = sheetsFor(sourceOf(two), { sheet: 'morning', duty: 'camera' });
    const [first, second] = blocksOf(sheet!, 'ticks')[0]!.items;
    expect(first!.words).toContain('lens Macro');
    expect(second!.words).toBe('Shot 2: nothing to move');
  });

  test('light: needed, there and stops are those of the plan’s light margin, in lux or in footcandles', () => {
    for (const [system, unit] of [['metric', 'lx'], ['imperial', 'fc']] as const) {
      const source = sourceOf(SMALL, system);
      const margin = source.plan.shots[0]!.margins.find(({ id }) => id === 'light')!;
      const { have, need } = marginWords(margin, system);
      const row = blocksOf(sheetsFor(source, { sheet: 'morning', duty: 'light' })[0]!, 'table')[0]!.rows[0]!;
      expect(row[2]!.words).toBe(`${need!.number} ${need!.unit}`);
      expect(row[3]!.words).toBe(`${have!.number} ${have!.unit}`);
      expect(need!.unit).toContain(unit);
    }
  }); // prettier-ignore

  test('product: pieces are takes times pieces a take', () => {
    const source = sourceOf(
      changed(SMALL, {
        '/kit/products': { egg: { title: 'Egg', pieces: 10 } },
        '/shots/one/hero/product': 'egg',
        '/shots/one/hero/perTake': 2,
        '/shots/one/takes': 7,
      }),
    );
    const sheet = flat(sheetsFor(source, { sheet: 'morning', duty: 'product' })[0]!);
    expect(sheet).toContain('[ ] Shot 1: Egg, 14 pieces (7 takes of 2)');
    expect(sheet).toContain('10 pieces on hand');
  });

  test('data: what all takes weigh is a take times those kept', () => {
    const source = sourceOf(changed(SMALL, { '/shots/one/kept': 3 }));
    const size_B = source.plan.shots[0]!.keptSize_B!;
    const [table] = blocksOf(sheetsFor(source, { sheet: 'morning', duty: 'data' })[0]!, 'table');
    const told = (words: string) => Number(words.split(' ')[0]) * { kB: 1e3, MB: 1e6, GB: 1e9 }[words.split(' ')[1]!]!;
    expect(told(table!.rows[0]![3]!.words) / size_B).toBeCloseTo(1, 2);
    expect(told(table!.rows[0]![5]!.words) / (3 * size_B)).toBeCloseTo(1, 2);
  });

  test('production: hired kit comes with its price, and only what a shot uses is summed', () => {
    const source = sourceOf(
      changed(SMALL, {
        '/kit/lenses/macro/availability': 'hire',
        '/kit/lenses/macro/dayPrice': 85,
        '/shots/one/lens': 'macro',
        '/kit/rigs': { arm: { title: 'Arm', availability: 'hire', dayPrice: 400 } },
      }),
    );
    const sheet = flat(sheetsFor(source, { sheet: 'morning', duty: 'production' })[0]!);
    expect(sheet).toMatch(/Macro shot 1 85 a day/);
    expect(sheet).toMatch(/Arm no shot as planned 400 a day/);
    expect(sheet).toMatch(/What shots are planned with 85 a day/);
  });

  test('rigs: who arms, fires, stops and clears is left to be written in', () => {
    const source = sourceOf(changed(SMALL, { '/kit/rigs': { drop: { title: 'Dropper' } }, '/shots/one/rigs': ['drop'] })); // prettier-ignore
    const [lines] = blocksOf(sheetsFor(source, { sheet: 'morning', duty: 'rigs' })[0]!, 'lines');
    expect(lines!.labels).toEqual(['Armed by', 'Fired by', 'Stopped by', 'Cleared by']);
  });
});

describe('what cannot be printed', () => {
  test('a shot that is not there is refused, with the nearest by name', () => {
    expect(() => sheetsFor(demo, { sheet: 'card', shot: 'crwn' })).toThrow(expect.objectContaining({ code: 'sheet.unknown-shot', mend: 'Did you mean crown?' })); // prettier-ignore
  });

  test('a duty that nobody has heard of is refused, with the nearest by name', () => {
    expect(() => sheetsFor(noCrew, { sheet: 'morning', duty: 'ligth' })).toThrow(expect.objectContaining({ code: 'sheet.unknown-duty', mend: 'Did you mean light?' })); // prettier-ignore
  });

  test('a shoot without shots still has every sheet, each of which says so', () => {
    for (const sheet of everything(sourceOf({ longsecond: 1 }))) expect(flat(sheet)).toMatch(/No shots yet|Nothing is planned yet|No cues yet|No shot of the day|Nothing is left to be shot/); // prettier-ignore
  });
});

describe('whatever is written', () => {
  const words = fc.string({ minLength: 1, maxLength: 200, unit: fc.constantFrom('a', 'Q', ' ', 'W', 'é', '–', 'x') });

  test('no title, however long, makes a line wider than a page, and none of its words is lost', () => {
    fc.assert(
      fc.property(words, (title) => {
        const source = sourceOf(changed(SMALL, { '/shots/one/title': title, '/shoot/title': title }));
        for (const sheet of everything(source))
          for (const line of sheetLines(sheet)) {
            if (line.trim().includes(' ')) expect(columnsOf(line)).toBeLessThanOrEqual(PAGE_COLUMNS);
          }
        const card = text(sheetsFor(source, { sheet: 'card', shot: 'one' })[0]!).replace(/\s/g, '');
        expect(card).toContain(title.trim().replace(/\s/g, ''));
      }),
      { numRuns: 15 },
    );
  });

  test('every row of a table has a cell for each of its columns', () => {
    const sheets = [DEMO, SMALL, { longsecond: 1, shots: { a: {}, b: null } }].flatMap((written) => everything(sourceOf(written))); // prettier-ignore
    for (const sheet of sheets)
      for (const { columns, rows, total } of blocksOf(sheet, 'table'))
        for (const row of [...rows, ...(total ? [total] : [])]) expect(row).toHaveLength(columns.length);
  });

  test('the same shoot makes the same sheets', () => {
    expect(everything(sourceOf(DEMO))).toEqual(everything(sourceOf(structuredClone(DEMO))));
  });

  test('a shoot of 40 shots has 40 cards and 40 rows', () => {
    const one = (SMALL['shots'] as WrittenRecord)['one']!;
    const shots = Object.fromEntries(Array.from({ length: 40 }, (_, i) => [`shot-${i + 1}`, one]));
    const shoot = readSound({ ...SMALL, shots });
    const source: Source = { shoot, plan: planShoot(shoot), system: 'metric' };
    expect(sheetsFor(source, { sheet: 'card' })).toHaveLength(40);
    expect(blocksOf(sheetsFor(source, { sheet: 'plan' })[0]!, 'table')[0]!.rows).toHaveLength(40);
  });
});
