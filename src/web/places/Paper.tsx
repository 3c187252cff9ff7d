import { useMemo } from 'react';
import { DUTY_NAMES, peopleOf } from '../../turnover/sheets/morningSheet.ts';
import { sheetsFor } from '../../turnover/sheets/sheets.ts';
import type { OpenShoot } from '../state/contract.ts';
import { readAsk, sheetAsked, writeAsk } from './paper/asked.ts';
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

/** Everything the set needs on paper: shot cards, the plan, a morning sheet for each person. */
export function Paper({ open, search, onSearch }: PaperProps) {
  const { shoot, plan, revision } = open;
  const ask = readAsk(search, {
    shots: plan.shots.map(({ id }) => id),
    people: [...peopleOf(shoot).map(({ id }) => id), ...DUTY_NAMES],
  });
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
  return (
    <div className="paper">
      <style>{pageRule({ size, says: `${plan.title}, revision ${revision}` })}</style>
      <PaperChoice open={open} ask={ask} sheetCount={sheets.length} onAsk={(next) => onSearch(writeAsk(next))} />
      <div className="paper-sheets">
        {sheets.map((each) => (
          <SheetView key={each.id} sheet={each} size={size} />
        ))}
      </div>
    </div>
  );
}
