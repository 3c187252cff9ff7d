/**
 * The day: 200 and 2,000 days of forty shots drawn, against a plain simulation of the same rules that draws its own
 * numbers and makes an object of every stretch; the whole day plan with its savings; and the order of forty shots,
 * against the same search with the whole order added up for each.
 */
import { readFileSync } from 'node:fs';
import { parseDocument } from 'yaml';
import { readShootText } from '../src/document/text.ts';
import { compileDay, type DayModel } from '../src/plan/day/dayModel.ts';
import type { DayStep } from '../src/plan/day/dayStep.ts';
import type { Lasting } from '../src/plan/day/lasting.ts';
import { simulateDays } from '../src/plan/day/simulate.ts';
import { planShoot, shotOrder } from '../src/plan/plan.ts';
import { dayOf } from '../src/solve/day.ts';
import { foundOrder, orderCost, type OrderProblem } from '../src/solve/dayOrder.ts';
import { bench, quantile, seededNumbers } from './harness.ts';

const SHOT_COUNT = 40;

/** The demo's shots, repeated under new ids until there are forty, on a camera that is slow to empty. */
function fortyShots(text: string): string {
  const document = parseDocument(text);
  const { shots } = document.toJS() as { shots: Record<string, object> };
  const ids = Object.keys(shots);
  for (let i = ids.length; i < SHOT_COUNT; i += 1)
    document.setIn(['shots', `${ids[i % ids.length]!}-copy-${i}`], document.createNode(shots[ids[i % ids.length]!]));
  for (const id of ids) document.setIn(['kit', 'products', id, 'pieces'], 1000);
  document.setIn(['kit', 'cameras', 'heron', 'saveRate'], '60 MB/s ± 10 %');
  return document.toString();
}

const { shoot } = readShootText(fortyShots(readFileSync('demo/shoot.yaml', 'utf8')));
const plan = planShoot(shoot);
const { model } = compileDay(shoot, plan.shots, shotOrder(shoot));

const draw = seededNumbers(7);

function normal(): number {
  return Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
}

function drawn_s(lasting: Lasting): number {
  if (lasting.is === 'fixed') return lasting.time_s;
  if (lasting.is === 'lognormal') return lasting.median_s * Math.exp(lasting.sigma * normal());
  const { least_s: a, usual_s: c, most_s: b } = lasting;
  const share = draw();
  return share * (b - a) < c - a ? a + Math.sqrt(share * (b - a) * (c - a)) : b - Math.sqrt((1 - share) * (b - a) * (b - c)); // prettier-ignore
}

interface Stretch {
  readonly work: string;
  readonly shot: string;
  readonly from_s: number;
  readonly to_s: number;
}

/** One day as anybody would write it down: a clock, a list of stretches, maps for what is free when. */
function plainDay({ steps, bodies, stock, starts_s, meals_s, mealLength_s, mealWithin_s, copy_s_per_B }: DayModel): readonly Stretch[] {
  const stretches: Stretch[] = [];
  const left = new Map(stock);
  const linkFree = new Map<string, number>();
  const parts = new Map(bodies.map(({ id, partitionCount }) => [id, new Array<number>(partitionCount).fill(0)]));
  const meals = [...meals_s];
  let [now_s, break_s, copyFree_s] = [starts_s, starts_s, 0];
  const spend = (work: string, shot: string, time_s: number): void => {
    stretches.push({ work, shot, from_s: now_s, to_s: now_s + time_s });
    now_s += time_s;
  };
  const eat = (next_s: number): void => {
    const isTime = meals[0] !== undefined && now_s >= meals[0];
    if (!isTime && !(now_s + next_s > break_s + mealWithin_s && now_s > break_s)) return;
    spend('meal', '', mealLength_s);
    break_s = now_s;
    while (meals[0] !== undefined && meals[0] <= now_s) meals.shift();
  };
  const save = ({ id, camera, size_B }: DayStep): void => {
    const body = bodies.find((one) => one.id === camera);
    if (!body || size_B === 0) return;
    const saved_s = Math.max(now_s, linkFree.get(body.link) ?? 0) + size_B * body.save_s_per_B;
    linkFree.set(body.link, saved_s);
    parts.set(body.id, [...parts.get(body.id)!.slice(1), saved_s]);
    copyFree_s = Math.max(saved_s, copyFree_s) + size_B * copy_s_per_B;
    stretches.push({ work: 'copy', shot: id, from_s: copyFree_s - size_B * copy_s_per_B, to_s: copyFree_s });
  };
  const wait = ({ id, camera }: DayStep): void => {
    const until_s = parts.get(camera ?? '')?.[0] ?? 0;
    if (until_s > now_s) spend('wait', id, until_s - now_s);
  };
  const reset_s = ({ jobs }: DayStep): number => {
    const ends: number[] = [];
    const free = new Map<number, number>();
    jobs.forEach(({ hand, after, lasting }, i) => {
      ends.push(Math.max(free.get(hand) ?? 0, ...after.map((before) => ends[before]!)) + drawn_s(lasting));
      free.set(hand, ends[i]!);
    });
    return Math.max(...ends);
  };
  for (const step of steps) {
    eat(step.change_s);
    const time = new Map(step.changes.map(([change, lasting]) => [change as string, drawn_s(lasting)]));
    const of = (change: string): number => time.get(change) ?? 0;
    spend('change', step.id, Math.max(of('set'), of('light'), of('camera') + of('lens') + of('mode')));
    for (let i = 0; i < step.referenceCount; i += 1) spend('reference', step.id, drawn_s(step.reference));
    for (let kept = 0, take = 0; kept < step.wantedCount && take < step.mostCount; take += 1) {
      if (step.uses.some(({ product, count }) => (left.get(product) ?? Infinity) < count)) break;
      for (const { product, count } of step.uses) if (left.has(product)) left.set(product, left.get(product)! - count);
      eat(step.cycle_s);
      spend('reset', step.id, reset_s(step));
      wait(step);
      spend('safety', step.id, drawn_s(step.safety));
      spend('roll', step.id, drawn_s(step.roll));
      if (draw() < step.goodFraction) {
        kept += 1;
        save(step);
      }
      spend('review', step.id, drawn_s(step.review));
    }
    for (let i = 0; i < step.elementCount; i += 1) {
      wait(step);
      spend('element', step.id, drawn_s(step.element));
      save(step);
    }
  }
  return stretches;
} // prettier-ignore

/** So many plain days: the late wrap. */
function plainDays(count: number): number {
  const wraps = Array.from({ length: count }, () => plainDay(model).filter(({ work }) => work !== 'copy').at(-1)!.to_s);
  return quantile(wraps, 0.9);
} // prettier-ignore

const drawnDays = (dayCount: number): number => quantile([...simulateDays(model, { dayCount, seed: 41 }).wrap_s], 0.9);

/** Shots of five sets, three lights and two lenses, each with a way of its own. */
function orderProblem(count: number): OrderProblem {
  const pick = (of: number): number => Math.floor(draw() * of);
  const shots = Array.from({ length: count }, () => ({ set: pick(5), light: pick(3), lens: pick(2), own: draw() }));
  const time = (a: (typeof shots)[number], b: (typeof shots)[number]): number =>
    Math.max(a.set === b.set ? 0 : 60, a.light === b.light ? 0 : 35, a.lens === b.lens ? 0 : 10) + 5 * b.own;
  return {
    count,
    costs: Float64Array.from(shots.flatMap((a) => shots.map((b) => time(a, b)))),
    starts: Float64Array.from(shots, () => 60),
    pairs: [[0, 5], [1, 5], [2, 9], [7, 3]],
  }; // prettier-ignore
}

const problem = orderProblem(SHOT_COUNT);

/** The same search written down plainly: the whole order is added up for every shot put in and every run moved. */
function plainOrder(): number {
  const keeps = (order: readonly number[]) =>
    problem.pairs.every(([a, b]) => !order.includes(a) || !order.includes(b) || order.indexOf(a) < order.indexOf(b));
  const cheapest = (order: readonly number[], run: readonly number[]) =>
    Array.from({ length: order.length + 1 }, (_, at) => order.toSpliced(at, 0, ...run))
      .filter(keeps)
      .map((moved) => ({ moved, cost: orderCost(problem, moved) }))
      .sort((a, b) => a.cost - b.cost)[0]!;
  let best = Infinity;
  for (let first = 0; first < SHOT_COUNT; first += 5) {
    let order: readonly number[] = [first];
    while (order.length < SHOT_COUNT) {
      const left = Array.from({ length: SHOT_COUNT }, (_, i) => i).filter((i) => !order.includes(i));
      const placed = order;
      order = left.map((shot) => cheapest(placed, [shot])).sort((a, b) => a.cost - b.cost)[0]!.moved;
    }
    for (let isBetter = true; isBetter;) {
      isBetter = false;
      for (let length = 1; length < SHOT_COUNT; length += 1)
        for (let from = 0; from + length <= SHOT_COUNT; from += 1) {
          const { moved, cost } = cheapest(order.toSpliced(from, length), order.slice(from, from + length));
          if (cost >= orderCost(problem, order) - 1e-9) continue;
          [order, isBetter] = [moved, true];
        }
    }
    best = Math.min(best, orderCost(problem, order));
  }
  return best;
}

const late = [drawnDays(2000), plainDays(2000)] as const;
process.stdout.write(`late wrap of 2,000 days: ${late.map((at) => (at / 3600).toFixed(2)).join(' h and ')} h\n`);
process.stdout.write(`order of 40 shots: ${foundOrder(problem).cost.toFixed(1)} min found, ${plainOrder().toFixed(1)} min by the plain search\n`); // prettier-ignore

await bench([
  {
    title: '200 days of 40 shots',
    a: { name: 'drawn', run: () => drawnDays(200) },
    b: { name: 'plain', run: () => plainDays(200) },
    budgetRatio: 1,
  },
  {
    title: '2,000 days of 40 shots',
    a: { name: 'drawn', run: () => drawnDays(2000) },
    b: { name: 'plain', run: () => plainDays(2000) },
    budgetRatio: 1,
  },
  {
    title: 'the day plan: order, 200 days, savings',
    a: { name: 'whole', run: () => dayOf(shoot, plan, { dayCount: 200 }).wrap.late_s },
    b: { name: '200 plain days', run: () => plainDays(200) },
  },
  {
    title: 'the day plan: order, 2,000 days, savings',
    a: { name: 'whole', run: () => dayOf(shoot, plan, { dayCount: 2000 }).wrap.late_s },
    b: { name: '2,000 plain days', run: () => plainDays(2000) },
  },
  {
    title: 'order of 40 shots',
    a: { name: 'found', run: () => foundOrder(problem).cost },
    b: { name: 'plain search', run: plainOrder },
    budgetRatio: 1,
  },
]);
