/** Every cue and trigger of a plan as one table: for a controller's program, or the rig person's own sheet. */
import type { CueTiming } from '../plan/timing/types.ts';
import type { Plan, ShotPlan } from '../plan/types.ts';
import { csvText, type CsvColumn } from './csv.ts';

interface Row {
  readonly shot: ShotPlan;
  readonly cue?: CueTiming;
}

const ofCue = (name: string, of: (cue: CueTiming) => string | number | boolean | undefined): CsvColumn<Row> => ({
  name,
  of: ({ cue }) => cue && of(cue),
});

const COLUMNS: readonly CsvColumn<Row>[] = [
  { name: 'shotNumber', of: ({ shot }) => shot.number },
  { name: 'shot', of: ({ shot }) => shot.id },
  { name: 'shotTitle', of: ({ shot }) => shot.title },
  { name: 'cue', of: ({ shot, cue }) => cue?.id ?? (shot.timing?.trigger ? 'trigger' : '') },
  { name: 'cueTitle', of: ({ shot, cue }) => cue?.title ?? shot.timing?.trigger?.by },
  ofCue('rig', ({ rig }) => rig),
  ofCue('does', ({ does }) => does),
  ofCue('signalAfterFirst_s', ({ afterFirst_s }) => afterFirst_s),
  { name: 'signal_s', of: ({ shot, cue }) => (cue ? cue.fire_s : shot.timing?.trigger?.comes_s) },
  ofCue('moves_s', ({ moves_s }) => moves_s),
  ofCue('arrives_s', ({ arrives_s }) => arrives_s),
  ofCue('atRest_s', ({ rests_s }) => rests_s),
  ofCue('spread_s', ({ spread_s }) => spread_s),
  ofCue('latency_s', ({ latency_s }) => latency_s),
  ofCue('travel_s', ({ travel_s }) => travel_s),
  ofCue('mustMeet', ({ isApart }) => !isApart),
  { name: 'meets_s', of: ({ shot, cue }) => (cue && !cue.isApart ? shot.timing?.meeting?.at_s : undefined) },
  { name: 'postTriggerFraction', of: ({ shot, cue }) => (cue ? undefined : shot.timing?.trigger?.set.postTriggerFraction) },
  { name: 'captureRate_fps', of: ({ shot }) => shot.timing?.captureRate_fps },
]; // prettier-ignore

/** Times are on the clock of each shot's action: 0 is its start. A shot without cues or trigger has no row. */
export function cuesCsv({ shots }: Pick<Plan, 'shots'>): string {
  const rows = shots.flatMap((shot): readonly Row[] => [
    ...(shot.timing?.cues ?? []).map((cue) => ({ shot, cue })),
    ...(shot.timing?.trigger ? [{ shot }] : []),
  ]);
  return csvText(COLUMNS, rows);
}
