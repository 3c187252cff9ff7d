/** Cues and triggers for the small shoot of tests, whose figures can be worked by hand. */
import type { Written } from '../src/document/written.ts';
import { changed, SMALL } from './shoots.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

/** Rigs that were measured, so that nothing of them is assumed. */
export const RIGS: Changes = {
  '/kit/rigs': {
    dropper: { title: 'Dropper', kind: 'valve', latency: '15 ms', jitter: '1 ms', measured: true },
    latch: { title: 'Latch', kind: 'latch', latency: '30 ms', jitter: '1 ms', measured: true },
    nozzle: { title: 'Nozzle', kind: 'valve', latency: '8 ms', jitter: '1 ms', measured: true },
  },
};

/** A drop, a berry and a jet that are there 120 ms after it opens. */
export const DROP = { title: 'Drop', rig: 'dropper', does: 'falls', height: '0.6 m', diameter: '4 mm', density: '998.2 kg/m³' }; // prettier-ignore
export const BERRY = { title: 'Berry', rig: 'latch', does: 'falls', height: '0.9 m', diameter: '25 mm', density: '950 kg/m³' }; // prettier-ignore
export const JET = { title: 'Jet', rig: 'nozzle', does: 'acts', travel: '120 ms' };

/** The small shoot with these three, that must meet within 2 ms. */
export const MEETING: Changes = {
  ...RIGS,
  '/shots/one/cues': { drop: DROP, berry: BERRY, jet: JET },
  '/shots/one/meeting': { tolerance: '2 ms', at: '50 ms', chance: '60 %' },
};

/** A memory of half a second at a thousand frames a second, and handles of 50 ms. */
export const SHORT_MEMORY: Changes = { '/kit/cameras/body/memory': '1.5552 GB', '/shots/one/handles': '50 ms' };

/** A person at the button, as people are. */
export const PERSON: Changes = { ...SHORT_MEMORY, '/shots/one/trigger': { by: 'person', answers: '0 s' } };

export const withChanges = (...all: readonly Changes[]): Written => all.reduce<Written>((written, changes) => changed(written, changes), SMALL); // prettier-ignore
