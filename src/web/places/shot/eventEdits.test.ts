import { describe, expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { EVENTS, eventNamed } from '../../../laws/events/catalogue.ts';
import { parametersOf } from '../../../laws/events/event.ts';
import { eventOf, parameterKey, parameterValue } from '../../../plan/events.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { checkParameter, choosingPatch, completeParameter, droppingPatch, figureWords, findEvent, parameterPatch, showParameter, spanWords, takingPatch } from './eventEdits.ts'; // prettier-ignore

const written = {
  longsecond: 1,
  defaults: { action: { event: 'pour', parameters: { head: '40 mm', fallHeight: '0.4 m' } } },
  shots: {
    drop: { action: { what: 'A drop.', event: 'crown', parameters: { fallHeight: '0.8 m' } } },
    plain: { title: 'Plain' },
  },
};

const after = (patch: readonly PatchOperation[], base: Written = written) => applyPatch(base, withParents(base, patch));

const field = (id: string, key: string) =>
  parametersOf(eventNamed(id)!).find(({ name }) => parameterKey(name) === key)!;

describe('the event of a shot', () => {
  test('is its own with its own figures, else that of the defaults with theirs', () => {
    expect(findEvent(written, 'drop')).toMatchObject({ id: 'crown', holder: 'shot', parameters: { fallHeight: '0.8 m' } });
    expect(findEvent(written, 'plain')).toMatchObject({ id: 'pour', holder: 'defaults', parameters: { head: '40 mm' } });
    expect(findEvent({ shots: { plain: {} } }, 'plain')).toBeUndefined();
  });

  test('is chosen in one edit that clears the figures of the one before', () => {
    expect(after(choosingPatch(written, 'drop', 'fall'))).toMatchObject({ shots: { drop: { action: { event: 'fall' } } } });
    expect(findEvent(after(choosingPatch(written, 'drop', 'fall')), 'drop')!.parameters).toEqual({});
    expect(findEvent(after(choosingPatch(written, 'plain', 'fall')), 'plain')).toMatchObject({ id: 'fall', holder: 'shot', parameters: {} });
  });

  test('chosen again keeps its figures', () => {
    expect(choosingPatch(written, 'drop', 'crown')).toEqual([]);
  });

  test('goes out with its figures and leaves the rest of the action', () => {
    expect(after(droppingPatch(written, 'drop'))).toMatchObject({ shots: { drop: { action: { what: 'A drop.' } } } });
    expect(droppingPatch(written, 'plain')).toEqual([]);
  });
}); // prettier-ignore

describe('a figure of the event', () => {
  test('is written, changed and taken away alone', () => {
    const more = after(parameterPatch(written, 'drop', 'dropDiameter', '5 mm'));
    expect(findEvent(more, 'drop')!.parameters).toEqual({ fallHeight: '0.8 m', dropDiameter: '5 mm' });
    expect(findEvent(after(parameterPatch(more, 'drop', 'fallHeight', ' '), more), 'drop')!.parameters).toEqual({ dropDiameter: '5 mm' }); // prettier-ignore
  });

  test('leaves no empty section behind when it was the last', () => {
    expect(parameterPatch(written, 'drop', 'fallHeight', '')).toEqual([
      { op: 'remove', path: '/shots/drop/action/parameters' },
    ]);
    expect(parameterPatch(written, 'drop', 'density', '')).toEqual([]);
  });

  test('changed in a shot that has its event from the defaults brings the others along', () => {
    const own = after(parameterPatch(written, 'plain', 'head', '60 mm'));
    expect(findEvent(own, 'plain')).toMatchObject({
      id: 'pour',
      holder: 'shot',
      parameters: { head: '60 mm', fallHeight: '0.4 m' },
    });
  });

  test('typed as a bare number takes the unit that stood there, or that of its default', () => {
    expect(completeParameter(field('crown', 'fallHeight'), '70', '80 cm', 'metric')).toBe('70 cm');
    expect(completeParameter(field('crown', 'fallHeight'), '700', '', 'metric')).toBe('700 mm');
    expect(completeParameter(field('flame', 'puffCount'), '4', '', 'metric')).toBe('4');
    expect(checkParameter(field('crown', 'fallHeight'), '700', '', 'metric')).toEqual({ ok: true, says: 'read as 700 mm' }); // prettier-ignore
  });

  test('that cannot be read is refused with what would fit', () => {
    expect(checkParameter(field('crown', 'fallHeight'), '3 lx', '', 'metric')).toMatchObject({ ok: false });
    expect(checkParameter(field('flame', 'puffCount'), '2.5', '', 'metric')).toEqual({ ok: false, why: 'expected a whole number' }); // prettier-ignore
  });

  test.each(EVENTS.map(({ id }) => id))('shows the defaults of %s as texts that read back to them', (id) => {
    for (const of of parametersOf(eventNamed(id)!)) {
      const { number, unit } = showParameter(of, of.default as number, 'metric');
      const read = parameterValue(of, `${number} ${unit}`.trim());
      expect('value' in read && Math.abs(read.value / (of.default as number) - 1)).toBeLessThan(0.005);
    }
  });
});

describe('figures taken over', () => {
  const figures = { speed_m_per_s: 3.0871, duration_s: 0.0194321, reachWidth_m: 0.05 };

  test('stand in the shot as plain values of three digits', () => {
    expect(after(takingPatch(written, 'drop', figures, 'metric'))).toMatchObject({
      shots: { drop: { action: { event: 'crown', duration: '19.4 ms', speed: '3.09 m/s' } } },
    });
  });

  test('are nothing to do once they stand there', () => {
    const taken = after(takingPatch(written, 'drop', figures, 'metric'));
    expect(takingPatch(taken, 'drop', figures, 'metric')).toEqual([]);
  });

  test.each(EVENTS.map(({ id }) => id))('of %s are read back by the shoot without a problem', (id) => {
    for (const system of ['metric', 'imperial'] as const) {
      const chosen = after(choosingPatch(written, 'plain', id));
      const own = eventOf(readShoot(chosen).shoot.shots['plain']!.action)!.figures!;
      const { shoot, problems } = readShoot(after(takingPatch(chosen, 'plain', own, system), chosen));
      expect(problems).toEqual([]);
      expect(shoot.shots['plain']!.action.duration_s! / own.duration_s).toBeCloseTo(1, 2);
      expect(shoot.shots['plain']!.action.speed_m_per_s! / own.speed_m_per_s).toBeCloseTo(1, 2);
    }
  });
});

test('a span says its unit once where both ends share it', () => {
  expect(spanWords('speed', { low: 1.5, high: 5 })).toBe('1.5 to 5 m/s');
  expect(spanWords('time', { low: 0.01, high: 1.5 })).toBe('10 ms to 1.5 s');
  expect(spanWords('time', { low: 0.01, high: 0.01 })).toBe('10 ms');
  expect(figureWords('length', 0.0424, 'metric')).toBe('42.4 mm');
});
