import { describe, expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { planShoot } from '../../../plan/plan.ts';
import { DEMO, readSound } from '../../../../test/shoots.ts';
import { readShoot } from '../../../document/read.ts';
import { addCuePatch, findPostPatch, meetsPatch, postPatch, removeCuePatch } from './timeEdits.ts';
import { laneOf, placeOf, postAfterDrag, spanOf, ticksOf } from './timeLayout.ts';

const timingOf = (id: string) => planShoot(readSound(DEMO)).shots.find((shot) => shot.id === id)!.timing!;
const quinces = timingOf('quinces');

describe('the strip of the two quinces', () => {
  const span = spanOf(quinces, 'action');

  test('shows every signal, the action with its handles and the trigger, with room at both ends', () => {
    const times = [
      ...quinces.cues.flatMap(({ fire_s, rests_s }) => [fire_s!, rests_s!]),
      -quinces.handle_s,
      quinces.action_s + quinces.handle_s,
      quinces.trigger!.comes_s,
    ];
    for (const time_s of times) {
      expect(time_s).toBeGreaterThan(span.from_s);
      expect(time_s).toBeLessThan(span.to_s);
    }
  });

  test('shows all that the memory holds when asked', () => {
    const wide = spanOf(quinces, 'memory');
    expect(wide.from_s).toBeLessThan(quinces.trigger!.keepsFrom_s);
    expect(wide.to_s).toBeGreaterThan(quinces.trigger!.keepsTo_s);
    expect(wide.to_s - wide.from_s).toBeGreaterThan(quinces.memory!.recordTime_s);
  });

  test('lays each cue from its signal to its rest', () => {
    for (const cue of quinces.cues) {
      const lane = laneOf(cue, span)!;
      expect([lane.fire, lane.moves, lane.arrives, lane.rests]).toEqual([lane.fire, lane.moves, lane.arrives, lane.rests].toSorted((a, b) => a - b)); // prettier-ignore
      expect(lane.low).toBeLessThan(lane.arrives);
      expect(lane.high).toBeGreaterThan(lane.arrives);
    }
  });

  test('says screen time only where there is film: 50 times the real one', () => {
    const ticks = ticksOf(quinces, span, 12);
    expect(ticks.length).toBeGreaterThan(4);
    expect(ticks.some(({ screen }) => screen === undefined)).toBe(true);
    const at100 = ticks.find(({ real }) => real === '100 ms');
    expect(at100?.screen).toBe('5 s');
    expect(at100!.at).toBeCloseTo(placeOf(0.1, span), 9);
  });
});

test('a cue whose time is not known has no lane', () => {
  const { fire_s: _, ...lacking } = quinces.cues[0]!;
  expect(laneOf(lacking, spanOf(quinces, 'action'))).toBeUndefined();
});

describe('dragging what is kept', () => {
  test.each([
    [0.5, 0.6, 6, 0.6],
    [0.5, -6, 6, 0],
    [0.5, 60, 6, 1],
    [0.5, 0.02, 6, 0.5],
  ])('from %d by %d s of %d s sets %d', (post, dragged_s, recordTime_s, after) => {
    expect(postAfterDrag(post, dragged_s, recordTime_s)).toBe(after);
  });
});

describe('edits', () => {
  const after = (patch: ReturnType<typeof postPatch>) => readShoot(applyPatch(DEMO, withParents(DEMO, patch)));

  test('set the share after the trigger, and let it be found again', () => {
    const set = applyPatch(DEMO, withParents(DEMO, postPatch('quinces', 0.4)));
    expect(readShoot(set).shoot.shots['quinces']!.trigger.postTriggerFraction).toBe(0.4);
    expect(findPostPatch(DEMO, 'quinces')).toEqual([]);
    expect(applyPatch(set, findPostPatch(set, 'quinces'))).toEqual(DEMO);
  });

  test('move an arrival to a tenth of a millisecond', () => {
    const { shoot, problems } = after(meetsPatch('quinces', 'left', -0.012_34));
    expect(problems).toEqual([]);
    expect(shoot.shots['quinces']!.cues['left']!.arrival_s).toBeCloseTo(-0.0123, 9);
  });

  test('add a cue to a shot with and without cues, and take one away', () => {
    expect(Object.keys(after(addCuePatch(DEMO, 'quinces', 'ram')).shoot.shots['quinces']!.cues)).toEqual(['left', 'right', 'cue-1']); // prettier-ignore
    const { shoot, problems } = after(addCuePatch(DEMO, 'honey', undefined));
    expect(problems).toEqual([]);
    expect(shoot.shots['honey']!.cues).toMatchObject({ 'cue-1': { does: 'acts' } });
    expect(Object.keys(after(removeCuePatch('quinces', 'left')).shoot.shots['quinces']!.cues)).toEqual(['right']);
  });
});
