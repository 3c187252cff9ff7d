import { useMemo } from 'react';
import { DUTY_NAMES, peopleOf } from '../../turnover/sheets/morningSheet.ts';
import type { Sheet } from '../../turnover/sheets/sheet.ts';
import { sheetsFor } from '../../turnover/sheets/sheets.ts';
import type { OpenShoot } from '../state/contract.ts';
import { useDay } from '../state/useDay.ts';
import { readAsk, sheetAsked, writeAsk, type PaperAsk } from './paper/asked.ts';
import { pageRule } from './paper/pageRule.ts';
import { PaperChoice } from './paper/PaperChoice.tsx';
import { SheetView } from './paper/SheetView.tsx';
import './paper/paper.css';

export interface PaperProps {
  readonly open: OpenShoot;
  readonly search: Readonly<Record<string, string>>;
  /** Shows what these values of the address ask for. */
  readonly onSearch: (search: Readonly<Record<string, string>>) => void;
}

interface PagesProps {
  readonly open: OpenShoot;
  readonly ask: PaperAsk;
  readonly onAsk: (ask: PaperAsk) => void;
}

function Pages({ open, ask, onAsk, sheets }: PagesProps & { readonly sheets: readonly Sheet[] }) {
  return (
    <div className="paper">
      <style>{pageRule({ size: ask.size, says: `${open.plan.title}, revision ${open.revision}` })}</style>
      <PaperChoice open={open} ask={ask} sheetCount={sheets.length} onAsk={onAsk} />
      <div className="paper-sheets">
        {sheets.map((each) => (
          <SheetView key={each.id} sheet={each} size={ask.size} />
        ))}
      </div>
    </div>
  );
}

/** Sheets that the plan alone tells. */
function PlanPages({ open, ask, onAsk }: PagesProps) {
  const { shoot, plan } = open;
  const system = ask.units ?? shoot.shoot.units ?? 'metric';
  const { sheet, shot, duty, size } = ask;
  const sheets = useMemo(
    () =>
      sheetsFor(
        { shoot, plan, system },
        sheetAsked({ sheet, size, ...(shot === undefined ? {} : { shot }), ...(duty === undefined ? {} : { duty }) }),
      ),
    [shoot, plan, system, sheet, shot, duty, size],
  );
  return <Pages open={open} ask={ask} onAsk={onAsk} sheets={sheets} />;
}

/** Sheets of the day, which is drawn in a worker. */
function DayPages({ open, ask, onAsk }: PagesProps) {
  const { shoot, plan } = open;
  const { day, isUpdating, failed } = useDay(open);
  const system = ask.units ?? shoot.shoot.units ?? 'metric';
  if (day && !isUpdating) {
    const sheets = sheetsFor({ shoot, plan, system, day: () => day }, sheetAsked(ask));
    return <Pages open={open} ask={ask} onAsk={onAsk} sheets={sheets} />;
  }
  return (
    <div className="paper">
      <PaperChoice open={open} ask={ask} sheetCount={0} onAsk={onAsk} />
      <p role="status">{failed === undefined ? 'Drawing days…' : `The day could not be worked out: ${failed}`}</p>
    </div>
  );
}

/** Everything the set needs on paper: shot cards, the plan, a morning sheet for each person, cues and the day. */
export function Paper({ open, search, onSearch }: PaperProps) {
  const { shoot, plan } = open;
  const ask = readAsk(search, {
    shots: plan.shots.map(({ id }) => id),
    people: [...peopleOf(shoot).map(({ id }) => id), ...DUTY_NAMES],
  });
  const onAsk = (next: PaperAsk) => onSearch(writeAsk(next));
  const isOfDay = ask.sheet === 'day' || ask.sheet === 'dressing';
  return isOfDay ? <DayPages open={open} ask={ask} onAsk={onAsk} /> : <PlanPages open={open} ask={ask} onAsk={onAsk} />;
}
