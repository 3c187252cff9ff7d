/** Two measured clips held against each other: the figures that differ, and each in words. */
import type { Measurement } from '../measure/types.ts';
import type { MeasuredClip } from './measureReply.ts';
import { pairColour, type PairColour } from './pairColour.ts';
import { pairNotes, pairRows, speedsOf, strongest, type PairRow } from './pairRows.ts';
import { onOneLine, wrapped, type Ink } from './lines.ts';
import { present, rounded } from './planReply.ts';
import type { PairReply } from './pairSchema.ts';
import { detailRatio, lightRatio_stops, sceneOf, type Pair, type SceneVerdict } from './pairScene.ts';

/** Of the second against the first; what cannot be told of both is left out. */
export interface MeasuredPair {
  /** One scene from one place, as far as the tiles tell. */
  readonly scene: SceneVerdict;
  /** Brighter above 0: of one scene by what stands still, else of the middle tones. */
  readonly exposure_stops?: number;
  readonly colour?: PairColour;
  /** Swing of the flicker, deeper above 0. */
  readonly swing_stops?: number;
  /** Of one scene alone. */
  readonly detailRatio?: number;
  /** Of what moves fastest: over the real width where both are to scale, else over that of the picture. */
  readonly speedRatio?: number;
  /** Of actions that both clips hold from beginning to end. */
  readonly actionRatio?: number;
  readonly noiseRatio?: number;
  /** Every figure of both in words, and what has to be known first. */
  readonly rows: readonly PairRow[];
  readonly notes: readonly string[];
}

const ratio = (first: number | undefined, second: number | undefined): number | undefined =>
  first !== undefined && second !== undefined && first > 0 && second > 0 ? second / first : undefined;

function swingOf(clips: Pair<Measurement>): number | undefined {
  if (clips.some(({ flicker }) => flicker.verdict === 'cannot tell')) return undefined;
  const [a, b] = [strongest(clips[0])?.swing_stops ?? 0, strongest(clips[1])?.swing_stops ?? 0];
  return b - a;
}

function actionRatio(clips: Pair<Measurement>): number | undefined {
  const [a, b] = clips.map(({ action, frameRate_fps }) => (action?.isBegun && action.isEnded ? (action.end - action.onset + 1) / frameRate_fps : undefined)); // prettier-ignore
  return ratio(a, b);
}

/** How the second of two clips differs from the first. */
export function measurePair(clips: Pair<MeasuredClip>): MeasuredPair {
  const of: Pair<Measurement> = [clips[0].measurement, clips[1].measurement];
  const [a, b] = of;
  const middles = ratio(a.exposure.middle, b.exposure.middle);
  const exposure_stops = lightRatio_stops(of) ?? (middles === undefined ? undefined : Math.log2(middles));
  const told = {
    exposure_stops,
    colour: pairColour(of),
    swing_stops: swingOf(of),
    detailRatio: detailRatio(of),
    speedRatio: ratio(...speedsOf(clips).values),
    actionRatio: actionRatio(of),
    noiseRatio: ratio(a.noise?.deviationFraction, b.noise?.deviationFraction),
  };
  return {
    scene: sceneOf(of),
    ...present(told),
    rows: pairRows(clips),
    notes: pairNotes(clips),
  };
}

/** The pair in the form in which programs are told of it. */
export function pairReply({ colour, rows, ...pair }: MeasuredPair): PairReply {
  const { scene, notes, ...figures } = pair;
  return rounded({
    scene,
    ...present({
      exposure_stops: figures.exposure_stops,
      colour: colour && {
        distanceRatio: colour.distance,
        deviationRatio: colour.deviation,
        ...present({ warmer_mired: colour.warmer_mired, greenerDuvRatio: colour.greenerDuv }),
        isByShared: colour.isByShared,
      },
      swing_stops: figures.swing_stops,
      detailRatio: figures.detailRatio,
      speedRatio: figures.speedRatio,
      actionRatio: figures.actionRatio,
      noiseRatio: figures.noiseRatio,
    }),
    rows: rows.map(({ title, of: [first, second], differs, isSame }) => ({ title, first, second, differs, isSame })),
    notes,
  });
}

/** The pair for eyes, a line for what is the same and one more for each clip of what is not. */
export function pairLines({ rows, notes, scene }: MeasuredPair, names: Pair<string>, ink: Ink): readonly string[] {
  const told = rows.flatMap(({ title, of: [first, second], differs, isSame }) => {
    const head = wrapped(onOneLine(`${title}: ${differs}.`), 2, 4);
    if (isSame) return head.map(ink.faint);
    return [...head, ...wrapped(onOneLine(`${first}; then ${second}`), 6, 6).map(ink.faint)];
  });
  const where = scene === 'same' ? ['  One scene from one place.'] : scene === 'other' ? ['  Another scene, or another place.'] : [];
  return [ink.strong(onOneLine(`${names[1]} against ${names[0]}`)), ...where, ...told, ...notes.flatMap((note) => wrapped(onOneLine(note), 2, 4).map(ink.faint))];
} // prettier-ignore
