/** Cue sheets, the day and the stylist's sheet: what stands on them is what the plan and the day have. */
import { describe, expect, test } from 'vitest';
import { MEETING, PERSON, withChanges } from '../../../test/cues.ts';
import { TWO_SHOTS } from '../../../test/days.ts';
import { sourceOf } from '../../../test/sheets.ts';
import { changed, DEMO, SMALL } from '../../../test/shoots.ts';
import { writeClock } from '../../document/write.ts';
import { sayOffset, sayPart, sayShare } from './cueSheet.ts';
import type { Block, Sheet } from './sheet.ts';
import { sheetsFor, type Asked } from './sheets.ts';
import { sheetLines } from './sheetText.ts';

const one = (written: unknown, asked: Asked): Sheet => sheetsFor(sourceOf(written as typeof SMALL), asked)[0]!;
const flat = (sheet: Sheet): string => sheetLines(sheet).join(' ').replace(/\s+/g, ' ');
const blocksOf = <Name extends Block['block']>({ blocks }: Sheet, name: Name) =>
  blocks.filter((block): block is Extract<Block, { readonly block: Name }> => block.block === name);
const figure = (sheet: Sheet, label: string) =>
  blocksOf(sheet, 'figures')
    .flatMap(({ figures }) => figures)
    .find((each) => each.label.startsWith(label));
const rowsOf = (sheet: Sheet, name: string) => blocksOf(sheet, 'table').find((table) => table.name === name)!.rows;

describe('shares and times as they are said', () => {
  test.each([
    [0.934, '93 %'],
    [0.9951, '99.5 %'],
    [0.0042, '0.4 %'],
    [0.99951, 'over 99.9 %'],
    [1, 'over 99.9 %'],
    [0.0004, 'under 0.1 %'],
    [0, 'under 0.1 %'],
  ])('a chance of %d is %s', (fraction, says) => expect(sayShare(fraction)).toBe(says));

  test.each([
    [0, '0 %'],
    [0.4, '40 %'],
    [1, '100 %'],
  ])('a share set to %d is %s', (fraction, says) => expect(sayPart(fraction)).toBe(says));

  test.each([
    [0, '0.0 ms'],
    [0.09, '+90.0 ms'],
    [-0.331_66, '−331.7 ms'],
    [-0.000_04, '0.0 ms'],
    [12.5, '+12.5 s'],
  ])('%d s is %s', (time_s, says) => expect(sayOffset(time_s)).toBe(says));
});

describe('a cue sheet', () => {
  test('has its cues in the order in which they fire, the first at nought', () => {
    const source = sourceOf(withChanges(MEETING));
    const { timing } = source.plan.shots[0]!;
    const rows = rowsOf(one(withChanges(MEETING), { sheet: 'cues' }), 'Cues in the order in which they fire');
    expect(rows.map(([, cue]) => cue!.words)).toEqual(timing!.cues.map(({ title }) => title));
    expect(rows.map((cells) => cells[3]!.words)).toEqual(timing!.cues.map(({ afterFirst_s }) => sayOffset(afterFirst_s!)));
    expect(rows[0]![3]!.words).toBe('0.0 ms');
  }); // prettier-ignore

  test('says when and how often they meet, and what is kept of the memory', () => {
    const sheet = one(withChanges(MEETING, PERSON), { sheet: 'cues' });
    const { meeting, trigger } = sourceOf(withChanges(MEETING, PERSON)).plan.shots[0]!.timing!;
    expect(figure(sheet, 'They meet at')!.number).toBe('+50.0 ms');
    expect(figure(sheet, 'Takes in which they do')).toMatchObject({ number: sayShare(meeting!.chanceFraction!), note: '60 % wanted' }); // prettier-ignore
    expect(figure(sheet, 'Kept after it')!.number).toBe(sayPart(trigger!.set.postTriggerFraction));
    expect(figure(sheet, 'Triggered by')!.number).toBe('A hand on the button');
    // 1.5552 GB of frames of 3,110,400 B.
    expect(figure(sheet, 'Memory holds')!.note).toBe('500 frames');
  });

  test('names who arms and who calls clear, with a line to write on where nobody is named', () => {
    const sheet = one(DEMO, { sheet: 'cues', shot: 'quinces' });
    const items = blocksOf(sheet, 'ticks')[0]!.items;
    expect(items.map(({ words }) => words)).toEqual([
      'Right latch: armed by Tam Orrin, all clear called by Mara Quill',
      'Left latch: armed by Tam Orrin, all clear called by Mara Quill',
    ]);
    expect(items[0]!.under).toContain('Made harmless: Pin through the latch');
    const unnamed = one(changed(DEMO, { '/crew': undefined }), { sheet: 'cues', shot: 'quinces' });
    expect(flat(unnamed)).toContain('Right latch: armed by ________, all clear called by ________');
    expect(flat(sheet)).toContain('Longsecond fires nothing');
  });

  test('says what is missing, and what can never be', () => {
    const lacking = one(changed(DEMO, { '/shots/quinces/cues/left/height': undefined }), { sheet: 'cues', shot: 'quinces' });
    expect(rowsOf(lacking, 'Cues in the order in which they fire').at(-1)![3]!.words).toBe('not known');
    expect(flat(lacking)).toMatch(/Missing: [^.]*Left quince/);
    // A person who answers 200 ms after the action cannot keep all of it in a memory that holds less.
    const source = sourceOf(withChanges(PERSON, { '/shots/one/trigger/by': 'person', '/kit/cameras/body/memory': '0.6 GB' }));
    const { impossible } = source.plan.shots[0]!.timing!;
    expect(impossible.length).toBeGreaterThan(0);
    const [sheet] = sheetsFor(source, { sheet: 'cues' });
    for (const { says } of impossible) expect(blocksOf(sheet!, 'paragraph')).toContainEqual({ block: 'paragraph', words: says, tone: 'strong' });
  }); // prettier-ignore

  test('is made for shots with cues or a trigger only, and says so where there are none', () => {
    const source = sourceOf(DEMO);
    const written = ({ id }: { readonly id: string }) => {
      const { cues, trigger } = source.shoot.shots[id]!;
      return Object.keys(cues).length > 0 || trigger.by !== undefined;
    };
    const ids = sheetsFor(source, { sheet: 'cues' }).map(({ id }) => id);
    expect(ids).toEqual(source.plan.shots.filter(written).map(({ id }) => `cues-${id}`));
    expect(ids).toContain('cues-quinces');
    expect(ids).not.toContain('cues-honey');
    expect(one(SMALL, { sheet: 'cues' }).title).toBe('No cues yet');
    expect(flat(one(SMALL, { sheet: 'cues', shot: 'one' }))).toContain('No cue and no trigger is written');
  });
});

describe('the day on paper', () => {
  const day = one(TWO_SHOTS, { sheet: 'day' });

  test('has each shot with its start, its end and its takes: 30 min and 2 takes of 11 min, then 45 min and 3 of 8 min', () => {
    const rows = rowsOf(day, 'Shots in the order of the day');
    expect(rows.map(([number, shot, , ends, takes]) => [number, shot, ends, takes].map((cell) => cell!.words))).toEqual([
      ['1', 'One', '00:52', '2'],
      ['2', 'Two', '02:01', '3'],
    ]);
  }); // prettier-ignore

  test('says when it is a wrap, and that the last copy comes after it', () => {
    const { wrap, copied } = sourceOf(TWO_SHOTS).day!();
    expect(figure(day, 'Wrap, nine days in ten by')!.number).toBe(writeClock(wrap.late_s));
    expect(figure(day, 'Last copy verified by')!.number).toBe(writeClock(copied.late_s));
    expect(figure(day, 'Days that end by')).toBeUndefined();
    expect(day.under).toBe('20 days drawn by chance from seed 41, in the order that was fixed');
  });

  test('tells overtime, and its price, only where the late end is over', () => {
    const over = one(changed(TWO_SHOTS, { '/shoot/day/wrap': '01:00', '/shoot/day/overtimePrice': 900 }), { sheet: 'day' });
    // 61 min at 900 an hour.
    expect(figure(over, 'Overtime')).toMatchObject({ number: '1 h 1 min', note: expect.stringMatching(/915 at the price given/) as unknown });
    expect(figure(one(changed(TWO_SHOTS, { '/shoot/day/wrap': '03:00' }), { sheet: 'day' }), 'Overtime')).toBeUndefined();
  }); // prettier-ignore

  test('leaves the times of a shot that is done empty, and says that it is', () => {
    const rows = rowsOf(
      one(changed(TWO_SHOTS, { '/shots/one/soFar': { done: true }, '/shoot/day/now': '01:00' }), { sheet: 'day' }),
      'Shots in the order of the day',
    );
    const done = rows.find(([, shot]) => shot!.words === 'One')!;
    expect(done[1]!.under).toBe('done');
    expect(done.slice(2, 5).map(({ words }) => words)).toEqual(['–', '–', '–']);
  });

  test('asks for the day to be worked out where nobody has', () => {
    const { day: _, ...source } = sourceOf(TWO_SHOTS);
    expect(() => sheetsFor(source, { sheet: 'day' })).toThrow(expect.objectContaining({ code: 'sheet.no-day' }));
    expect(() => sheetsFor(source, { sheet: 'dressing' })).toThrow(expect.objectContaining({ code: 'sheet.no-day' }));
  });
});

describe('the stylist’s sheet', () => {
  test('has each product when it must be ready and how many, pieces a take times takes', () => {
    const sheet = one(changed(TWO_SHOTS, { '/shots/two/hero/perTake': 2, '/kit/products/egg/hold': '12 min' }), { sheet: 'dressing' }); // prettier-ignore
    const rows = rowsOf(sheet, 'What must be camera-ready when');
    expect(rows.map((cells) => cells.map(({ words }) => words))).toEqual([
      ['00:52', 'Egg', '2 pieces', '6', '12 min', expect.any(String)],
    ]);
  });

  test('has the resets that fall to whoever looks after the product', () => {
    const sheet = flat(one(DEMO, { sheet: 'dressing' }));
    expect(sheet).toMatch(/Between takes of shot 3 .*\[ \] Two fresh quinces .*2 pieces of Quince/);
    expect(sheet).not.toContain('Set both latches');
  });

  test('leaves out what is done, and says where no product is named', () => {
    const done = one(changed(TWO_SHOTS, { '/shots/two/soFar': { done: true } }), { sheet: 'dressing' });
    expect(flat(done)).toContain('No shot of the day names a product.');
  });
});
