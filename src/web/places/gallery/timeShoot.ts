/** The gallery's shots in time: cues that meet, one that nobody can time yet, and a memory that can never hold its action. */
import type { WrittenRecord } from '../../../document/written.ts';
import { GALLERY_SHOOT } from './shoot.ts';

const kit = GALLERY_SHOOT['kit'] as WrittenRecord;
const cameras = kit['cameras'] as WrittenRecord;
const { drop } = GALLERY_SHOOT['shots'] as { readonly drop: WrittenRecord };

const BERRY = { title: 'Berry', rig: 'latch', does: 'falls', height: '0.4 m', diameter: '20 mm', density: '950 kg/m³', place: '2 mm' }; // prettier-ignore

export const TIME_SHOOT: WrittenRecord = {
  ...GALLERY_SHOOT,
  shoot: { title: 'Gallery, in time', seed: 7, day: { call: '08:00', meals: ['13:00'], wrap: '12:30' } },
  kit: {
    ...kit,
    cameras: { ...cameras, brief: { ...(cameras['body'] as WrittenRecord), title: 'Body with little memory', memory: '0.6 GB' } },
    rigs: {
      latch: { title: 'Latch', kind: 'latch', latency: '30 ms ± 2 ms', jitter: '2 ms', measured: true },
      valve: { title: 'Valve', kind: 'valve', latency: '12 ms ± 1 ms', jitter: '1 ms', measured: true },
    },
  },
  shots: {
    meets: {
      ...drop,
      title: 'A berry and a jet meet',
      cues: { berry: BERRY, jet: { title: 'Jet', rig: 'valve', does: 'acts', travel: '60 ms ± 3 ms' } },
      meeting: { tolerance: '12 ms', at: '60 ms' },
      trigger: { by: 'person', answers: '60 ms' },
    },
    lacks: {
      ...drop,
      title: 'A berry whose fall nobody has measured',
      cues: { berry: BERRY, leaf: { title: 'Leaf', rig: 'latch', does: 'falls' } },
    },
    never: {
      ...drop,
      title: 'Longer than the memory',
      camera: 'brief',
      cues: { berry: BERRY },
      trigger: { by: 'electric' },
    },
  },
}; // prettier-ignore
