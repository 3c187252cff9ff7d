/** /api/shoots/:shootId/paper: cards, the plan, morning sheets, cues and the day as PDF, made from the shoot as it stands. */
import { Hono } from 'hono';
import { PaperQuery } from '../../api/paper.ts';
import { parsed } from '../../api/parsed.ts';
import { ShootId } from '../../api/schemas.ts';
import { REVISION_HEADER } from '../../api/routes.ts';
import { readShoot } from '../../document/read.ts';
import { migrate } from '../../document/versions.ts';
import { planShoot } from '../../plan/plan.ts';
import { dayOf } from '../../solve/day.ts';
import type { ShootStore } from '../../store/shootStore.ts';
import { sheetsFor } from '../../turnover/sheets/sheets.ts';
import type { Clock } from '../clock.ts';
import { tellStoredFiles } from '../../jobs/lampFiles.ts';

export function paperRoutes({ store, clock }: { readonly store: ShootStore; readonly clock: Clock }) {
  return new Hono().get('/:shootId/paper', async (c) => {
    const shootId = parsed(ShootId, c.req.param('shootId'), 'the shoot id in the address');
    const { sheet, shot, duty, size, units } = parsed(PaperQuery, c.req.query(), 'the query');
    const { written, revision } = store.open(shootId);
    const { shoot } = readShoot(migrate(written));
    await tellStoredFiles(store, shootId, shoot);
    const plan = planShoot(shoot);
    const source = { shoot, plan, day: () => dayOf(shoot, plan), system: units ?? shoot.shoot.units ?? 'metric' };
    const asked = sheet === 'card' || sheet === 'cues' ? { sheet, shot } : sheet === 'morning' ? { sheet, duty } : { sheet };
    const sheets = sheetsFor(source, asked);
    // The typeface and the writer of PDF are loaded when somebody first prints.
    const { printSheets } = await import('../../paper/printSheets.ts');
    const bytes = await printSheets(sheets, { size, revision, printedAt: clock.now() });
    const name = [shootId, sheet, shot ?? duty].filter((part) => part !== undefined).join('-').replace(/[^A-Za-z0-9-]/g, '');
    return c.body(Uint8Array.from(bytes), 200, {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="${name}.pdf"`,
      [REVISION_HEADER]: String(revision),
    });
  });
} // prettier-ignore
