/** What does the long work of a queue: clips measured on a thread of their own, and small copies made by ffmpeg. */
import { basename } from 'node:path';
import { parseCurve } from '../measure/curveText.ts';
import type { ClipMeasured } from './measureClip.ts';
import { measuredAlone } from './measuredAlone.ts';
import { measureInWorker, type MeasureInWorkerGiven } from './measureInWorker.ts';
import type { MeasuredAlone, Proxies, Runners } from './queueTypes.ts';
import type { MeasureInput } from './types.ts';

export interface RunnersGiven {
  readonly proxies: Pick<Proxies, 'make'>;
  /** The measuring worker's program, where it is not the one built beside. */
  readonly entry?: URL;
  readonly checkpointAfter_ms?: number;
}

type Options = Pick<MeasureInWorkerGiven, 'name' | 'captureRate_fps' | 'playback_fps' | 'curve' | 'blackCode'>;

function optionsOf({ path, basis: { captureRate_fps, playback_fps, curve, blackCode } }: MeasureInput): Options {
  return {
    name: path,
    ...(captureRate_fps !== undefined && { captureRate_fps }),
    ...(playback_fps !== undefined && { playback_fps }),
    ...(curve !== undefined && { curve: parseCurve(curve) }),
    ...(blackCode !== undefined && { blackCode }),
  };
}

function keptOf(measured: ClipMeasured, { path, basis }: MeasureInput): MeasuredAlone {
  const curve = basis.curve === undefined ? undefined : parseCurve(basis.curve);
  return measuredAlone(measured, { name: basename(path), rateFrom: basis.rateFrom, curve, mend: 'say it' });
}

export function createRunners({ proxies, entry, checkpointAfter_ms }: RunnersGiven): Runners {
  const how = { ...(entry && { entry }), ...(checkpointAfter_ms !== undefined && { checkpointAfter_ms }) };
  return {
    look: async (input, { onLook, ...hooks }) => {
      const measured = await measureInWorker({
        ...optionsOf(input),
        ...how,
        ...hooks,
        isFirstLook: true,
        onFirstLook: (look) => onLook(keptOf(look, input)),
      });
      return keptOf(measured, input);
    },

    measure: async (input, hooks) => {
      const measured = await measureInWorker({ ...optionsOf(input), ...how, ...hooks, isFirstLook: false });
      return keptOf(measured, input);
    },

    proxy: async (input, hooks) => {
      await proxies.make(input, hooks);
    },
  };
}
