import { againstFigure, AGAINST_NAMES } from '../../../../turnover/measureWords.ts';
import type { ClipReply } from '../../../../turnover/measureReply.ts';
import { isAmiss } from '../../../../turnover/measureText.ts';
import { shotHref } from '../../../hrefs.ts';
import { Panel } from '../../../parts/Panel.tsx';
import { StateShape, StateWord, type Standing } from '../../../parts/StateWord.tsx';
import type { OpenShoot } from '../../../state/contract.ts';
import { GoLink } from '../../GoLink.tsx';

export interface VerdictProps {
  readonly open: OpenShoot;
  readonly reply: ClipReply;
  /** What stands before it: that it is a first look, or should be measured again. */
  readonly note?: string;
  readonly onGo: (href: string) => void;
}

type Held = ClipReply['against'][number];

const SHAPES: Readonly<Record<Held['state'], Standing>> = { worse: 'short', differs: 'tight', better: 'spare', 'as planned': 'spare' }; // prettier-ignore

function Against({ against }: { readonly against: readonly Held[] }) {
  return (
    <table className="clip-against">
      <thead>
        <tr>
          <td />
          <th scope="col">Measured</th>
          <th scope="col">Planned</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {against.map((held) => (
          <tr key={held.what}>
            <th scope="row">{AGAINST_NAMES[held.what]}</th>
            <td>{againstFigure(held, held.measured)}</td>
            <td>{againstFigure(held, held.planned)}</td>
            <td>
              <StateWord standing={SHAPES[held.state]} word={held.state} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What was found, most important first, and how it stands against the plan of its shot. */
export function Verdict({ open, reply, note, onGo }: VerdictProps) {
  const { shot, against, notes } = reply;
  return (
    <div className="clip-verdict">
      <Panel title="What was found">
        {note !== undefined && <p className="clip-note">{note}</p>}
        <ul className="clip-says">
          {reply.verdict.map((says) => (
            <li key={says} className={isAmiss(says) ? 'is-amiss' : undefined}>
              <StateShape standing={isAmiss(says) ? 'short' : 'spare'} />
              <span>{says}</span>
            </li>
          ))}
        </ul>
        {notes.map((says) => (
          <p key={says} className="clip-hint">
            {says}
          </p>
        ))}
      </Panel>
      <Panel
        title="Against the plan"
        {...(shot && {
          aside: (
            <GoLink href={shotHref(open.id, shot.id)} onGo={onGo}>
              {shot.title}
            </GoLink>
          ),
        })}
      >
        {!shot && <p className="clip-hint">Nobody has said which shot this is. Correct the clip in the list to hold it against its plan.</p>}
        {shot && against.length === 0 && <p className="clip-hint">Nothing of it can be held against the plan.</p>}
        {against.length > 0 && <Against against={against} />}
      </Panel>
    </div>
  );
} // prettier-ignore
