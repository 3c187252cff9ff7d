/** The small shoot that the gallery is drawn from: every figure on that page is planned from these values. */
import type { WrittenRecord } from '../../../document/written.ts';

const MODES = { whole: { title: 'Whole picture', pixels: '1920 x 1080', rate: '5000 fps', bits: 12, binning: 1 } };

const BODY = {
  pitch: '10 µm',
  modes: MODES,
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
};

const ASKED = {
  handles: '0.1 s',
  frameWidth: '200 mm',
  seen: 'lit-on',
  readingStandsFor: '0 stops',
  blur: '3 px',
  signalToNoise: '24 dB',
  highlights: '2 stops',
  clearance: '150 mm',
  lighting: 'key',
};

/**
 * Four shots of one drop: `drop` in one speed, with limits in every state that can be judged; `ramp` in a profile of
 * speeds; `bare` on a body whose memory nobody wrote down; `mistyped` with two slips of the pen.
 */
export const GALLERY_SHOOT: WrittenRecord = {
  longsecond: 1,
  shoot: { title: 'Gallery', seed: 7 },
  deliverables: { film: { title: 'Film', rate: 25, pixels: '1920 x 1080', safe: '90 %' } },
  kit: {
    cameras: {
      body: { title: 'Body with memory', memory: '8 GB', ...BODY },
      bare: { title: 'Body not yet looked up', ...BODY },
    },
    lenses: {
      macro: {
        title: '100 mm macro',
        focalLength: '100 mm',
        widest: 'T2.8',
        narrowest: 'T32',
        transmittance: 0.8,
        closeFocus: '400 mm',
        imageCircle: '46 mm',
        frontToSensor: '190 mm',
        kind: 'macro',
      },
    },
    attachments: {
      glass: { title: 'Splash glass', kind: 'glass', loss: '0.5 stops' },
      nd: { title: 'ND 0.3', kind: 'nd', loss: '1 stop' },
    },
    products: { drop: { title: 'Drop', pieces: 2 } },
    drives: { disk: { title: 'Drive', capacity: '1 TB' } },
  },
  lighting: { key: { title: 'Key', illuminance: '3 klx ± 5 %', reading: 'metered' } },
  defaults: { depth: '12 mm' },
  shots: {
    drop: {
      title: 'One drop',
      camera: 'body',
      lens: 'macro',
      action: {
        duration: '0.2 s ± 0.02 s',
        speed: '1 m/s ± 0.1 m/s',
        width: '120 mm',
        height: '60 mm',
        towardsLens: '50 mm',
      },
      screenTime: '8 s',
      attachments: ['glass'],
      hero: { product: 'drop', perTake: 1, life: '10 min ± 1 min', lightOn: '2 min ± 0.5 min' },
      takes: 3,
      ...ASKED,
    },
    ramp: {
      title: 'One drop, in a profile of speeds',
      camera: 'body',
      lens: 'macro',
      action: { speed: '1 m/s ± 0.1 m/s', width: '120 mm', height: '60 mm', towardsLens: '50 mm' },
      speed: {
        knots: [
          { at: '0 s', speed: 1 },
          { at: '1 s', speed: '1/32' },
          { at: '5 s', speed: '1/32' },
          { at: '6 s', speed: 1 },
        ],
        between: 'geometric',
      },
      ...ASKED,
    },
    bare: {
      title: 'One drop, on another body',
      camera: 'bare',
      lens: 'macro',
      action: { duration: '0.2 s', width: '120 mm', height: '60 mm' },
      screenTime: '8 s',
      ...ASKED,
    },
    mistyped: { title: 'One drop, mistyped', ...ASKED, frameWidth: '200 parsnips', seen: 'lit-sideways' },
  },
};
