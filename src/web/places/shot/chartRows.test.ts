import { describe, expect, test } from 'vitest';
import type { Margin } from '../../../plan/types.ts';
import { chartRows, ghostsOf, worstOf } from './chartRows.ts';

const margin = (id: Margin['id'], value: number | undefined, low = value): Margin => ({
  id,
  title: id,
  isHard: false,
  state: value === undefined ? 'unknown' : value < 0 ? 'short' : low! < 0 ? 'tight' : 'spare',
  kind: 'length',
  sense: 'at-least',
  ...(value === undefined ? {} : { have: 0.04 * 2 ** value, need: 0.04, stops: { value, low: low!, high: value } }),
  path: '',
  haveName: 'have',
  needName: 'need',
  missing: [],
  assumed: [],
});

describe('the limit that binds', () => {
  test('is the shortest of what is short, whatever is tight', () => {
    expect(worstOf([margin('depth', -0.2), margin('blur', 0, -1), margin('light', -1.3)])?.id).toBe('light');
  });

  test('is the tightest when nothing is short', () => {
    expect(worstOf([margin('depth', 0.4, -0.1), margin('blur', 0.1, -0.1), margin('light', 2)])?.id).toBe('blur');
  });

  test('is none when all is to spare or not known', () => {
    expect(worstOf([margin('depth', 0.4), margin('blur', undefined)])).toBeUndefined();
  });
});

test('a row that is not known has neither figures nor stops', () => {
  const [row] = chartRows([margin('depth', undefined)]);
  expect(row).toMatchObject({ standing: 'unknown', missing: [] });
  expect(row).not.toHaveProperty('stops');
  expect(row).not.toHaveProperty('have');
});

test('ghosts are kept by row, and only where something would be known', () => {
  const ghosts = ghostsOf([margin('depth', 0.5), margin('blur', undefined)]);
  expect([...ghosts.keys()]).toEqual(['depth']);
  expect(ghosts.get('depth')).toMatchObject({ standing: 'spare', stops: { value: 0.5 } });
});
