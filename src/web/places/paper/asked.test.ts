import { describe, expect, test } from 'vitest';
import { readAsk, sheetAsked, writeAsk, type PaperAsk } from './asked.ts';

const NAMES = { shots: ['pour-1', 'crown'], people: ['light', 'ada'] };

describe('what the address asks for', () => {
  test.each<readonly [string, PaperAsk]>([
    ['all cards on A4', { sheet: 'card', size: 'a4' }],
    ['one card on Letter', { sheet: 'card', shot: 'crown', size: 'letter' }],
    ['the plan in feet', { sheet: 'plan', size: 'a4', units: 'imperial' }],
    ['the cues of one shot', { sheet: 'cues', shot: 'crown', size: 'a4' }],
    ['the day', { sheet: 'day', size: 'a4' }],
    ['one morning sheet', { sheet: 'morning', duty: 'ada', size: 'a4' }],
  ])('%s comes back as it was written', (_, ask) => expect(readAsk(writeAsk(ask), NAMES)).toEqual(ask));

  test('the usual goes unsaid', () => expect(writeAsk({ sheet: 'card', size: 'a4' })).toEqual({}));

  test('what cannot be printed is passed over', () => {
    expect(readAsk({ sheet: 'poster', shot: 'gone', duty: 'ada', size: 'a3', units: 'cubits' }, NAMES)).toEqual({ sheet: 'card', size: 'a4' }); // prettier-ignore
  });

  test('a shot goes with cards and cue sheets alone, a person with morning sheets alone', () => {
    expect(sheetAsked({ sheet: 'cues', shot: 'crown', size: 'a4' })).toEqual({ sheet: 'cues', shot: 'crown' });
    expect(sheetAsked({ sheet: 'plan', shot: 'crown', duty: 'ada', size: 'a4' })).toEqual({ sheet: 'plan' });
    expect(sheetAsked({ sheet: 'morning', duty: 'ada', size: 'a4' })).toEqual({ sheet: 'morning', duty: 'ada' });
  });
});
