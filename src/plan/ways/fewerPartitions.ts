/** Divide the memory into fewer parts, so that each holds more. */
import type { Move } from './move.ts';
import { memoryTimes } from './triggerRoom.ts';

export const fewerPartitions: Move = {
  id: 'fewer-partitions',
  closes: ['buffer', 'trigger-catch'],
  propose(context) {
    const { shoot, settings, number } = context;
    const parts = number('partitionCount');
    if (!(parts > 1)) return [];
    const times = memoryTimes(context) ?? Infinity;
    const fewer = Math.max(1, Math.min(parts - 1, Math.floor(parts / times + 1e-9)));
    const title = shoot.kit.cameras[settings.camera]?.title ?? settings.camera;
    return [
      {
        title: fewer === 1 ? `Leave the memory of ${title} whole` : `Divide the memory of ${title} by ${fewer}`,
        says: `${fewer === 1 ? 'each roll is saved before the next' : `${fewer} rolls before one must be saved`}, not ${parts}, in every shot of this camera`,
        patch: [{ op: 'add', path: `/kit/cameras/${settings.camera}/partitions`, value: fewer }],
        gives_stops: 0.3 * Math.log2(parts / fewer),
      },
    ];
  },
};
