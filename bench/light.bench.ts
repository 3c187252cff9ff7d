/**
 * The light of 24 lamps with measured photometry on 200 × 200 points: one point after another as the screens work it
 * out, against the same sums vectorised in numpy by a process kept waiting, in one run. Without Python and numpy there
 * is nothing to hold it against, and the reason is printed.
 */
import { spawn, spawnSync } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Vec3 } from '../src/laws/light/area/polygon.ts';
import { acrossAxis, lightAt_lx, towards, type GridSource } from '../src/laws/light/placed/source.ts';
import { bench, seededNumbers } from './harness.ts';

const LAMP_COUNT = 24;
const SIDE_COUNT = 200;
const HALF_m = 1;

const draw = seededNumbers(24);

/** A lopsided lobe measured every 15° about the axis and every 2.5° off it. */
function measuredGrid(): GridSource['grid'] {
  const planes_deg = Float64Array.from({ length: 25 }, (_, i) => 15 * i);
  const gammas_deg = Float64Array.from({ length: 73 }, (_, i) => 2.5 * i);
  const [peak_cd, exponent, lean] = [20_000 + 60_000 * draw(), 4 + 30 * draw(), 0.3 * draw()];
  const intensities_cd = Float64Array.from({ length: planes_deg.length * gammas_deg.length }, (_, at) => {
    const turn = (planes_deg[Math.floor(at / gammas_deg.length)]! * Math.PI) / 180;
    const cosine = Math.cos((gammas_deg[at % gammas_deg.length]! * Math.PI) / 180);
    return peak_cd * Math.max(0, cosine) ** exponent * (1 + lean * Math.cos(turn));
  });
  return { symmetry: 'none', planes_deg, gammas_deg, intensities_cd };
}

function placedLamp(): GridSource {
  const turn = 2 * Math.PI * draw();
  const at: Vec3 = [2 * Math.cos(turn), 2 * Math.sin(turn), 0.8 + 1.5 * draw()];
  const axis = towards(at, [0.2 * draw(), 0.2 * draw(), 0]);
  const { right, up } = acrossAxis(axis);
  return { kind: 'grid', at, axis, c0: right, c90: up, grid: measuredGrid(), share: 1 };
}

const lamps = Array.from({ length: LAMP_COUNT }, placedLamp);
const across = Float64Array.from({ length: SIDE_COUNT }, (_, i) => HALF_m * ((2 * i) / (SIDE_COUNT - 1) - 1));
const light_lx = new Float64Array(SIDE_COUNT * SIDE_COUNT);

function lightEverywhere_lx(): number {
  light_lx.fill(0);
  for (const lamp of lamps)
    for (let row = 0; row < SIDE_COUNT; row += 1)
      for (let column = 0; column < SIDE_COUNT; column += 1)
        light_lx[row * SIDE_COUNT + column]! += lightAt_lx(lamp, across[column]!, across[row]!, 0, 0, 0, 1);
  let sum = 0;
  for (const each_lx of light_lx) sum += each_lx;
  return sum;
}

/** How far the two sums may lie apart, of themselves. */
const AGREE = 1e-9;

async function againstNumpy(): Promise<void> {
  const python = spawn('python3', ['bench/light.py'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = createInterface({ input: python.stdout })[Symbol.asyncIterator]();
  const ask = async (words: string): Promise<string> => {
    python.stdin.write(`${words}\n`);
    const line: IteratorResult<string, undefined> = await lines.next();
    if (line.done === true) throw new Error('bench/light.py ended before it answered');
    return line.value;
  };
  const given = lamps.map(({ at, axis, c0, c90, grid }) => ({ at, axis, c0, c90, planes_deg: [...grid.planes_deg], gammas_deg: [...grid.gammas_deg], intensities_cd: [...grid.intensities_cd] })); // prettier-ignore
  try {
    await ask(JSON.stringify({ xs: [...across], ys: [...across], lamps: given }));
    const [ours, theirs] = [lightEverywhere_lx(), Number(await ask('again'))];
    if (!(Math.abs(ours / theirs - 1) < AGREE)) throw new Error(`the two do not work out the same light: ${ours} lx and ${theirs} lx`);
    await bench([
      {
        title: `${LAMP_COUNT} lamps on ${SIDE_COUNT} × ${SIDE_COUNT} points`,
        a: { name: 'lightAt_lx', run: lightEverywhere_lx },
        b: { name: 'numpy', run: async () => Number(await ask('again')) },
        budgetRatio: 1,
      },
    ]);
  } finally {
    python.kill();
  }
} // prettier-ignore

const found = spawnSync('python3', ['-c', 'import numpy'], { encoding: 'utf8' });
if (found.status === 0) await againstNumpy();
else {
  const why = found.error ? 'python3 is not there' : 'python3 has no numpy';
  process.stdout.write(`Skipped: ${why}, so there is nothing to hold the light of ${LAMP_COUNT} lamps against.\n`);
}
