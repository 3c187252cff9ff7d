import { describe, expect, test } from 'vitest';
import { steppingClock } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import { presenceDesk } from './presence.ts';

function desk() {
  let now_ms = 1000;
  const opened = presenceDesk({ clock: steppingClock(), elapsed_ms: () => now_ms });
  const here = (shootId = 's') => opened.look(shootId).present.map(({ who, at }) => [who, at]);
  const tell = (who: string, at = '', name?: string) => opened.tell('s', { who, name }, { at });
  return { ...opened, here, tell, pass: (time_ms: number) => void (now_ms += time_ms) };
}

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof Fault) return error.code;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('who is here', () => {
  test('is whoever said so, in the order in which they came, each where they last were', () => {
    const { tell, look } = desk();
    tell('ada', '/shoot/title', 'Ada');
    tell('bo');
    tell('ada', '/shots/splash', 'Ada');
    expect(look('s').present).toEqual([
      { who: 'ada', name: 'Ada', at: '/shots/splash', since: '2027-03-09T07:30:00.000Z' },
      { who: 'bo', at: '', since: '2027-03-09T07:30:01.000Z' },
    ]);
    expect(look('other').present).toEqual([]);
  });

  test('is forgotten after a minute without a word, and not before', () => {
    const { tell, here, pass, endsIn_ms } = desk();
    tell('ada');
    pass(40_000);
    tell('bo');
    expect(endsIn_ms('s')).toBe(20_000);
    pass(19_999);
    expect(here()).toHaveLength(2);
    pass(1);
    expect(here()).toEqual([['bo', '']]);
    pass(40_000);
    expect(here()).toEqual([]);
    expect(endsIn_ms('s')).toBeUndefined();
  });

  test('is gone when the last of their streams closes, once, whoever closes twice', () => {
    const { tell, here, join } = desk();
    const stream = () => join('s', { client: 'ada', changed: () => undefined });
    const [first, second] = [stream(), stream()];
    tell('ada');
    first();
    first();
    expect(here()).toHaveLength(1);
    second();
    expect(here()).toEqual([]);
  });

  test('is not changed by a stream that closes without saying whose it is', () => {
    const { tell, here, join } = desk();
    const close = join('s', { client: undefined, changed: () => undefined });
    tell('ada');
    close();
    expect(here()).toHaveLength(1);
  });

  test('is told to streams when it changes, and not when somebody only says the same again', () => {
    const { tell, join, look, pass } = desk();
    let count = 0;
    join('s', { client: 'ada', changed: () => (count += 1) });
    tell('ada', '/shoot');
    const { version } = look('s');
    pass(10_000);
    tell('ada', '/shoot');
    expect([count, look('s').version]).toEqual([1, version]);
    tell('ada', '/kit');
    pass(60_000);
    expect(look('s').present).toEqual([]);
    expect(count).toBe(3);
  });
});

describe('floods', () => {
  test('a client may move about quickly for a while, then has to slow down', () => {
    const { tell, pass, here } = desk();
    for (let i = 0; i < 20; i += 1) tell('ada', `/shots/s${i}`);
    expect(codeOf(() => tell('ada', '/shots/more'))).toBe('presence.too-often');
    expect(here()).toEqual([['ada', '/shots/s19']]);
    tell('bo');
    pass(200);
    tell('ada', '/shots/later');
    expect(codeOf(() => tell('ada', '/shots/more'))).toBe('presence.too-often');
  });

  test('more people than any set has are not told', () => {
    const { tell, pass } = desk();
    for (let i = 0; i < 200; i += 1) tell(`client-${i}`);
    expect(codeOf(() => tell('one-more'))).toBe('presence.full');
    tell('client-0', '/shoot');
    pass(60_000);
    expect(tell('one-more')).toHaveLength(1);
  });
});
