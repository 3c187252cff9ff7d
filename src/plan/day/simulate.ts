/**
 * Many days worked through, event by event. A take is: reset, wait for memory and for room, dress again where the hero
 * waited too long, safety, roll, review. What is kept is saved after its roll and then copied, each in turn, while the
 * floor goes on. Meals stand between takes. Every draw has its place by shot, day and take, so that a change to one shot
 * leaves what is drawn for the others alone.
 */
import { drawFour, type DrawKey } from '../../base/randomStream.ts';
import { benchOf, BREAK, FULL, HELD, LONG, MEAL, NEWEST, OLDEST, OWN_DRAWS, TIME, type Bench, type DrawOptions, type PackedStep } from './bench.ts'; // prettier-ignore
import type { DayModel } from './dayModel.ts';
import { WORK, WORK_COUNT, WORKS, type DayRuns, type Logged } from './dayRuns.ts';
import { timeAt_s } from './lasting.ts';
import { emptyPartitions, fillPart, partFree_s, serve_s } from './queue.ts';

/** Time spent on the floor from now on: the day's clock, its sums, and its log. */
function spend(bench: Bench, day: number, shot: number, work: number, time_s: number, take: number): void {
  const { now, runs, log } = bench;
  const from_s = now[TIME]!;
  now[TIME] = from_s + time_s;
  runs.work_s[day * WORK_COUNT + work]! += time_s;
  if (shot >= 0) runs.spent_s[shot * WORK_COUNT + work]! += time_s;
  if (log && time_s > 0) log({ work: WORKS[work]!, lane: 'floor', shot, take, from_s, to_s: from_s + time_s });
}

/** A meal, where its time has come or what is next would go on for too long without one. */
function eatBefore(bench: Bench, day: number, next_s: number): void {
  const { now, model, meals_s } = bench;
  const time_s = now[TIME]!;
  const mealIndex = now[MEAL]!;
  const isTime = mealIndex < meals_s.length && time_s >= meals_s[mealIndex]!;
  const isLong = time_s + next_s > now[BREAK]! + model.mealWithin_s && time_s > now[BREAK]!;
  if (!isTime && !isLong) return;
  if (time_s > now[BREAK]! + model.mealWithin_s) now[LONG] = 1;
  spend(bench, day, -1, WORK.meal, model.mealLength_s, 0);
  now[BREAK] = now[TIME]!;
  while (now[MEAL]! < meals_s.length && meals_s[now[MEAL]!]! <= now[TIME]!) now[MEAL]! += 1;
}

/** How long this reset takes: its jobs side by side, each as soon as its hand is free and what it waits for is done. */
function resetTime_s(bench: Bench, step: PackedStep, drawn: Float64Array): number {
  const { times, jobEnds_s, handFree_s } = bench;
  const { jobs, hands, after } = step;
  if (jobs.length === 1) return timeAt_s(times, jobs[0]!, drawn[OWN_DRAWS]!);
  handFree_s.fill(0, 0, jobs.length);
  let end_s = 0;
  for (let i = 0; i < jobs.length; i += 1) {
    let starts_s = handFree_s[hands[i]!]!;
    const before = after[i]!;
    for (let j = 0; j < before.length; j += 1) if (jobEnds_s[before[j]!]! > starts_s) starts_s = jobEnds_s[before[j]!]!;
    const ends_s = starts_s + timeAt_s(times, jobs[i]!, drawn[OWN_DRAWS + i]!);
    jobEnds_s[i] = ends_s;
    handFree_s[hands[i]!] = ends_s;
    if (ends_s > end_s) end_s = ends_s;
  }
  return end_s;
} // prettier-ignore

/** Numbers for one take of a day, as many as its steps and jobs need. */
function drawTake(bench: Bench, key: DrawKey, day: number, take: number, jobCount: number): void {
  for (let block = 0; block * 4 < OWN_DRAWS + jobCount; block += 1) drawFour(key, day, take, block, bench.drawn, block * 4);
} // prettier-ignore

/** Waits until a part of the camera's memory is free, and until what is saved to has room for one more. */
function waitForRoom(bench: Bench, day: number, shot: number, step: PackedStep, take: number): void {
  const { now, memories, runs, model, flightEnds_s, flight_B } = bench;
  const { body, of } = step;
  if (body < 0 || of.size_B === 0) return;
  const memory_s = partFree_s(memories, body) - now[TIME]!;
  if (memory_s > 0) {
    runs.memoryWait_s[body]! += memory_s;
    spend(bench, day, shot, WORK.wait, memory_s, take);
  }
  if (now[HELD]! + of.size_B <= model.room_B) return;
  const from_s = now[TIME]!;
  let until_s = from_s;
  while (model.mayClear && now[HELD]! + of.size_B > model.room_B && now[OLDEST]! < now[NEWEST]!) {
    const oldest = now[OLDEST]!;
    if (flightEnds_s[oldest]! > until_s) until_s = flightEnds_s[oldest]!;
    now[HELD]! -= flight_B[oldest]!;
    now[OLDEST] = oldest + 1;
  }
  if (now[HELD]! + of.size_B > model.room_B) now[FULL] = 1;
  if (until_s > from_s) {
    runs.totals.mediaWait_s += until_s - from_s;
    spend(bench, day, shot, WORK.wait, until_s - from_s, take);
  }
}

/** Saves what was just rolled, then copies it: each in turn, while the floor goes on. */
function save(bench: Bench, day: number, shot: number, step: PackedStep, take: number): void {
  const { now, model, runs, memories, linkFree_s, copyFree_s, log } = bench;
  const { size_B } = step.of;
  if (step.body < 0 || size_B === 0) return;
  const save_s = size_B * bench.rate[step.body]!;
  const saved_s = serve_s(linkFree_s, bench.links[step.body]!, now[TIME]!, save_s);
  fillPart(memories, step.body, saved_s);
  const copy_s = size_B * model.copy_s_per_B;
  const copied_s = copy_s > 0 ? serve_s(copyFree_s, 0, saved_s, copy_s) : saved_s;
  bench.flightEnds_s[now[NEWEST]!] = copied_s;
  bench.flight_B[now[NEWEST]!] = size_B;
  now[NEWEST]! += 1;
  now[HELD]! += size_B;
  runs.saved_B[day]! += size_B;
  if (copied_s > runs.copied_s[day]!) runs.copied_s[day] = copied_s;
  if (!log) return;
  if (save_s > 0) log({ work: 'save', lane: 'save', shot, take, from_s: saved_s - save_s, to_s: saved_s });
  if (copy_s > 0) log({ work: 'copy', lane: 'copy', shot, take, from_s: copied_s - copy_s, to_s: copied_s });
}

function change(bench: Bench, day: number, shot: number, step: PackedStep): void {
  const { drawn, times } = bench;
  const { changes, keys, of } = step;
  if (of.changes.length === 0) return;
  drawFour(keys.change, day, 0, 0, drawn, 0);
  const time = (i: number, share: number): number => (changes[i]! < 0 ? 0 : timeAt_s(times, changes[i]!, share));
  const [set_s, light_s, camera_s, lens_s] = [time(0, drawn[0]!), time(1, drawn[1]!), time(2, drawn[2]!), time(3, drawn[3]!)];
  drawFour(keys.change, day, 0, 1, drawn, 0);
  const mode_s = time(4, drawn[0]!);
  spend(bench, day, shot, WORK.change, Math.max(set_s, light_s, camera_s + lens_s + mode_s), 0);
} // prettier-ignore

/** Reference rolls before the takes, elements after them. An element is kept as a take is. */
function rolls(bench: Bench, day: number, shot: number, step: PackedStep, isElement: boolean): void {
  const { of, keys, reference, element } = step;
  const count = isElement ? of.elementCount : of.referenceCount;
  for (let i = 0; i < count; i += 1) {
    if (i % 4 === 0) drawFour(keys.rolls, day, isElement ? 1 : 0, i / 4, bench.drawn, 0);
    const share = bench.drawn[i % 4]!;
    if (isElement) waitForRoom(bench, day, shot, step, 0);
    spend(bench, day, shot, isElement ? WORK.element : WORK.reference, timeAt_s(bench.times, isElement ? element : reference, share), 0);
    if (isElement) save(bench, day, shot, step, 0);
  }
} // prettier-ignore

/** Whether there are pieces for one more take; if so they are used up. */
function usePieces({ left }: Bench, { products, counts }: PackedStep): boolean {
  for (let i = 0; i < products.length; i += 1) if (left[products[i]!]! < counts[i]!) return false;
  for (let i = 0; i < products.length; i += 1) left[products[i]!]! -= counts[i]!;
  return true;
}

/** Takes until enough are kept, the pieces run out, or nobody would go on. How many were rolled. */
function takes(bench: Bench, day: number, shot: number, step: PackedStep): number {
  const { now, times, drawn, runs } = bench;
  const { of, keys, hold, jobs } = step;
  const wanted = of.goodFraction === 0 ? Infinity : of.wantedCount;
  let kept = 0;
  let take = 0;
  while (kept < wanted && take < of.mostCount) {
    if (!usePieces(bench, step)) {
      runs.ranOut[shot]! += 1;
      break;
    }
    take += 1;
    eatBefore(bench, day, of.cycle_s);
    drawTake(bench, keys.takes, day, take, jobs.length);
    const [luck, safety, roll, review] = [drawn[0]!, drawn[1]!, drawn[2]!, drawn[3]!];
    spend(bench, day, shot, WORK.reset, resetTime_s(bench, step, drawn), take);
    const dressed_s = now[TIME]!;
    waitForRoom(bench, day, shot, step, take);
    if (hold >= 0 && now[TIME]! > dressed_s) {
      drawTake(bench, keys.again, day, take, jobs.length);
      if (now[TIME]! - dressed_s > timeAt_s(times, hold, drawn[0]!)) {
        runs.dressedAgain[shot]! += 1;
        spend(bench, day, shot, WORK.reset, resetTime_s(bench, step, drawn), take);
      }
    }
    spend(bench, day, shot, WORK.safety, timeAt_s(times, step.safety, safety), take);
    spend(bench, day, shot, WORK.roll, timeAt_s(times, step.roll, roll), take);
    if (luck < of.goodFraction) {
      kept += 1;
      save(bench, day, shot, step, take);
    }
    spend(bench, day, shot, WORK.review, timeAt_s(times, step.review, review), take);
  }
  if (of.goodFraction > 0 && kept < wanted && take === of.mostCount) runs.gaveUp[shot]! += 1;
  return take;
}

function startDay(bench: Bench, day: number): void {
  const { model, now, left, stock, rate, times, bodyTimes } = bench;
  now.fill(0);
  now[TIME] = model.starts_s;
  now[BREAK] = model.lastBreak_s;
  left.set(stock);
  bench.linkFree_s.fill(0);
  bench.copyFree_s.fill(0);
  emptyPartitions(bench.memories);
  for (let body = 0; body < rate.length; body += 4) drawFour(bench.rateKey, day, 0, body, rate, body);
  for (let body = 0; body < bodyTimes.length; body += 1)
    rate[body] = timeAt_s(times, bodyTimes[body]!, rate[body]!) * model.bodies[body]!.save_s_per_B;
}

function workDay(bench: Bench, day: number): void {
  const { steps, runs, now, model } = bench;
  startDay(bench, day);
  for (let shot = 0; shot < steps.length; shot += 1) {
    const step = steps[shot]!;
    const at = day * steps.length + shot;
    eatBefore(bench, day, step.of.change_s);
    runs.starts_s[at] = now[TIME]!;
    change(bench, day, shot, step);
    rolls(bench, day, shot, step, false);
    runs.takes[at] = takes(bench, day, shot, step);
    rolls(bench, day, shot, step, true);
    runs.ends_s[at] = now[TIME]!;
  }
  runs.wrap_s[day] = now[TIME]!;
  if (runs.saved_B[day] === 0) runs.copied_s[day] = now[TIME]!;
  if (now[TIME]! > now[BREAK]! + model.mealWithin_s) now[LONG] = 1;
  runs.totals.fullDays += now[FULL]!;
  runs.totals.longWorkDays += now[LONG]!;
}

/** Draws so many days. The same model, seed and count give the same days. */
export function simulateDays(model: DayModel, options: DrawOptions): DayRuns {
  const bench = benchOf(model, options, undefined);
  for (let day = 0; day < options.dayCount; day += 1) workDay(bench, day);
  return bench.runs;
}

/** One of those days again, with every stretch of it. */
export function lookAtDay(model: DayModel, options: Omit<DrawOptions, 'dayCount'>, day: number): readonly Logged[] {
  const logged: Logged[] = [];
  const bench = benchOf(model, { ...options, dayCount: day + 1 }, (entry) => logged.push(entry));
  workDay(bench, day);
  return logged;
}
