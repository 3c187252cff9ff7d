/** The data part of a morning sheet: what every take weighs and takes to save, and the room on the drives. */
import type { ShotPlan } from '../../plan/types.ts';
import { barsOf } from './bars.ts';
import { cell, NOT_KNOWN, sayLong, sayNumber, strong, titleOf } from './say.ts';
import { takesOf } from './shotWords.ts';
import { paragraph, subheading, unlessEmpty, type Block, type Cell, type Source } from './sheet.ts';

const times = (value: number | undefined, count: number): number | undefined =>
  value === undefined ? undefined : value * count;

function shotRow(source: Source, shot: ShotPlan): readonly Cell[] {
  const { keptCount } = takesOf(source.shoot, shot);
  const { keptSize_B, saveTime_s } = shot;
  const inAll_s = times(saveTime_s, keptCount);
  return [
    strong(String(shot.number)),
    strong(shot.title),
    cell(String(keptCount)),
    strong(sayNumber(source, 'keptSize_B', keptSize_B)),
    cell(sayNumber(source, 'saveTime_s', saveTime_s)),
    strong(sayNumber(source, 'keptSize_B', times(keptSize_B, keptCount))),
    cell(inAll_s === undefined ? NOT_KNOWN : sayLong(inAll_s)),
  ];
}

function driveRow(source: Source, id: string): readonly Cell[] {
  const { title, capacity_B, used_B, writeRate_B_per_s, availability } = source.shoot.kit.drives[id]!;
  const free_B = capacity_B === undefined ? undefined : Math.max(0, capacity_B - (used_B ?? 0));
  const standing =
    availability === 'hire' ? 'can be hired' : availability === 'unwanted' ? 'not to be used' : undefined;
  return [
    strong(titleOf({ ...(title === undefined ? {} : { title }) }, id), standing),
    cell(sayNumber(source, 'capacity_B', capacity_B)),
    cell(sayNumber(source, 'used_B', used_B ?? 0)),
    strong(sayNumber(source, 'free_B', free_B)),
    cell(sayNumber(source, 'writeRate_B_per_s', writeRate_B_per_s)),
  ];
}

export function dataPart(source: Source): readonly Block[] {
  const { plan, shoot } = source;
  const { keptSize_B, saveTime_s } = plan.totals;
  const drives = Object.keys(shoot.kit.drives);
  const unknown = plan.shots.filter((shot) => shot.keptSize_B === undefined);
  return [
    {
      block: 'table',
      name: 'What is kept of every shot',
      columns: [
        { title: '', align: 'right' },
        { title: 'Shot', align: 'left' },
        { title: 'Takes kept', align: 'right' },
        { title: 'A take', align: 'right' },
        { title: 'A take saves in', align: 'right' },
        { title: 'In all', align: 'right' },
        { title: 'All save in', align: 'right' },
      ],
      rows: plan.shots.map((shot) => shotRow(source, shot)),
      total: [
        cell(''),
        strong('The whole shoot'),
        cell(''),
        cell(''),
        cell(''),
        strong(sayNumber(source, 'keptSize_B', keptSize_B)),
        strong(sayLong(saveTime_s)),
      ],
    },
    ...unlessEmpty(unknown, paragraph(`The total leaves out ${unknown.map(({ number }) => `shot ${number}`).join(', ')}, whose size is not known.`, 'small')), // prettier-ignore
    paragraph('Memory may be cleared only when a recording is saved and opens.', 'strong'),
    subheading('Drives'),
    ...(drives.length === 0 ? [paragraph('No drive is written.')] : []),
    ...unlessEmpty(drives, {
      block: 'table',
      name: 'Drives',
      columns: [
        { title: 'Drive', align: 'left' },
        { title: 'Holds', align: 'right' },
        { title: 'Used', align: 'right' },
        { title: 'Free', align: 'right' },
        { title: 'Writes', align: 'right' },
      ],
      rows: drives.map((id) => driveRow(source, id)),
    }),
    ...unlessEmpty(plan.margins, barsOf('Storage', plan.margins, source)),
  ];
}
