import { describe, expect, test } from 'vitest';
import { Fault } from '../../base/fault.ts';
import type { Progress } from '../../base/worker.ts';
import { readShoot } from '../../document/read.ts';
import type { Shoot } from '../../document/schema.ts';
import type { Plan, Way } from '../../plan/types.ts';
import type { Caller } from '../workers/connect.ts';
import type { WorkCalls } from '../workers/calls.ts';
import { openWaysDesk } from './waysDesk.ts';

const plan = () => ({}) as Plan;
const shoot = { shots: {} } as unknown as Shoot;
/** One shot, lit by a lamp. */
const LIT = readShoot({ lighting: { key: { lamps: { left: {} } } }, shots: { pour: { lighting: 'key' } } }).shoot;
const WAY = { title: 'Open the shutter' } as Way;

const fault = (code: string) => new Fault({ code, what: 'x', where: 'ways', mend: 'y' });

interface Call {
  readonly input: WorkCalls['ways']['input'];
  readonly progress: (progress: Progress) => void;
  readonly resolve: (ways: readonly Way[]) => void;
  readonly reject: (error: unknown) => void;
  isCancelled: boolean;
}

function bench() {
  const calls: Call[] = [];
  const waits: { wait_ms: number; run: () => void }[] = [];
  let changedCount = 0;
  const searches: Call[] = [];
  const callerInto = (into: Call[]) => ({
    call: (_name: string, input: unknown, onProgress?: (progress: Progress) => void) => {
      let call: Call;
      const answer = new Promise<readonly Way[]>((resolve, reject) => {
        call = { input: input as Call['input'], progress: onProgress!, resolve, reject, isCancelled: false };
      });
      into.push(call!);
      return {
        answer,
        cancel: () => {
          call.isCancelled = true;
          call.reject(fault('worker.cancelled'));
        },
      };
    },
    keep: () => undefined,
  });
  const desk = openWaysDesk({
    caller: callerInto(calls) satisfies Caller<WorkCalls>,
    finder: callerInto(searches),
    after: (wait_ms, run) => {
      const wait = { wait_ms, run };
      waits.push(wait);
      return () => void (waits.includes(wait) && waits.splice(waits.indexOf(wait), 1));
    },
    changed: () => (changedCount += 1),
  });
  return {
    desk,
    calls,
    searches,
    waits,
    changedCount: () => changedCount,
    pass: async () => {
      waits.shift()?.run();
      for (let i = 0; i < 10; i += 1) await Promise.resolve();
    },
    settle: async () => {
      for (let i = 0; i < 10; i += 1) await Promise.resolve();
    },
  };
}

describe('ways', () => {
  test('asked for are worked out later, never while asking, and answered with the same value until they come', async () => {
    const { desk, calls, changedCount, pass, settle } = bench();
    desk.settle({ written: {}, shoot, plan: plan() });
    const first = desk.ask('pour', 'light');
    expect(first).toMatchObject({ state: 'working', ways: [] });
    expect(desk.ask('pour', 'light')).toBe(first);
    expect(calls).toHaveLength(0);
    expect(changedCount()).toBe(0);
    await pass();
    expect(calls[0]!.input).toEqual({ written: {}, shotId: 'pour', limit: 'light' });
    calls[0]!.progress({ done: 3, total: 9, unit: 'changes' });
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'working', done: 3, total: 9 });
    calls[0]!.resolve([WAY]);
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'done', ways: [WAY] });
    expect(calls).toHaveLength(1);
    expect(changedCount()).toBe(2);
  });

  test('of two limits are worked out one after the other', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: {}, shoot, plan: plan() });
    desk.ask('pour', 'light');
    desk.ask('pour', 'noise');
    await pass();
    expect(calls).toHaveLength(1);
    calls[0]!.resolve([WAY]);
    await settle();
    await pass();
    expect(calls[1]!.input.limit).toBe('noise');
    expect(desk.ask('pour', 'light').state).toBe('done');
  });

  test('are cancelled when the plan changes, and asked anew once typing rests', async () => {
    const { desk, calls, waits, pass, settle } = bench();
    desk.settle({ written: 'old', shoot, plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    desk.settle({ written: 'new', shoot, plan: plan() });
    expect(calls[0]!.isCancelled).toBe(true);
    expect(desk.ask('pour', 'light').state).toBe('working');
    await settle();
    expect(waits).toHaveLength(1);
    expect(waits[0]!.wait_ms).toBeGreaterThan(50);
    await pass();
    expect(calls[1]!.input.written).toBe('new');
  });

  test('of the plan before stay on the screen, marked as being worked out, until the new ones come', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: 'old', shoot, plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    calls[0]!.resolve([WAY]);
    await settle();
    desk.settle({ written: 'new', shoot, plan: plan() });
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'working', ways: [WAY] });
  });

  test('that fail say so, and are asked again with the next plan', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: {}, shoot, plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    calls[0]!.reject(fault('worker.failed'));
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'failed', ways: [] });
    desk.settle({ written: {}, shoot, plan: plan() });
    expect(desk.ask('pour', 'light').state).toBe('working');
  });

  test('that come too late for the plan they were for are dropped', async () => {
    const { desk, calls, pass, settle } = bench();
    desk.settle({ written: 'old', shoot, plan: plan() });
    desk.ask('pour', 'light');
    await pass();
    desk.settle({ written: 'new', shoot, plan: plan() });
    calls[0]!.resolve([WAY]);
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'working', ways: [] });
  });
});

describe('a search among the lamps', () => {
  const FOUND = { title: 'Add a spot', patch: [{ op: 'add', path: '/lighting/key/lamps/spot-1', value: {} }] } as unknown as Way; // prettier-ignore
  const OWN = { title: 'Bring it nearer', patch: [{ op: 'add', path: '/a', value: 1 }] } as unknown as Way;

  /** The plan's own ways have come. */
  async function own(limit: 'light' | 'noise' = 'light', of = LIT) {
    const it = bench();
    it.desk.settle({ written: 'now', shoot: of, plan: plan() });
    it.desk.ask('pour', limit);
    await it.pass();
    it.calls[0]!.resolve([OWN]);
    await it.settle();
    return it;
  }

  test('begins once the plan’s own ways of a short light stand there and all has rested, and adds to them', async () => {
    const { desk, searches, waits, pass, settle } = await own();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'done', ways: [OWN], search: 'working' });
    expect(searches).toHaveLength(0);
    expect(waits[0]!.wait_ms).toBeGreaterThan(300);
    await pass();
    expect(searches[0]!.input).toEqual({ written: 'now', shotId: 'pour' });
    searches[0]!.resolve([FOUND, OWN]);
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'done', ways: [OWN, FOUND] });
    expect(desk.ask('pour', 'light').search).toBeUndefined();
  });

  test('is not made for another limit, nor where no lamp stands', async () => {
    for (const it of [await own('noise'), await own('light', shoot)]) {
      expect(it.desk.ask('pour', 'light').search).toBeUndefined();
      expect(it.waits.every(({ wait_ms }) => wait_ms === 0)).toBe(true);
    }
  });

  test('ends when the plan changes, before it began or after', async () => {
    const early = await own();
    early.desk.settle({ written: 'new', shoot: LIT, plan: plan() });
    expect(early.waits).toHaveLength(0);
    const late = await own();
    await late.pass();
    late.desk.settle({ written: 'new', shoot: LIT, plan: plan() });
    expect(late.searches[0]!.isCancelled).toBe(true);
    await late.settle();
    expect(late.desk.ask('pour', 'light')).toMatchObject({ state: 'working', ways: [OWN] });
  });

  test('that fails leaves the plan’s own ways, and is told', async () => {
    const { desk, searches, pass, settle } = await own();
    await pass();
    searches[0]!.reject(fault('solve.failed'));
    await settle();
    expect(desk.ask('pour', 'light')).toMatchObject({ state: 'done', ways: [OWN], search: 'failed' });
  });
});
