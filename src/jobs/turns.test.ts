import { expect, test } from 'vitest';
import { createTurns } from './turns.ts';

const pause = () => new Promise<void>((resolve) => setTimeout(resolve, 2));

test('so many run at once and no more, in the order in which they came, also after one failed', async () => {
  const turns = createTurns(2);
  const begun: number[] = [];
  let [running, most] = [0, 0];
  const all = [0, 1, 2, 3, 4, 5].map((number) =>
    turns.take(async () => {
      begun.push(number);
      running += 1;
      most = Math.max(most, running);
      await pause();
      running -= 1;
      if (number === 1) throw new Error('failed');
      return number;
    }),
  );
  const ended = await Promise.allSettled(all);
  expect(ended.map(({ status }) => status === 'fulfilled')).toEqual([true, false, true, true, true, true]);
  expect([most, begun]).toEqual([2, [0, 1, 2, 3, 4, 5]]);
  expect(await turns.take(() => Promise.resolve('still'))).toBe('still');
});

test('one that does not wait any longer gives up its place, and no other', async () => {
  const turns = createTurns(1);
  const stop = new AbortController();
  const first = turns.take(pause);
  const second = turns.take(() => Promise.reject(new Error('it ran')), stop.signal);
  const third = turns.take(() => Promise.resolve('third'));
  stop.abort(new Error('left'));
  await expect(second).rejects.toThrow('left');
  expect(await third).toBe('third');
  await first;
  expect(await turns.take(() => Promise.resolve('fourth'))).toBe('fourth');
});
