import { describe, expect, test } from 'vitest';
import { DEMO, readSound } from '../../../../test/shoots.ts';
import { applyPatch } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { planShoot } from '../../../plan/plan.ts';
import { pickedPatch, pickedWay } from './pickedWay.ts';

const planIn = (written: Written, shotId: string) =>
  planShoot(readSound(written)).shots.find(({ id }) => id === shotId)!;

const pick = (rate: string, shutter: string, written: Written = DEMO) =>
  pickedWay({ written, shotId: 'honey', plan: planIn(written, 'honey') }, { rate, shutter });

describe('a rate and a shutter picked from the chart', () => {
  test('are fixed in the shot, and nothing else is', () => {
    const patch = pickedPatch(DEMO, 'honey', { rate: '100', shutter: '1/100 s' });
    expect(patch.map(({ path }) => path)).toEqual(['/shots/honey/rate', '/shots/honey/shutter']);
    const { shoot, problems } = readShoot(applyPatch(DEMO, patch));
    expect(problems).toEqual([]);
    expect(shoot.shots['honey']).toMatchObject({ rate: { num: 100, den: 1 }, shutter: { exposureTime_s: 0.01 } });
  }); // prettier-ignore

  test('that hold a whole period of the lamp close flicker, and every margin is that of the shot planned so', () => {
    const way = pick('100', '1/100 s');
    expect(way.closes).toBe(true);
    expect(way.gain_stops).toBeGreaterThan(1);
    expect(way.settings).toMatchObject({ captureRate_fps: 100, exposureTime_s: 0.01 });
    const planned = planIn(applyPatch(DEMO, way.patch), 'honey').margins;
    expect(way.margins.map(({ id, stops }) => [id, stops?.value])).toEqual(planned.map(({ id, stops }) => [id, stops?.value])); // prettier-ignore
    // A longer shutter gives light and takes sharpness.
    const change = (id: string) => way.effects.find((effect) => effect.id === id)?.change_stops ?? 0;
    expect(change('light')).toBeGreaterThan(0);
    expect(change('blur')).toBeLessThan(0);
    expect(way.effects.some(({ id }) => id === 'flicker')).toBe(false);
  });

  test('that change nothing for the better are offered all the same, and say so', () => {
    const way = pick('200', '1/5000 s');
    expect(way.closes).toBe(false);
    expect(Math.abs(way.gain_stops)).toBeLessThan(0.5);
  });

  test('say whether they change what somebody fixed', () => {
    expect(pick('100', '1/100 s').touchesFixed).toBe(false);
    const fixed = applyPatch(DEMO, pickedPatch(DEMO, 'honey', { rate: '100', shutter: '1/100 s' }));
    expect(pick('200', '1/400 s', fixed).touchesFixed).toBe(true);
  });

  test('name the hard limits that they would break', () => {
    // So fast a body has a smaller picture.
    const way = pick('9000', '1/20000 s');
    expect(way.breaks.map(({ id }) => id)).toContain('picture-size');
  });
});
