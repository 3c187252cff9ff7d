/** The screen and the command print the same numbers: the chart of a shot, rendered, against the text of its plan. */
import { readFileSync } from 'node:fs';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { readShootText } from '../src/document/text.ts';
import { planShoot } from '../src/plan/plan.ts';
import { planLines } from '../src/turnover/planText.ts';
import { marginWords } from '../src/turnover/words.ts';
import { MarginChart } from '../src/web/parts/MarginChart.tsx';
import { chartRows } from '../src/web/places/shot/chartRows.ts';

const text = readFileSync(new URL('../demo/shoot.yaml', import.meta.url), 'utf8');

function textOfMarkup(markup: string): string {
  return markup
    .replace(/<[^>]*>/g, ' ')
    .replace(/&amp;/g, '&')
    .replace(/&#x27;/g, "'")
    .replace(/\s+/g, ' ')
    .trim();
}

/** Each row of the chart as its text: what stands in one button or one line that lacks something. */
function rowsOfChart(markup: string): readonly string[] {
  const [, lines = ''] = /role="radiogroup"[^>]*>([\s\S]*)<table/.exec(markup) ?? [];
  return lines
    .split(/(?=<(?:button|div)[^>]*class="margin-line)/)
    .map(textOfMarkup)
    .filter((row) => row !== '');
}

describe.each(['metric', 'imperial'] as const)('a shoot shown in %s units', (system) => {
  const { shoot, problems } = readShootText(text.replace('units: metric', `units: ${system}`));
  const plan = planShoot(shoot);

  test('is read without a problem, and in those units', () => {
    expect(problems).toEqual([]);
    expect(shoot.shoot.units).toBe(system);
  });

  test.each(plan.shots)('$title: the chart shows for every limit what the command prints', ({ id, title, margins }) => {
    const chart = createElement(MarginChart, {
      label: title,
      rows: chartRows(margins, system),
      onChoose: () => undefined,
      onFollow: () => undefined,
    });
    const rows = rowsOfChart(renderToStaticMarkup(chart));
    const printed = planLines(plan, shoot, { only: id }).join('\n').replace(/\s+/g, ' ');
    expect(rows).toHaveLength(margins.length);
    margins.forEach((margin, i) => {
      const { name, figures, spare, band, state } = marginWords(margin, system);
      for (const part of [margin.title, figures, spare, state]) expect(rows[i]).toContain(part);
      expect(printed).toContain([name, figures, spare, band, state].filter((part) => part !== '').join(' '));
    });
  });
});
