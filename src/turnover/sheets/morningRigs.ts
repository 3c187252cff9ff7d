/** The rigs part of a morning sheet: when each moves after its signal, which shots fire it, and who does what. */
import type { ShotPlan } from '../../plan/types.ts';
import { cell, sayShots, strong, titleOf } from './say.ts';
import { latencyWords, shotsBy } from './shotWords.ts';
import { paragraph, subheading, unlessEmpty, type Block, type Cell, type Source } from './sheet.ts';

function rigRow(source: Source, id: string, shots: readonly ShotPlan[]): readonly Cell[] {
  const rig = source.shoot.kit.rigs[id];
  return [strong(titleOf(rig, id), rig?.note), strong(latencyWords(source, id)), cell(sayShots(shots))];
}

/** Who does what is settled by the people on the set, and written down by them. */
const BY_HAND = ['Armed by', 'Fired by', 'Stopped by', 'Cleared by'];

export function rigsPart(source: Source): readonly Block[] {
  const groups = shotsBy(source, ({ rigs }) => rigs);
  const ids = [...new Set([...groups.keys(), ...Object.keys(source.shoot.kit.rigs)])];
  const firing = source.plan.shots.filter((shot) => [...groups.values()].some((shots) => shots.includes(shot)));
  const rows = ids.map((id) => rigRow(source, id, groups.get(id) ?? []));
  return [
    ...(rows.length === 0 ? [paragraph('No rig is written.')] : []),
    ...unlessEmpty(rows, {
      block: 'table',
      name: 'Rigs',
      columns: [
        { title: 'Rig', align: 'left' },
        { title: 'Moves after its signal', align: 'right' },
        { title: 'Fired in', align: 'left' },
      ],
      rows,
    }),
    ...(rows.length === 0 ? [] : [paragraph('After ± is the spread: eight times in ten it moves within it. Longsecond fires nothing.', 'small')]), // prettier-ignore
    ...firing.flatMap((shot): readonly Block[] => [
      subheading(`${shot.number} ${shot.title}`),
      { block: 'lines', labels: BY_HAND },
    ]),
  ];
}
