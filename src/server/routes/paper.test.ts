import { describe, expect, test } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from '../../../test/tempStore.ts';
import { paperPath } from '../../api/paperPath.ts';
import type { FaultReply } from '../../api/replies.ts';
import { createApp } from '../app.ts';

async function server() {
  const store = await tempStore();
  store.bringIn({ editId: 'import-0001', at: '2027-03-09T07:00:00.000Z', text: SMALL_SHOOT, id: 's' });
  return createApp({ store, webFolder: tempFolder(), clock: steppingClock(), log: () => undefined });
}

const from = (path: string): string => `/api/shoots/s/paper?${path}`;

describe('paper from the server', () => {
  test.each([
    ['cards', 'sheet=card', 's-card.pdf'],
    ['the card of one shot on Letter', 'sheet=card&shot=splash&size=letter', 's-card-splash.pdf'],
    ['the plan in feet', 'sheet=plan&units=imperial', 's-plan.pdf'],
    ['a morning sheet', 'sheet=morning&duty=light', 's-morning-light.pdf'],
    ['the cue sheets', 'sheet=cues', 's-cues.pdf'],
    ['the day', 'sheet=day', 's-day.pdf'],
    ['what must be camera-ready', 'sheet=dressing', 's-dressing.pdf'],
  ])('%s: a PDF with its revision, kept by nobody on the way', async (_, query, name) => {
    const answer = await (await server()).request(from(query));
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    expect(answer.headers.get('content-disposition')).toBe(`inline; filename="${name}"`);
    expect(answer.headers.get('longsecond-revision')).toBe('0');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    const bytes = Buffer.from(await answer.arrayBuffer()).toString('latin1');
    expect([bytes.slice(0, 8), bytes.trimEnd().slice(-5)]).toEqual(['%PDF-1.7', '%%EOF']);
  });

  test.each([
    ['no kind of sheet', '', 400, 'sheet'],
    ['a kind there is not', 'sheet=poster', 400, 'card, plan, morning'],
    ['a paper there is not', 'sheet=plan&size=a3', 400, 'a4 or letter'],
    ['units there are not', 'sheet=plan&units=cubits', 400, 'metric or imperial'],
    ['a shot with the plan', 'sheet=plan&shot=splash', 400, 'sheet=card and'],
    ['a duty with cards', 'sheet=card&duty=light', 400, 'sheet=morning only'],
    ['a key nobody knows', 'sheet=plan&colour=red', 400, 'colour'],
    ['a shot there is not', 'sheet=card&shot=splosh', 404, 'splosh'],
    ['a duty there is not', 'sheet=morning&duty=catering', 404, 'catering'],
  ])('%s is refused with what is wrong', async (_, query, status, says) => {
    const answer = await (await server()).request(from(query));
    expect(answer.status).toBe(status);
    expect(((await answer.json()) as FaultReply).what).toContain(says);
  });

  test('a shoot there is not is unknown', async () => {
    expect((await (await server()).request('/api/shoots/gone/paper?sheet=plan')).status).toBe(404);
  });

  test('the address that a page makes is one the server answers', async () => {
    const path = paperPath('s', { sheet: 'card', shot: 'splash', size: 'a4', units: undefined });
    expect((await (await server()).request(path)).status).toBe(200);
  });
});
