/** Edits of cues and trigger, as patches on the written shoot. */
import { isRecord, type Written } from '../../../document/written.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { writeQuantity } from '../../../base/quantity.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { freshId } from '../../../document/freshId.ts';

/** Sets the share of the memory kept after the trigger. */
export const postPatch = (shotId: string, postTriggerFraction: number): readonly PatchOperation[] => [
  { op: 'add', path: `/shots/${shotId}/trigger/post`, value: `${Math.round(postTriggerFraction * 100)} %` },
];

/** Lets the best share be found again. */
export function findPostPatch(written: Written, shotId: string): readonly PatchOperation[] {
  const path = `/shots/${shotId}/trigger/post`;
  return writtenValueAt(written, path) === undefined ? [] : [{ op: 'remove', path }];
}

/** Moves when a cue must arrive, after the meeting, to a tenth of a millisecond. */
export const meetsPatch = (shotId: string, cueId: string, arrival_s: number): readonly PatchOperation[] => [
  {
    op: 'add',
    path: `/shots/${shotId}/cues/${cueId}/meets`,
    value: writeQuantity('time', Math.round(arrival_s * 1e4) / 1e4),
  },
];

export function addCuePatch(written: Written, shotId: string, rig: string | undefined): readonly PatchOperation[] {
  const section = `/shots/${shotId}/cues`;
  const cue = { does: 'acts', ...(rig === undefined ? {} : { rig }) };
  const id = freshId(written, 'cue', section);
  return isRecord(writtenValueAt(written, section))
    ? [{ op: 'add', path: `${section}/${id}`, value: cue }]
    : [{ op: 'add', path: section, value: { [id]: cue } }];
}

export const removeCuePatch = (shotId: string, cueId: string): readonly PatchOperation[] => [
  { op: 'remove', path: `/shots/${shotId}/cues/${cueId}` },
];

/** The cue's figures that what it does needs, then those that any has: key, label, example. */
export const CUE_FIELDS: Readonly<Record<string, readonly (readonly [key: string, label: string, example: string])[]>> =
  {
    acts: [],
    falls: [
      ['height', 'Falls', '0.6 m'],
      ['diameter', 'Diameter', '80 mm'],
      ['density', 'Density', '950 kg/m³'],
    ],
    flies: [
      ['distance', 'Flies', '0.5 m'],
      ['speed', 'Leaves at', '4 m/s ± 0.2 m/s'],
      ['angle', 'Above level', '45°'],
      ['diameter', 'Diameter', '40 mm'],
      ['density', 'Density', '900 kg/m³'],
    ],
    swings: [
      ['arm', 'Arm', '0.8 m'],
      ['swing', 'Let go at', '60°'],
    ],
    pours: [['height', 'Drops', '0.3 m']],
    moves: [
      ['distance', 'Moves', '0.5 m'],
      ['speed', 'At most', '2 m/s'],
      ['acceleration', 'Gathers', '10 m/s²'],
    ],
    lights: [],
  };

export const ANY_CUE_FIELDS = [
  ['meets', 'Arrives, after the meeting', '0 ms'],
  ['settle', 'Rests before it', '0 ms'],
  ['place', 'Release varies by', '2 mm'],
  ['travel', 'Travel, as measured', '350 ms ± 3 ms'],
] as const;
