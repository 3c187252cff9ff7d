/** Whether ffmpeg is there, asked once for as long as it is, and now and then where it is not. */
import { Fault } from '../base/fault.ts';
import { runTool } from '../media/tools.ts';
import type { FootageState } from '../record/footage.ts';

type Missing = FootageState['ffmpegMissing'];

/** Somebody who was told to install it looks again soon. */
const ASK_AGAIN_ms = 5000;

let asked: { readonly until_ms: number; readonly answer: Promise<Missing> } | undefined;

async function ask(): Promise<Missing> {
  try {
    for (const tool of ['ffmpeg', 'ffprobe'] as const) await runTool({ tool, args: ['-version'], where: tool });
    return undefined;
  } catch (error) {
    if (error instanceof Fault) return { what: error.what, mend: error.mend };
    throw error;
  }
}

/** What is missing and how to get it; undefined where nothing is. */
export async function missingFfmpeg(): Promise<Missing> {
  if (asked && performance.now() < asked.until_ms) return asked.answer;
  asked = { until_ms: performance.now() + ASK_AGAIN_ms, answer: ask() };
  const missing = await asked.answer;
  if (!missing) asked = { ...asked, until_ms: Infinity };
  return missing;
}
