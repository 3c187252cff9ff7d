import { useShot } from './shotContext.ts';
import { saidShown, showNamed } from './showValue.ts';
import '../../parts/cautions.css';

/** What the figures rest on that nobody measured or published, each leading to where it would be written. */
export function RestsOn() {
  const { plan, follow, system } = useShot();
  const { assumed } = plan;
  if (assumed.length === 0) return null;
  return (
    <section className="rests-on" id="rests-on" aria-label="Assumptions">
      <h3>
        Rests on {assumed.length} {assumed.length === 1 ? 'assumption' : 'assumptions'}
      </h3>
      <ul>
        {assumed.map(({ name, title, value, kind, why, path }) => (
          <li key={name}>
            <button type="button" onClick={() => follow(path)}>
              {title}
            </button>
            <b>{saidShown(showNamed({ name, value, kind, system }))}</b>
            <span>{why}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What can hurt somebody at this shot. */
export function Cautions() {
  const { plan } = useShot();
  if (plan.cautions.length === 0) return null;
  return (
    <section className="cautions" aria-label="Cautions">
      <h3>Take care</h3>
      <ul>
        {plan.cautions.map(({ key, says }) => (
          <li key={key + says}>{says}</li>
        ))}
      </ul>
    </section>
  );
}

/** What no limit says and the crew should know. */
export function Notes() {
  const { plan } = useShot();
  if (plan.notes.length === 0) return null;
  return (
    <section className="shot-notes" aria-label="Notes">
      {plan.notes.map((says) => (
        <p key={says}>{says}</p>
      ))}
    </section>
  );
}

/** What is written for this shot and cannot be used, each leading to its field. */
export function ShotProblems() {
  const { open, shotId, follow } = useShot();
  const own = open.problems.filter(({ path }) => path === `/shots/${shotId}` || path.startsWith(`/shots/${shotId}/`));
  if (own.length === 0) return null;
  return (
    <section className="shot-problems" aria-label="Problems">
      <h2>{own.length === 1 ? 'One thing cannot be read' : `${own.length} things cannot be read`}</h2>
      <ul>
        {own.map(({ path, what, near }) => (
          <li key={path + what}>
            <button type="button" onClick={() => follow(path)}>
              {path.split('/').slice(3).join(', ') || 'this shot'}
            </button>{' '}
            {what}
            {near !== undefined && `; did you mean ${near}?`}
          </li>
        ))}
      </ul>
    </section>
  );
}
