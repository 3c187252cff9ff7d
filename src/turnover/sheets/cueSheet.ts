/** The cue sheet of a shot: what fires when and by whom, what must stand ready before, and which part of the memory is kept. */
import { showNumber } from '../../base/quantity.ts';
import type { CueTiming, MemoryTiming, ShotTiming, TriggerTiming } from '../../plan/timing/types.ts';
import type { ShotPlan } from '../../plan/types.ts';
import { missingWords } from '../words.ts';
import { clocksOf } from './clocks.ts';
import { cell, NOT_KNOWN, ofShoot, sayCount, sayLong, sayNumber, strong, titleOf } from './say.ts';
import { DEFERS } from './shotCard.ts';
import { heading, paragraph, unlessEmpty, type Block, type Cell, type KeyFigure, type Sheet, type Source, type TableBlock } from './sheet.ts'; // prettier-ignore

export const DOES_WORDS: Readonly<Record<CueTiming['does'], string>> = {
  acts: 'acts where it is',
  falls: 'falls',
  flies: 'flies',
  swings: 'swings',
  pours: 'pours',
  moves: 'moves',
  lights: 'comes up to full',
};

const BY: Readonly<Record<TriggerTiming['by'], string>> = {
  person: 'A hand on the button',
  electric: 'The signal that fires the rigs',
  beam: 'A light gate',
  sound: 'A sound',
  contact: 'A contact',
  picture: 'A change in the picture',
};

/** Where a share is within so much of all or of nothing, it is said so: chance is never certain. */
const NEAR_END = 5e-4;

/** Chances and other shares as people say them: "93 %", more finely near the ends, and "over 99.9 %". */
export function sayShare(fraction: number): string {
  if (fraction > 1 - NEAR_END) return 'over 99.9 %';
  if (fraction < NEAR_END) return 'under 0.1 %';
  const percent = fraction * 100;
  const digits = percent > 99 || percent < 1 ? 1 : 0;
  return `${percent.toFixed(digits)} %`;
}

/** A share that somebody sets, in whole hundredths: "40 %". */
export const sayPart = (fraction: number): string => `${Math.round(fraction * 100)} %`;

/** A time on the clock of the shot with its sign: "+90 ms", "−331.7 ms", to a tenth of a millisecond. */
export function sayOffset(time_s: number): string {
  const tenths = Math.round(time_s * 10_000);
  const sign = tenths < 0 ? '−' : tenths > 0 ? '+' : '';
  const size = Math.abs(tenths) / 10;
  return size >= 10_000 ? `${sign}${showNumber(size / 1000, 5)} s` : `${sign}${size.toFixed(1)} ms`;
}

const offsetCell = (time_s: number | undefined, note?: string): Cell => cell(time_s === undefined ? NOT_KNOWN : sayOffset(time_s), note); // prettier-ignore

function cueRow(source: Source, cue: CueTiming, number: number): readonly Cell[] {
  const { title, rigTitle, does, latency_s, fire_s, afterFirst_s, moves_s, rests_s, spread_s, millisecondMoves_m, isApart } = cue;
  return [
    strong(String(number)),
    strong(title, isApart ? 'need not meet the others' : DOES_WORDS[does]),
    cell(rigTitle, latency_s === undefined ? undefined : `moves ${sayNumber(source, 'latency_s', latency_s)} after its signal`),
    strong(afterFirst_s === undefined ? NOT_KNOWN : sayOffset(afterFirst_s)),
    offsetCell(fire_s),
    offsetCell(moves_s),
    offsetCell(rests_s, spread_s === undefined ? undefined : `± ${sayNumber(source, 'spread_s', spread_s)}`),
    cell(millisecondMoves_m === undefined ? '–' : sayNumber(source, 'millisecondMoves_m', millisecondMoves_m)),
  ];
} // prettier-ignore

function cueTable(source: Source, timing: ShotTiming): TableBlock {
  const column = (title: string, align: 'left' | 'right' = 'right') => ({ title, align });
  const rows = timing.cues.map((cue, i) => cueRow(source, cue, i + 1));
  return {
    block: 'table',
    name: 'Cues in the order in which they fire',
    columns: [
      column(''),
      column('Cue', 'left'),
      column('Rig', 'left'),
      column('Signal, from the first'),
      column('Signal'),
      column('Moves'),
      column('There and at rest'),
      column('1 ms late is'),
    ],
    rows,
  };
}

function meetingFigures(source: Source, { meeting, cues }: ShotTiming): readonly KeyFigure[] {
  if (!meeting) return [];
  const { at_s, tolerance_s, toleranceFrames, chanceFraction, wantedFraction, dominant } = meeting;
  const frames = toleranceFrames === undefined ? '' : `${showNumber(toleranceFrames, 3)} frames`;
  const most = cues.find(({ id }) => id === dominant);
  return [
    { label: 'They meet at', number: sayOffset(at_s), unit: '', note: 'after the action starts' },
    { label: 'Within', number: sayNumber(source, 'tolerance_s', tolerance_s), unit: '', ...(frames === '' ? {} : { note: frames }) },
    { label: 'Takes in which they do', number: chanceFraction === undefined ? NOT_KNOWN : sayShare(chanceFraction), unit: '', note: `${sayShare(wantedFraction)} wanted` },
    ...(most ? [{ label: 'Varies most', number: most.title, unit: '', note: sayShare(most.shareOfSpreadFraction) }] : []),
  ];
} // prettier-ignore

function triggerFigures(trigger: TriggerTiming | undefined): readonly KeyFigure[] {
  if (!trigger) return [];
  const { by, comes_s, comesLow_s, comesHigh_s, set, best } = trigger;
  const lost = `head lost ${sayShare(set.headLostFraction)}, tail lost ${sayShare(set.tailLostFraction)}`;
  return [
    { label: 'Triggered by', number: BY[by], unit: '', note: `comes at ${sayOffset(comes_s)}, ${sayOffset(comesLow_s)} to ${sayOffset(comesHigh_s)}` },
    { label: 'Kept after it', number: sayPart(set.postTriggerFraction), unit: '', note: `best ${sayPart(best.postTriggerFraction)}` },
    { label: 'Whole action kept', number: sayShare(set.caughtFraction), unit: '', note: lost },
  ];
} // prettier-ignore

function memoryFigures(source: Source, memory: MemoryTiming | undefined): readonly KeyFigure[] {
  if (!memory) return [];
  const { recordTime_s, frameCount, partitionCount, trimmedFrameCount, trimmedSize_B, saveTime_s, waits_s, rollsBeforeSaving } = memory;
  const parts = partitionCount > 1 ? `, one of ${partitionCount} parts` : '';
  return [
    { label: 'Memory holds', number: sayNumber(source, 'recordTime_s', recordTime_s), unit: '', note: `${sayCount(frameCount, 'frame')}${parts}` },
    { label: 'Trim to', number: sayCount(trimmedFrameCount, 'frame'), unit: '', note: sayNumber(source, 'trimmedSize_B', trimmedSize_B) },
    { label: 'Saving takes', number: saveTime_s === undefined ? NOT_KNOWN : sayLong(saveTime_s), unit: '', note: waits_s !== undefined && waits_s > 0 ? `the next roll waits ${sayLong(waits_s)} for it` : 'done within the reset' },
    { label: 'Rolls before saving', number: String(rollsBeforeSaving), unit: '' },
  ];
} // prettier-ignore

/** Who arms, who calls clear, what makes each rig safe and what stands before it: ticked off before every take. */
function before(source: Source, { safety }: ShotTiming): readonly Block[] {
  const { rigs } = source.shoot.kit;
  const who = (id: string | undefined) => (id === undefined ? '' : titleOf(source.shoot.crew[id], id));
  const items = safety.map(({ rig, arms, clears, disarm, shield }) => ({
    words: `${titleOf(rigs[rig], rig)}: armed by ${who(arms) || '________'}, all clear called by ${who(clears) || '________'}`,
    under: [shield, disarm && `Made harmless: ${disarm}`].filter((part) => part !== undefined && part !== '').join(' '),
  }));
  return [
    ...unlessEmpty(items, heading('Before each take', 'nobody fires until the call that all stand clear')),
    ...unlessEmpty(items, { block: 'ticks', name: 'Before each take', items }),
  ];
} // prettier-ignore

const FIRES_NOTHING =
  'Longsecond fires nothing: these times are for people and their controller. Things that must meet are fired by one controller, never each by a hand.';

/** Shots that have a cue sheet: some cue or a trigger is written. */
export const hasCues = ({ timing }: ShotPlan): boolean => timing !== undefined;

/** The cue sheet of a shot. */
export function cueSheet(source: Source, shot: ShotPlan): Sheet {
  const { timing } = shot;
  const lacks = [...new Set((timing?.cues ?? []).flatMap(({ missing }) => missing.map((one) => missingWords(one).title)))];
  const says = shot.cautions.map((caution) => caution.says);
  const [trigger, memory] = [triggerFigures(timing?.trigger), memoryFigures(source, timing?.memory)];
  return {
    id: `cues-${shot.id}`,
    kind: 'cues',
    over: 'Cue sheet',
    ...ofShoot(source),
    number: String(shot.number),
    title: shot.title,
    blocks: timing
      ? [
          ...unlessEmpty(says, { block: 'caution', title: 'Take care', says: [...says, DEFERS] }),
          ...before(source, timing),
          ...unlessEmpty(timing.cues, heading('Cues', 'on the clock of the action: 0 is its start')),
          ...unlessEmpty(timing.cues, cueTable(source, timing)),
          ...timing.impossible.map(({ says: why }) => paragraph(why, 'strong')),
          ...unlessEmpty(lacks, paragraph(`Missing: ${lacks.join('; ')}.`)),
          ...unlessEmpty(meetingFigures(source, timing), { block: 'figures', size: 'small', figures: meetingFigures(source, timing) }),
          ...unlessEmpty([...trigger, ...memory], heading('Trigger and memory')),
          ...unlessEmpty(trigger, { block: 'figures', size: 'small', figures: trigger }),
          ...unlessEmpty(memory, { block: 'figures', size: 'small', figures: memory }),
          ...clocksOf(shot.clocks, source),
          paragraph(FIRES_NOTHING, 'small'),
          ...unlessEmpty(timing.cues, { block: 'lines', labels: ['Armed by', 'All clear called by', 'Fired by', 'Made harmless by'] }),
          { block: 'blank', name: 'Takes by hand', columns: [{ title: 'Take', share: 0.1 }, { title: 'Met', share: 0.12 }, { title: 'Changed to', share: 0.3 }, { title: 'Remarks', share: 0.48 }], rowCount: 4, fills: true },
        ]
      : [paragraph('No cue and no trigger is written for this shot, or its rate is not known yet.')],
  };
} // prettier-ignore

/** What stands where cue sheets are asked for and no shot has a cue. */
export function noCues(source: Source): Sheet {
  return {
    id: 'cues',
    kind: 'cues',
    over: 'Cue sheets',
    ...ofShoot(source),
    title: 'No cues yet',
    blocks: [
      paragraph('A cue sheet is printed for each shot with cues or a trigger. Write the first one, then print again.'),
    ],
  };
}
