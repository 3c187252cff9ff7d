/**
 * Flicker over 200 frame rates by 200 shutters under three lamps that keep no step, as the screen's chart works it out,
 * against the same sums vectorised in numpy by a process kept waiting; and the flicker of forty shots, against going
 * through the frames of each. Without Python and numpy the first has nothing to be held against, and the reason is printed.
 */
import { spawn, spawnSync } from 'node:child_process';
import { createInterface } from 'node:readline';
import { exposureTable, frameLights } from '../src/laws/flicker/exposure.ts';
import { waveformOf } from '../src/laws/flicker/lamp.ts';
import type { LightGroup } from '../src/laws/flicker/mix.ts';
import { phasesMet, seenFlicker } from '../src/laws/flicker/seen.ts';
import { flickerChart, MOST_PHASES_MET } from '../src/plan/flickerChart.ts';
import { bench, type Contest } from './harness.ts';

const SIDE_COUNT = 200;
const SHOT_COUNT = 40;

const LAMPS: readonly LightGroup[] = [
  { waveform: waveformOf({ kind: 'magnetic', mains_Hz: 50, floorFraction: 0.3 }), shareFraction: 0.5 },
  { waveform: waveformOf({ kind: 'square' }), shareFraction: 0.3 },
  { waveform: waveformOf({ kind: 'led-pulses', pulse_Hz: 2000, dutyFraction: 0.4, lowFraction: 0.1 }), shareFraction: 0.2 },
]; // prettier-ignore

const even = (from: number, to: number) => Float64Array.from({ length: SIDE_COUNT }, (_, i) => from * (to / from) ** (i / (SIDE_COUNT - 1))); // prettier-ignore
const rates_fps = even(24, 25_000).map(Math.round);
const exposures_s = even(2e-6, 1 / 24);

function chartSum(): number {
  let sum = 0;
  for (const stops of flickerChart(LAMPS, { rates_fps, exposures_s, playback_fps: 25 })) if (!Number.isNaN(stops)) sum += stops; // prettier-ignore
  return sum;
}

/** Shots from 100 to 20,000 fps, each with a clip of 0.4 s. */
const SHOTS = Array.from({ length: SHOT_COUNT }, (_, i) => {
  const frameRate_fps = Math.round(100 * 200 ** (i / (SHOT_COUNT - 1)));
  return { frameRate_fps, exposureTime_s: 1 / (2 * frameRate_fps), playback_fps: 25, frameCount: Math.round(0.4 * frameRate_fps) }; // prettier-ignore
});

const ofShots = (): number => SHOTS.reduce((sum, at) => sum + seenFlicker(LAMPS, at).worst.peakToPeak_stops, 0);

/** Frame by frame, from 32 places to begin at. */
function ofShotsPlainly(): number {
  let sum = 0;
  for (const { playback_fps: _, ...at } of SHOTS) {
    let worst = 0;
    for (let start = 0; start < 32; start += 1) {
      const lights = frameLights(LAMPS.map(({ waveform, shareFraction }) => ({ table: exposureTable(waveform), shareRatio: shareFraction })), { ...at, start_s: start * 3.1e-4 }); // prettier-ignore
      let [least, most] = [Infinity, 0];
      for (const light of lights) [least, most] = [Math.min(least, light), Math.max(most, light)];
      worst = Math.max(worst, Math.log2(most / least));
    }
    sum += worst;
  }
  return sum;
}

/** How far the two sums may lie apart, of themselves: where two starts swing as far, rounding decides which is taken. */
const AGREE = 1e-4;

async function withNumpy(run: (contest: Contest) => Promise<void>): Promise<void> {
  const python = spawn('python3', ['bench/flicker.py'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = createInterface({ input: python.stdout })[Symbol.asyncIterator]();
  const ask = async (words: string): Promise<string> => {
    python.stdin.write(`${words}\n`);
    const line: IteratorResult<string, undefined> = await lines.next();
    if (line.done === true) throw new Error('bench/flicker.py ended before it answered');
    return line.value;
  };
  const countOf = (period_s: number, rate_fps: number): number => {
    const { count = 0 } = phasesMet({ cyclesPerFrame: 1 / (rate_fps * period_s) }) ?? {};
    return count > MOST_PHASES_MET ? 0 : count;
  };
  const lamps = LAMPS.map(({ waveform: { period_s, samples }, shareFraction }) => ({ period_s, samples: [...samples], shareFraction, counts: [...rates_fps].map((rate) => countOf(period_s, rate)) })); // prettier-ignore
  try {
    await ask(JSON.stringify({ rates_fps: [...rates_fps], exposures_s: [...exposures_s], lamps }));
    const [ours, theirs] = [chartSum(), Number(await ask('again'))];
    if (!(Math.abs(ours / theirs - 1) < AGREE)) throw new Error(`the two do not work out the same chart: ${ours} and ${theirs}`); // prettier-ignore
    await run({
      title: `chart of ${SIDE_COUNT} × ${SIDE_COUNT}, ${LAMPS.length} lamps`,
      a: { name: 'flickerChart', run: chartSum },
      b: { name: 'numpy', run: async () => Number(await ask('again')) },
      budgetRatio: 1,
    });
  } finally {
    python.kill();
  }
}

const forty: Contest = {
  title: `flicker of ${SHOT_COUNT} shots, ${LAMPS.length} lamps`,
  a: { name: 'seenFlicker', run: ofShots },
  b: { name: 'frame by frame', run: ofShotsPlainly },
  budgetRatio: 0.2,
};

const found = spawnSync('python3', ['-c', 'import numpy'], { encoding: 'utf8' });
if (found.status === 0) await withNumpy((chart) => bench([chart, forty]));
else {
  const why = found.error ? 'python3 is not there' : 'python3 has no numpy';
  process.stdout.write(`Skipped: ${why}, so there is nothing to hold the chart of flicker against.\n`);
  await bench([forty]);
}
