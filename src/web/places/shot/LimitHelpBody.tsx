import { lawNamed } from '../../../laws/catalogue.ts';
import type { Margin } from '../../../plan/types.ts';
import { LIMIT_HELP } from '../../../turnover/limitHelp.ts';
import { marginWords } from '../../../turnover/words.ts';
import { StateWord } from '../../parts/StateWord.tsx';
import { reckonerHref } from '../../hrefs.ts';
import { GoLink } from '../GoLink.tsx';
import { useShot } from './shotContext.ts';

/** How the limit stands in this shot, in a line. */
function Now({ margin }: { readonly margin: Margin }) {
  const { system, trace } = useShot();
  const { figures, spare, band } = marginWords(margin, system);
  return (
    <p className="limit-now">
      <StateWord standing={margin.state} />
      {figures !== '' && <b>{figures}</b>}
      {spare !== '' && (
        <span>
          {spare} stops{band !== '' && `, ${band} in eight cases of ten`}
        </span>
      )}
      <span>{margin.isHard ? 'a hard limit' : 'can give way'}</span>
      {margin.have !== undefined && (
        <button type="button" onClick={() => trace(margin.haveName)}>
          where the figures come from
        </button>
      )}
    </p>
  );
}

/** One limit explained: what it is, why it matters, what can be done, and the laws behind it. */
export function LimitHelpBody({ margin }: { readonly margin: Margin }) {
  const { open, go } = useShot();
  const { what, why, can, laws } = LIMIT_HELP[margin.id];
  return (
    <div className="limit-help">
      <Now margin={margin} />
      <h3>What it is</h3>
      <p>{what}</p>
      <h3>Why it matters</h3>
      <p>{why}</p>
      <h3>What can be done</h3>
      <p>{can}</p>
      <h3>In the Reckoner</h3>
      {laws.length === 0 ? (
        <p>No law: it holds two figures that you write against each other.</p>
      ) : (
        <ul className="limit-laws">
          {laws.map((id) => (
            <li key={id}>
              <GoLink href={reckonerHref({ shootId: open.id, lawId: id })} onGo={go}>
                {lawNamed(id)?.title ?? id}
              </GoLink>
              <span>{lawNamed(id)?.says}</span>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
