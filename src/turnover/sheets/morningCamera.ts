/** The camera part of a morning sheet: settings in the order of the plan, and what changes from shot to shot. */
import type { ShotPlan } from '../../plan/types.ts';
import { cell, NOT_KNOWN, sayNumber, strong } from './say.ts';
import { referenceItems } from './shotCard.ts';
import { effectiveShot, fittedWords, settingsOf } from './shotWords.ts';
import { paragraph, subheading, unlessEmpty, type Block, type Cell, type Source, type TickItem } from './sheet.ts';

function settingsRow(source: Source, shot: ShotPlan): readonly Cell[] {
  const own = effectiveShot(source.shoot, shot);
  const words = settingsOf(source, shot);
  const width = sayNumber(source, 'frameWidth_m', own.frameWidth_m);
  if (!words) return [strong(String(shot.number)), strong(shot.title, 'no settings yet'), ...['–', '–', '–', '–', '–', '–'].map((dash) => cell(dash)), cell(width)]; // prettier-ignore
  return [
    strong(String(shot.number)),
    strong(shot.title, words.camera),
    cell(words.format),
    strong(words.rate),
    strong(words.shutter, words.angle),
    strong(words.stop, words.index),
    strong(words.lens, fittedWords(source, own)),
    strong(words.distance, `${words.clear} clear`),
    cell(width),
  ];
}

const COLUMNS = [
  { title: '', align: 'right' },
  { title: 'Shot', align: 'left' },
  { title: 'Picture', align: 'left' },
  { title: 'Rate', align: 'right' },
  { title: 'Shutter', align: 'right' },
  { title: 'Stop, index', align: 'left' },
  { title: 'Lens', align: 'left' },
  { title: 'Distance', align: 'right' },
  { title: 'Frame', align: 'right' },
] as const;

/** What is changed with hands when going from one shot to the next; all of it for the first. */
function changesTo(source: Source, shot: ShotPlan, before: ShotPlan | undefined): readonly string[] {
  const [now, then] = [settingsOf(source, shot), before && settingsOf(source, before)];
  if (!now) return [];
  const fitted = (of: ShotPlan) => fittedWords(source, effectiveShot(source.shoot, of));
  const differs = (key: 'camera' | 'lens' | 'format' | 'distance'): boolean => now[key] !== then?.[key];
  const [glassNow, glassThen] = [fitted(shot), before ? fitted(before) : ''];
  return [
    ...(differs('camera') ? [`camera ${now.camera}`] : []),
    ...(differs('lens') ? [`lens ${now.lens}`] : []),
    ...(glassNow === glassThen ? [] : [glassNow === '' ? 'nothing fitted to the lens' : `fit ${glassNow}`]),
    ...(differs('format') ? [`picture ${now.format}`] : []),
    ...(differs('distance') ? [`camera at ${now.distance}`] : []),
  ];
}

function changeItems(source: Source): readonly TickItem[] {
  const { shots } = source.plan;
  return shots.flatMap((shot, i) => {
    const changes = changesTo(source, shot, shots[i - 1]);
    if (!settingsOf(source, shot)) return [{ words: `Shot ${shot.number}: ${NOT_KNOWN} yet` }];
    return [{ words: `Shot ${shot.number}: ${changes.length === 0 ? 'nothing to move' : changes.join(', ')}` }];
  });
}

export function cameraPart(source: Source): readonly Block[] {
  const { shots } = source.plan;
  const owed = shots.flatMap((shot) =>
    referenceItems(source, shot).map(({ words, under }) => ({
      words: `Shot ${shot.number}: ${words}`,
      ...(under === undefined ? {} : { under }),
    })),
  );
  const changes = changeItems(source);
  return [
    { block: 'table', name: 'Settings', columns: COLUMNS, rows: shots.map((shot) => settingsRow(source, shot)) },
    paragraph('Distance is from the sensor to the subject; clear is from the front of the lens.', 'small'),
    subheading('Changes before each shot'),
    ...unlessEmpty(changes, { block: 'ticks', name: 'Changes before each shot', items: changes }),
    subheading('Reference rolls owed'),
    ...(owed.length === 0
      ? [paragraph('None is written.')]
      : [{ block: 'ticks', name: 'Reference rolls owed', items: owed } as const]),
  ];
}
