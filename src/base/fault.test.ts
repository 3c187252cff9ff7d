import { expect, test } from 'vitest';
import { Fault } from './fault.ts';

const DETAILS = {
  code: 'clip.short',
  what: 'The clip ends after 12 of 40 frames',
  where: 'roll-3/A001.mov',
  mend: 'Save it again from the camera.',
};

test('a fault reads as what, where and what to do', () => {
  expect(new Fault(DETAILS).message).toBe(
    'The clip ends after 12 of 40 frames (roll-3/A001.mov). Save it again from the camera.',
  );
});

test('a fault travels as its details, without its cause, and comes back from them', () => {
  const fault = new Fault({ ...DETAILS, retry: true, cause: new Error('disk') });
  expect(fault.cause).toBeInstanceOf(Error);
  const sent: unknown = JSON.parse(JSON.stringify(fault));
  expect(sent).toEqual({ ...DETAILS, retry: true });
  expect(new Fault(sent as typeof DETAILS).toJSON()).toEqual(sent);
});

test('trying again is not promised unless it is said', () => {
  expect(new Fault(DETAILS).retry).toBe(false);
});
