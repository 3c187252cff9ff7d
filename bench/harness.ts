/**
 * Two ways of doing the same work, timed side by side in one run: what counts is their ratio, which a slow or busy
 * machine hardly moves, never the times themselves.
 */

/** The smallest time worth reading off the clock: shorter work is repeated until it takes this long. */
const BATCH_ms = 20;
const QUICK_BATCH_ms = 4;

export interface Side {
  readonly name: string;
  /** The work. Its result is consumed, so that the engine cannot leave it out. */
  readonly run: () => unknown;
}

export interface Contest {
  readonly title: string;
  readonly a: Side;
  readonly b: Side;
  /** The ratio of a's time to b's that is to be kept, where there is a budget. */
  readonly budgetRatio?: number;
}

export interface Settings {
  readonly rounds: number;
  readonly batch_ms: number;
  readonly seed: number;
  readonly now_ms: () => number;
}

export interface Outcome {
  readonly title: string;
  readonly a: { readonly name: string; readonly median_ms: number };
  readonly b: { readonly name: string; readonly median_ms: number };
  /** Time of a over time of b, round by round: the median, and the band that holds eight rounds in ten. */
  readonly ratio: number;
  readonly ratioLow: number;
  readonly ratioHigh: number;
  readonly rounds: number;
  readonly budgetRatio: number | undefined;
}

/** A stream of numbers in [0, 1) fixed by its seed: inputs and order are the same in every run. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The value below which `share` of the values lie, between neighbours in proportion. Throws RangeError when empty. */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('a quantile needs at least one value');
  const sorted = [...values].sort((x, y) => x - y);
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)]!;
  const above = sorted[Math.ceil(at)]!;
  return below + (above - below) * (at - Math.floor(at));
}

let consumed = 0;

/** Keeps a result from being computed for nobody. */
function consume(result: unknown): void {
  if (typeof result === 'number') consumed = (consumed + result) % 1e9;
  else if (result !== undefined && result !== null) consumed = (consumed + 1) % 1e9;
}

/** What all results came to: printed, so that no engine may drop the work. */
export const consumedTotal = (): number => consumed;

async function timeRuns(side: Side, count: number, now_ms: () => number): Promise<number> {
  const from_ms = now_ms();
  for (let i = 0; i < count; i += 1) {
    const result = side.run();
    consume(result instanceof Promise ? await result : result);
  }
  return (now_ms() - from_ms) / count;
}

/** Warms a side up and finds how many runs fill a batch; fixed from then on. */
async function runsPerBatch(side: Side, { batch_ms, now_ms }: Settings): Promise<number> {
  let count = 1;
  for (;;) {
    const each_ms = await timeRuns(side, count, now_ms);
    if (each_ms * count >= batch_ms) return count;
    count = each_ms > 0 ? Math.min(count * 10, Math.ceil((batch_ms / each_ms) * 1.1)) : count * 10;
  }
}

/** Times both sides in turn, the order of each round drawn from the seed so that neither is always first. */
export async function compare(contest: Contest, settings: Settings): Promise<Outcome> {
  const { a, b, title, budgetRatio } = contest;
  const draw = seededNumbers(settings.seed);
  const runs = { a: await runsPerBatch(a, settings), b: await runsPerBatch(b, settings) };
  const aTimes_ms: number[] = [];
  const bTimes_ms: number[] = [];
  const timeA = async () => void aTimes_ms.push(await timeRuns(a, runs.a, settings.now_ms));
  const timeB = async () => void bTimes_ms.push(await timeRuns(b, runs.b, settings.now_ms));
  for (let round = 0; round < settings.rounds; round += 1) {
    const order = draw() < 0.5 ? [timeA, timeB] : [timeB, timeA];
    for (const time of order) await time();
  }
  const ratios = aTimes_ms.map((time_ms, round) => time_ms / bTimes_ms[round]!);
  return {
    title,
    a: { name: a.name, median_ms: quantile(aTimes_ms, 0.5) },
    b: { name: b.name, median_ms: quantile(bTimes_ms, 0.5) },
    ratio: quantile(ratios, 0.5),
    ratioLow: quantile(ratios, 0.1),
    ratioHigh: quantile(ratios, 0.9),
    rounds: settings.rounds,
    budgetRatio,
  };
}

const time = (value_ms: number): string => `${value_ms.toPrecision(3)} ms`;

function verdict({ ratio, budgetRatio }: Outcome): string {
  if (budgetRatio === undefined) return '';
  return `${ratio <= budgetRatio ? 'within' : 'OVER'} ${budgetRatio}`;
}

/** Outcomes as a table: who against whom, their ratio with its spread, and the budget where there is one. */
export function outcomeTable(outcomes: readonly Outcome[]): string {
  const head = ['work', 'a', 'b', 'a / b', 'P10–P90', 'rounds', 'budget'];
  const rows = outcomes.map((outcome) => [
    outcome.title,
    `${outcome.a.name} ${time(outcome.a.median_ms)}`,
    `${outcome.b.name} ${time(outcome.b.median_ms)}`,
    outcome.ratio.toPrecision(3),
    `${outcome.ratioLow.toPrecision(3)}–${outcome.ratioHigh.toPrecision(3)}`,
    String(outcome.rounds),
    verdict(outcome),
  ]);
  const widths = head.map((_, column) => Math.max(...[head, ...rows].map((row) => row[column]!.length)));
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) => cell.padEnd(widths[column]!))
      .join('  ')
      .trimEnd();
  return [line(head), ...rows.map(line)].join('\n');
}

/** Runs a bench file's contests and prints their table. `--quick` takes fewer and shorter rounds, for a first look. */
export async function bench(contests: readonly Contest[]): Promise<void> {
  const isQuick = process.argv.includes('--quick');
  const settings: Settings = {
    rounds: isQuick ? 7 : 41,
    batch_ms: isQuick ? QUICK_BATCH_ms : BATCH_ms,
    seed: 20,
    now_ms: () => performance.now(),
  };
  const outcomes: Outcome[] = [];
  for (const contest of contests) outcomes.push(await compare(contest, settings));
  process.stdout.write(`${outcomeTable(outcomes)}\n(results consumed: ${Math.round(consumedTotal())})\n`);
}
