import type { ShotPlan } from '../../../plan/types.ts';
import type { Choice } from '../../parts/ChoiceField.tsx';

/** The value of a choice of no shot. */
export const NO_SHOT = '';

export const shotChoices = (shots: readonly Pick<ShotPlan, 'id' | 'number' | 'title'>[]): readonly Choice[] => [
  { value: NO_SHOT, label: 'no shot yet' },
  ...shots.map(({ id, number, title }) => ({ value: id, label: `${number} ${title}` })),
];
