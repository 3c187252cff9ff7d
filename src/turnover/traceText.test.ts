import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readShootText } from '../document/text.ts';
import { explain } from '../plan/explain.ts';
import type { Trace } from '../plan/types.ts';
import { columnsOf, PAGE_COLUMNS } from './lines.ts';
import { traceLines } from './traceText.ts';

const speed: Trace = {
  name: 'speed_m_per_s',
  title: 'Speed',
  value: 1.5,
  kind: 'speed',
  origin: { by: 'document', path: '/shots/pour/action/speed', spread: 0.15 },
  inputs: [],
};
const doubled: Trace = {
  name: 'doubled_m_per_s',
  title: 'Twice the speed',
  value: 3,
  kind: 'speed',
  origin: { by: 'choice', says: 'a round number' },
  inputs: [speed],
};
const top: Trace = {
  name: 'blur_px',
  title: 'Blur',
  value: 2.5,
  kind: 'pixels',
  origin: {
    by: 'law',
    law: 'motion-blur',
    title: 'Motion blur',
    equation: 'blur = v · t',
    sources: ['machine-vision-blur', 'frame-rate-practice'],
  },
  inputs: [doubled, doubled],
};

describe('a trace as text', () => {
  test('is a tree of number, law, equation, sources as seen, and where it is written', () => {
    expect(traceLines({ ...top, inputs: [doubled] })).toEqual([
      'Blur  2.5 px  [blur_px]',
      '  Motion blur (law motion-blur): blur = v · t',
      '  source: machine-vision-blur (read), frame-rate-practice (common practice)',
      '  Twice the speed  3 m/s  [doubled_m_per_s]',
      '    chosen: a round number',
      '    Speed  1.5 m/s  [speed_m_per_s]',
      '      written at /shots/pour/action/speed, ± 150 mm/s',
    ]);
  });

  test('a number met again is not taken apart again', () => {
    const lines = traceLines(top);
    expect(lines.filter((line) => line.includes('[doubled_m_per_s]'))).toHaveLength(2);
    expect(lines.filter((line) => line.includes('[speed_m_per_s]'))).toHaveLength(1);
    expect(lines.at(-1)).toBe('    worked out above');
  });

  test('an assumption says that it is one, why, and what to write instead', () => {
    const assumed: Trace = { ...speed, origin: { by: 'assumption', why: 'usual for honey', path: '/shots/a/action/speed' } };
    expect(traceLines(assumed)[1]).toBe('  assumed: usual for honey; to change it write /shots/a/action/speed');
  });

  test('a law without a source that was read is marked as assumed', () => {
    const law: Trace = { ...top, inputs: [], origin: { by: 'law', law: 'x', title: 'X', equation: 'y', sources: ['frame-rate-practice'] } };
    expect(traceLines(law)).toContain('  assumed, no source read: frame-rate-practice (common practice)');
  });

  test('a number that no law gives is not known, with the reason', () => {
    const law = { by: 'law', law: 'x', title: 'X', equation: 'y', sources: [], refused: 'speed must be positive' } as const;
    const lines = traceLines({ ...top, value: undefined, inputs: [], origin: law });
    expect(lines[0]).toBe('Blur  not known  [blur_px]');
    expect(lines).toContain('  no answer: speed must be positive');
  });

  test('the light of a shot of the demo is traced down to the document, within the page', () => {
    const { shoot } = readShootText(readFileSync(new URL('../../demo/shoot.yaml', import.meta.url), 'utf8'));
    const lines = traceLines(explain(shoot, 'crown', 'lightNeeded_lx')!);
    expect(lines.join('\n')).toContain('written at /shots/crown/frameWidth');
    for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(PAGE_COLUMNS);
  });
}); // prettier-ignore
