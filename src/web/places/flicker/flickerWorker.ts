/** This page's worker for flicker, started when first asked. */
import type { FlickerCalls } from '../../workers/calls.ts';
import { connectWorker, type Port } from '../../workers/connect.ts';

export const flickerWorker = connectWorker<FlickerCalls>(
  () => new Worker(new URL('../../workers/flicker.ts', import.meta.url), { type: 'module' }) as Port,
);
