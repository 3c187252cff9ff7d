import { useMemo, useState } from 'react';
import { showQuantity } from '../../../base/quantity.ts';
import { keptTakes } from '../../../plan/takes.ts';
import { MarginChart } from '../../parts/MarginChart.tsx';
import { Panel } from '../../parts/Panel.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { useUnits } from '../../state/unitChoice.ts';
import { dayHref } from '../../hrefs.ts';
import { GoLink } from '../GoLink.tsx';
import { chartRows } from '../shot/chartRows.ts';
import { saidShown } from '../shot/showValue.ts';
import { WrittenField } from './WrittenField.tsx';

const MOST_TOLD = 3;

/** "Most of it: Two quinces meet, 1.2 TB in 8 takes". */
function heaviest({ plan, shoot }: OpenShoot): string {
  const told = plan.shots
    .map(({ id, title, keptSize_B = 0 }) => ({ title, takes: keptTakes(shoot, id), size_B: keptSize_B * keptTakes(shoot, id) }))
    .filter(({ size_B }) => size_B > 0)
    .sort((a, b) => b.size_B - a.size_B)
    .slice(0, MOST_TOLD)
    .map(({ title, takes, size_B }) => `${title} ${saidShown(showQuantity('bytes', size_B))} in ${takes === 1 ? 'one take' : `${takes} takes`}`);
  return told.length === 0 ? '' : `Most of it: ${told.join('; ')}.`;
} // prettier-ignore

/** Limits of the day as a whole, on the same axis as those of a shot. */
export function WholeShoot({ open, onGo }: { readonly open: OpenShoot; readonly onGo: (href: string) => void }) {
  const { plan, shoot } = open;
  const system = useUnits(shoot.shoot.units);
  const rows = useMemo(() => chartRows(plan.margins, system), [plan.margins, system]);
  const [chosen, setChosen] = useState<string>();
  const [asked, setAsked] = useState<string>();
  const drives = Object.keys(shoot.kit.drives);
  const weight = heaviest(open);
  return (
    <Panel title="The whole shoot" className="whole-shoot">
      {drives.length === 0 && (
        <p className="shoot-note">
          No drive is written under <code>kit, drives</code>, so whether everything fits cannot be judged.
        </p>
      )}
      {rows.length > 0 && (
        <MarginChart
          label="Limits of the whole shoot, in stops"
          rows={rows}
          {...(chosen === undefined ? {} : { chosen })}
          onChoose={(id) => setChosen(id === chosen ? undefined : id)}
          onFollow={setAsked}
        />
      )}
      {chosen === 'day' && (
        <>
          <div className="shoot-about-fields">
            <WrittenField open={open} path="/shoot/day/call" label="Call" placeholder="07:30" />
            <WrittenField open={open} path="/shoot/day/wrap" label="Wrap" placeholder="19:30" />
            <WrittenField open={open} path="/shoot/day/mealLength" label="Length of a meal" placeholder="45 min" />
          </div>
          <p className="shoot-note">
            Means and spreads added up; <GoLink href={dayHref(open.id)} onGo={onGo}>the Day</GoLink> draws whole days and says when each shot ends.
          </p>
        </>
      )}
      {asked !== undefined && <p className="shoot-note">That is written at {asked}.</p>}
      {weight !== '' && <p className="shoot-note">{weight}</p>}
      {chosen === 'storage' && (
        <div className="shoot-about-fields">
          {drives.flatMap((id) => {
            const title = shoot.kit.drives[id]!.title ?? id;
            return [
              <WrittenField key={`${id} capacity`} open={open} path={`/kit/drives/${id}/capacity`} label={`${title}: capacity`} placeholder="8 TB" />,
              <WrittenField key={`${id} used`} open={open} path={`/kit/drives/${id}/used`} label={`${title}: used already`} placeholder="0 GB" />,
            ];
          })}
        </div>
      )}
    </Panel>
  );
} // prettier-ignore
