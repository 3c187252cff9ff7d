import { showQuantity, showSigned } from '../../../base/quantity.ts';
import { MiniMargin } from '../../parts/MiniMargin.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { StateWord } from '../../parts/StateWord.tsx';
import { shotHref } from '../../hrefs.ts';
import { GoLink } from '../GoLink.tsx';
import { saidShown } from '../shot/showValue.ts';
import { useLight, type LitShot } from './lightContext.ts';
import { shotsUnlit } from './litShots.ts';

function Standing({ margin }: Pick<LitShot, 'margin'>) {
  const { system } = useLight();
  if (!margin) return <span className="light-shot-figures">light not judged yet</span>;
  const { state, stops, have, need, kind } = margin;
  const said = (value: number) => saidShown(showQuantity(kind, value, { system }));
  return (
    <>
      <span className="light-shot-figures">
        {have !== undefined && need !== undefined ? `${said(have)} for ${said(need)}` : need !== undefined ? `${said(need)} needed` : (margin.missing[0]?.title ?? 'not known')}
      </span>
      <span className="light-shot-state">
        {stops && <MiniMargin stops={stops.value} standing={state} />}
        {stops && <b>{showSigned(stops.value)}</b>}
        <StateWord standing={state} word={state === 'unknown' ? 'not known' : state} />
      </span>
    </>
  );
} // prettier-ignore

/** The shots that this set-up lights, how each stands, and which of them the drawings are held against. */
export function LitShots() {
  const { open, setupId, shots, shot, onChooseShot, edit, onGo, title } = useLight();
  const others = shotsUnlit(open, setupId);
  return (
    <Panel title="Lights" aside="as the plan has it, in stops" className="light-shots">
      {shots.length === 0 && <p className="light-says">No shot yet. Give it one, and its need becomes the line everything is held against.</p>}
      <div role="radiogroup" aria-label="Held against">
        <ul>
          {shots.map((each) => (
            <li key={each.id} className={each.id === shot?.id ? 'is-chosen' : undefined}>
              <label className="light-shot">
                <input type="radio" name="light-shot" checked={each.id === shot?.id} onChange={() => onChooseShot(each.id)} />
                <span className="light-shot-title">{each.plan.title}</span>
                <Standing margin={each.margin} />
              </label>
              <GoLink className="light-shot-go no-print" href={shotHref(open.id, each.id)} onGo={onGo}>
                Shot
                <span className="hidden-text">: {each.plan.title}</span>
              </GoLink>
            </li>
          ))}
        </ul>
      </div>
      {others.length > 0 && (
        <label className="light-choose no-print">
          <span>Light another with it</span>
          <select
            value=""
            onChange={({ currentTarget: { value } }) => {
              const of = others.find(({ id }) => id === value);
              if (of) edit([{ op: 'add', path: `/shots/${value}/lighting`, value: setupId }], `${of.title} lit by ${title}`);
            }}
          >
            <option value="">choose a shot</option>
            {others.map(({ id, title: name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
    </Panel>
  );
} // prettier-ignore
