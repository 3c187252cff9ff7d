/** The gallery shows every part there is, and every state that a row of a chart can be in. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { waysFor } from '../../../plan/ways/ways.ts';
import { deriveShoot } from '../../state/derive.ts';
import { chartRows } from '../shot/chartRows.ts';
import { rowsToShow, ROWS_SHOW } from './rowsToShow.ts';
import { GALLERY_SHOOT } from './shoot.ts';
import { TIME_SHOOT } from './timeShoot.ts';

const textOf = (url: URL) => readFileSync(url, 'utf8');
const here = new URL('.', import.meta.url);
const parts = new URL('../../parts/', import.meta.url);

const gallery = [
  new URL('../Gallery.tsx', here),
  // The clocks are drawn as the Shot draws them.
  new URL('../shot/ShotClocks.tsx', here),
  ...readdirSync(here)
    .filter((name) => name.endsWith('.tsx'))
    .map((name) => new URL(name, here)),
].map(textOf);

/** A component is an exported function with a capital that draws something. */
const components = readdirSync(parts)
  .filter((name) => name.endsWith('.tsx'))
  .flatMap((file) =>
    [...textOf(new URL(file, parts)).matchAll(/^export (?:function|const) ([A-Z][a-z]\w*)\s*[(<=:]/gm)].map(
      ([, component]) => [component!, file] as const,
    ),
  );

const { plan, problems, shoot } = deriveShoot(GALLERY_SHOOT);
const marginsOf = (shotId: string) => plan.shots.find(({ id }) => id === shotId)!.margins;

describe('every component of src/web/parts', () => {
  test('is found by its file: there are as many files as there are in the folder', () => {
    const files = readdirSync(parts).filter((name) => name.endsWith('.tsx'));
    expect([...new Set(components.map(([, file]) => file))].sort()).toEqual(files.sort());
  });

  test.each(components)('%s, of %s, is drawn by the gallery under its name', (component) => {
    const isDrawn = gallery.some((text) => new RegExp(`<${component}[\\s/>]`).test(text));
    const isNamed = gallery.some((text) => text.includes(`of="${component}"`));
    expect({ isDrawn, isNamed }).toEqual({ isDrawn: true, isNamed: true });
  });
});

describe('the shoot that it is drawn from', () => {
  test('shows everything that a row can show', () => {
    expect(rowsToShow(chartRows(marginsOf('drop'))).map(({ says }) => says)).toEqual(ROWS_SHOW);
  });

  test('has limits that cannot be judged, each with what it lacks', () => {
    const unknown = marginsOf('bare').filter(({ state }) => state === 'unknown');
    expect(unknown.length).toBeGreaterThan(0);
    expect(unknown.every(({ missing }) => missing.length > 0)).toBe(true);
  });

  test('has ways for its short limits', () => {
    const short = marginsOf('drop').filter(({ state }) => state === 'short');
    expect(short.length).toBeGreaterThan(1);
    for (const { id } of short) expect(waysFor(shoot, GALLERY_SHOOT, 'drop', id).length).toBeGreaterThan(0);
  });

  test('is mistyped in the two places that show it, and nowhere else', () => {
    expect(problems.map(({ path }) => path).sort()).toEqual(['/shots/mistyped/frameWidth', '/shots/mistyped/seen']);
  });

  test('holds a profile of speeds and one speed, on clocks that run', () => {
    const clocksOf = (shotId: string) => plan.shots.find(({ id }) => id === shotId)!.clocks!;
    expect(clocksOf('drop').fastestFraction).toBe(clocksOf('drop').slowestFraction);
    expect(clocksOf('ramp').fastestFraction).toBeGreaterThan(clocksOf('ramp').slowestFraction);
  });
});

describe('the shots in time', () => {
  const timed = deriveShoot(TIME_SHOOT);
  const timingOf = (shotId: string) => timed.plan.shots.find(({ id }) => id === shotId)!.timing!;

  test('are written without a slip', () => expect(timed.problems).toEqual([]));

  test('show two cues that meet with a trigger, one that cannot be timed, and what can never be', () => {
    expect(timingOf('meets').cues.every(({ fire_s }) => fire_s !== undefined)).toBe(true);
    expect(timingOf('meets').meeting?.chanceFraction).toBeGreaterThan(0);
    expect(timingOf('meets').trigger).toBeDefined();
    expect(timingOf('lacks').cues.map(({ fire_s }) => fire_s === undefined)).toEqual([false, true]);
    expect(timingOf('never').impossible.length).toBeGreaterThan(0);
  });
});
