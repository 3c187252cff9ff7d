import { MAY_DIFFER } from '../../../document/schema.ts';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { AskChoice } from './AskChoice.tsx';
import { useShot } from './shotContext.ts';
import './plates.css';

/** Which shot this one is a plate or an element for, and what keeps it from matching. */
export function PlateFields() {
  const { open, shotId, edits } = useShot();
  const others = open.plan.shots.filter(({ id }) => id !== shotId);
  const match = open.plan.matches.find((each) => each.shotId === shotId);
  const titleOf = (id: string) => open.plan.shots.find((shot) => shot.id === id)?.title ?? id;
  const patch = match?.differences.flatMap((difference) => difference.patch) ?? [];
  return (
    <>
      <AskChoice
        name="matches"
        label="A plate for"
        choices={others.map(({ id, title }) => ({ value: id, label: title }))}
        unsaid="no other shot"
      />
      {match?.differences.length === 0 && <p className="plate-word">Matches {titleOf(match.matchesId)}.</p>}
      {match && match.differences.length > 0 && (
        <div className="plate-differs" role="group" aria-label={`Differs from ${titleOf(match.matchesId)}`}>
          <p className="plate-word">Does not match {titleOf(match.matchesId)} yet:</p>
          <table>
            <thead>
              <tr>
                <th scope="col">What</th>
                <th scope="col">Here</th>
                <th scope="col">There</th>
              </tr>
            </thead>
            <tbody>
              {match.differences.map(({ what, here, there }) => (
                <tr key={what}>
                  <th scope="row">{MAY_DIFFER[what].replace(/^the /, '')}</th>
                  <td>{here}</td>
                  <td>{there}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {patch.length > 0 && (
            <Button onClick={() => edits.commit(() => patch, `Match ${titleOf(match.matchesId)}`)}>Make them the same</Button>
          )}
        </div>
      )}
    </>
  );
} // prettier-ignore

/** Reference rolls owed before the first take, and why; nothing where none are. */
export function ReferencesOwed() {
  const { open, shotId } = useShot();
  const due = open.plan.references.filter((reference) => reference.shotId === shotId);
  if (due.length === 0) return null;
  return (
    <Panel title="Reference rolls" aside="before the first take" className="references-owed">
      <ul>
        {due.map(({ what, because }) => (
          <li key={what}>
            <b>{what}</b>
            <span>{because}</span>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

/** The shot that waits for this one as its plate, where one does, with how it stands. */
export function PlatesOf() {
  const { open, shotId } = useShot();
  const plates = open.plan.matches.filter(({ matchesId }) => matchesId === shotId);
  if (plates.length === 0) return null;
  return (
    <p className="plates-of">
      {plates.map(({ shotId: id, differences }) => {
        const title = open.plan.shots.find((shot) => shot.id === id)?.title ?? id;
        const words = differences.length === 0 ? 'matches' : `does not match in ${differences.map(({ what }) => what).join(', ')}`;
        return <span key={id}>{`${title} ${words}. `}</span>;
      })}
    </p>
  );
} // prettier-ignore
