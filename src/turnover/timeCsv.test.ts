/** Cues and the day as tables: every row, every unit, and nothing that a spreadsheet would take for a formula. */
import { describe, expect, test } from 'vitest';
import { dayWith } from '../../test/days.ts';
import { changed, DEMO } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { planShoot } from '../plan/plan.ts';
import { cuesCsv } from './cuesCsv.ts';
import { dayCsv } from './dayCsv.ts';

const cellsOf = (line: string): readonly string[] =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain = '']) => quoted ?? plain);

/** Rows as records by the names of the header. */
function recordsOf(text: string): readonly Readonly<Record<string, string>>[] {
  expect(text.endsWith('\r\n')).toBe(true);
  const [header, ...lines] = text.slice(0, -2).split('\r\n');
  const names = cellsOf(header!);
  return lines.map((line) => {
    const cells = cellsOf(line);
    expect(cells, line).toHaveLength(names.length);
    return Object.fromEntries(names.map((name, i) => [name, cells[i]!]));
  });
}

const planOf = (written: Written) => planShoot(readShoot(written).shoot);

describe('cues as a table', () => {
  const plan = planOf(DEMO);
  const records = recordsOf(cuesCsv(plan));

  test('has a row for each cue in the order in which they fire, then one for the trigger', () => {
    const wanted = plan.shots.flatMap(({ id, timing }) => [
      ...(timing?.cues ?? []).map((cue) => `${id} ${cue.id}`),
      ...(timing?.trigger ? [`${id} trigger`] : []),
    ]);
    expect(records.map(({ shot, cue }) => `${shot} ${cue}`)).toEqual(wanted);
    expect(wanted).toContain('quinces trigger');
  });

  test('has the times of the plan, in seconds', () => {
    const cues = plan.shots.find(({ id }) => id === 'quinces')!.timing!.cues;
    const rows = records.filter(({ shot, cue }) => shot === 'quinces' && cue !== 'trigger');
    cues.forEach((cue, i) => {
      const { signalAfterFirst_s, signal_s, arrives_s, spread_s, meets_s, mustMeet, postTriggerFraction } = rows[i]!;
      expect(Number(signalAfterFirst_s)).toBeCloseTo(cue.afterFirst_s!, 8);
      expect(Number(signal_s)).toBeCloseTo(cue.fire_s!, 8);
      expect(Number(arrives_s)).toBeCloseTo(cue.arrives_s!, 8);
      expect(Number(spread_s)).toBeCloseTo(cue.spread_s!, 8);
      expect([Number(meets_s), mustMeet, postTriggerFraction]).toEqual([0.04, 'yes', '']);
    });
  });

  test('leaves empty what is not known, and what a trigger has not', () => {
    const lacking = recordsOf(cuesCsv(planOf(changed(DEMO, { '/shots/quinces/cues/left/height': undefined })))); // prettier-ignore
    const left = lacking.find(({ shot, cue }) => shot === 'quinces' && cue === 'left')!;
    expect([left['signal_s'], left['signalAfterFirst_s'], left['travel_s']]).toEqual(['', '', '']);
    const trigger = records.find(({ shot, cue }) => shot === 'quinces' && cue === 'trigger')!;
    expect([trigger['rig'], trigger['moves_s'], trigger['mustMeet']]).toEqual(['', '', '']);
    expect(Number(trigger['postTriggerFraction'])).toBeGreaterThan(0);
  });

  test('quotes a title with a comma, and leaves no formula standing', () => {
    const text = cuesCsv(
      planOf(changed(DEMO, { '/shots/crown/title': 'Drop, crown', '/shots/quinces/title': '=1+1' })),
    );
    expect(text).toContain(',"Drop, crown",');
    expect(text).toContain(",'=1+1,");
  });

  test('is a header alone where there are none', () => {
    expect(cuesCsv({ shots: [] }).split('\r\n')).toHaveLength(2);
  });
});

describe('the day as a table', () => {
  test('has a row a shot in the order of the day, with clock times and seconds of work', () => {
    const rows = recordsOf(dayCsv(dayWith()));
    expect(rows.map(({ place, shot, startsMiddle, endsLate, takesLateCount }) => [place, shot, startsMiddle, endsLate, takesLateCount])).toEqual([
      ['1', 'one', '00:00', '00:52', '2'],
      ['2', 'two', '00:52', '02:01', '3'],
    ]);
    // Resets of 7 min twice; a change of 30 min; rolls of 1 min.
    expect([rows[0]!['reset_s'], rows[0]!['change_s'], rows[0]!['roll_s'], rows[0]!['wait_s']]).toEqual(['840', '1800', '120', '0']);
    expect([rows[1]!['product'], rows[1]!['piecesLateCount'], rows[0]!['product']]).toEqual(['egg', '3', '']);
  }); // prettier-ignore

  test('goes on after midnight beyond 24:00', () => {
    const [first] = recordsOf(dayCsv(dayWith({ '/shoot/day/call': '23:30' })));
    expect(first).toMatchObject({ startsMiddle: '23:30', endsMiddle: '24:22' });
  });

  test('leaves the times of what is done empty', () => {
    const rows = recordsOf(dayCsv(dayWith({ '/shots/one/soFar': { done: true } })));
    const done = rows.find(({ shot }) => shot === 'one')!;
    expect([done['isDone'], done['startsMiddle'], done['endsLate']]).toEqual(['yes', '', '']);
  });
});
