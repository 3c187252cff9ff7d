/** Shoots to plan in tests: the demo as written, and a small one whose figures are easy to work by hand. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { applyPatch, withParents, type Operation } from '../src/document/patch.ts';
import { readShoot } from '../src/document/read.ts';
import type { Shoot } from '../src/document/schema.ts';
import type { Written, WrittenRecord } from '../src/document/written.ts';
import { planShot } from '../src/plan/planShot.ts';
import type { LimitId, Margin, ShotPlan } from '../src/plan/types.ts';

/** The demo as its text stands. */
export const DEMO = parse(readFileSync(new URL('../demo/shoot.yaml', import.meta.url), 'utf8')) as WrittenRecord;

/** One camera with one mode, one lens, one light, one shot; enough of everything, and nothing left to assume that matters. */
export const SMALL: WrittenRecord = {
  longsecond: 1,
  shoot: { title: 'Small', meterConstant: '250 lx·s' },
  deliverables: { film: { title: 'Film', rate: 25, pixels: '1920 x 1080' } },
  kit: {
    cameras: {
      body: {
        title: 'Body',
        pitch: '10 µm',
        modes: { whole: { title: 'Whole', pixels: '1920 x 1080', rate: '5000 fps', bits: 12, binning: 1 } },
        memory: '64 GB',
        partitions: 1,
        deadTime: '2 µs',
        shortestExposure: '1 µs',
        baseIndex: 800,
        lowestIndex: 200,
        highestIndex: 12800,
        headroom: '3 stops ± 0.2 stops',
        readNoise: '20 e- ± 4 e-',
        quantumEfficiency: 0.2,
        saveRate: '1 GB/s ± 10 %',
      },
    },
    lenses: {
      macro: {
        title: 'Macro',
        focalLength: '100 mm',
        widest: 'T2.8',
        narrowest: 'T32',
        transmittance: 0.8,
        closeFocus: '400 mm',
        pupilMagnification: 0.9,
        imageCircle: '46 mm',
        frontToSensor: '190 mm',
        kind: 'macro',
      },
    },
    attachments: {
      glass: { title: 'Glass', kind: 'glass', loss: '0.5 stops' },
      'nd-1': { title: 'ND 0.3', kind: 'nd', loss: '1 stop' },
      'tube-25': { title: 'Tube', kind: 'tube', length: '25 mm' },
    },
    drives: { disk: { title: 'Disk', capacity: '1 TB' } },
  },
  lighting: { key: { title: 'Key', illuminance: '40 klx ± 5 %', reading: 'metered' } },
  shots: {
    one: {
      title: 'One',
      action: { duration: '0.2 s ± 0.02 s', speed: '1 m/s ± 0.1 m/s', width: '120 mm', height: '60 mm', towardsLens: '50 mm' },
      screenTime: '8 s',
      handles: '0.1 s',
      frameWidth: '200 mm',
      reframe: 0,
      seen: 'lit-on',
      readingStandsFor: '0 stops',
      depth: '12 mm',
      blur: '3 px',
      unsharpness: '2 px',
      diffraction: '2.5 px',
      signalToNoise: '24 dB',
      highlights: '2 stops',
      clearance: '150 mm',
      lighting: 'key',
      attachments: ['glass'],
      hero: { life: '10 min ± 1 min', lightOn: '2 min ± 0.5 min' },
      takes: 3,
    },
  },
}; // prettier-ignore

/** The same shoot with values set, or removed where undefined, at JSON Pointers; sections they need are added. */
export function changed(written: Written, changes: Readonly<Record<string, Written | undefined>>): Written {
  return Object.entries(changes).reduce<Written>((now, [path, value]) => {
    const patch: Operation[] = [value === undefined ? { op: 'remove', path } : { op: 'add', path, value }];
    return applyPatch(now, withParents(now, patch));
  }, written);
}

/** The shoot as read, which must have no problem. */
export function readSound(written: Written): Shoot {
  const { shoot, problems } = readShoot(written);
  if (problems.length > 0) throw new Error(problems.map(({ path, what }) => `${path}: ${what}`).join('\n'));
  return shoot;
}

/** One shot planned from a written shoot, which must have no problem. */
export function planned(written: Written, shotId = 'one'): ShotPlan {
  return planShot(readSound(written), shotId, 1);
}

export function marginOf(plan: Pick<ShotPlan, 'margins'>, id: LimitId): Margin {
  const margin = plan.margins.find((of) => of.id === id);
  if (!margin) throw new Error(`no margin ${id} among ${plan.margins.map((of) => of.id).join(', ')}`);
  return margin;
}

/** How far a margin lies from just enough, in stops. */
export function stopsAt(plan: Pick<ShotPlan, 'margins'>, id: LimitId): number {
  const { stops, missing } = marginOf(plan, id);
  if (!stops) throw new Error(`${id} is unknown: ${missing.map(({ name }) => name).join(', ')}`);
  return stops.value;
}
