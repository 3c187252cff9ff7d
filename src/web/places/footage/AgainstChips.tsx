import type { ClipBrief } from '../../../record/footage.ts';
import { StateShape, type Standing } from '../../parts/StateWord.tsx';

type Held = ClipBrief['against'][number];

const SHAPES: Readonly<Record<Held['state'], Standing>> = { worse: 'short', differs: 'tight', better: 'spare', 'as planned': 'spare' }; // prettier-ignore

function Chip({ state, says }: { readonly state: Held['state']; readonly says: string }) {
  return (
    <li className={`footage-chip ${SHAPES[state]}`}>
      <StateShape standing={SHAPES[state]} />
      {says}
    </li>
  );
}

/** What was measured against what was planned: in full where it went otherwise, in a word where it did not. */
export function AgainstChips({ against }: Pick<ClipBrief, 'against'>) {
  const bad = against.filter(({ state }) => state === 'worse' || state === 'differs');
  const named = (state: Held['state']) => against.filter((held) => held.state === state).map(({ what }) => what).join(', '); // prettier-ignore
  const better = named('better');
  const same = named('as planned');
  if (against.length === 0) return null;
  return (
    <ul className="footage-chips" aria-label="Against the plan">
      {bad.map(({ what, says, state }) => (
        <Chip key={what} state={state} says={says.replace(/\.$/, '')} />
      ))}
      {better !== '' && <Chip state="better" says={`better: ${better}`} />}
      {same !== '' && <Chip state="as planned" says={`as planned: ${same}`} />}
    </ul>
  );
}
