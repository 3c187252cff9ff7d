import { useState } from 'react';
import type { Problem } from '../../../document/problem.ts';
import { kitHrefAt, shotHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { GoLink } from '../GoLink.tsx';
import { isTypable, mendsOf, sayPath } from './mends.ts';
import { WrittenField } from './WrittenField.tsx';

export interface ProblemsProps {
  readonly open: OpenShoot;
  readonly onGo: (href: string) => void;
}

/** Where a problem can be looked at in its surroundings, if that is a place of its own. */
function hrefOf({ id, plan }: OpenShoot, { path }: Problem): string | undefined {
  const [, section, shotId] = path.split('/');
  return section === 'shots' && plan.shots.some((shot) => shot.id === shotId)
    ? shotHref(id, shotId!)
    : kitHrefAt(id, path);
}

function Told({ open, problem, onGo }: ProblemsProps & { readonly problem: Problem }) {
  const { path, what, near } = problem;
  const href = hrefOf(open, problem);
  return (
    <>
      <p className="problem-path">
        {href === undefined ? (
          sayPath(path)
        ) : (
          <GoLink href={href} onGo={onGo}>
            {sayPath(path)}
          </GoLink>
        )}
      </p>
      <p className="problem-what">
        {what}
        {near !== undefined && `; did you mean ${near}?`}
      </p>
    </>
  );
}

interface Held {
  readonly problem: Problem;
  readonly at: number;
}

const isSame = (a: Problem, b: Problem) => a.path === b.path;

/** What is written and cannot be used, each with what to do about it. Nothing of it is lost: it stands as it was typed. */
export function Problems({ open, onGo }: ProblemsProps) {
  const { problems, written } = open;
  // Typing something right solves the problem at once; its line stays until the person is done with the field.
  const [held, setHeld] = useState<Held>();
  const shown = held && !problems.some((each) => isSame(each, held.problem)) ? problems.toSpliced(held.at, 0, held.problem) : problems;
  if (shown.length === 0) return null;
  return (
    <section className="problems" aria-labelledby="problems-title">
      <h2 id="problems-title">{shown.length === 1 ? 'One thing cannot be read' : `${shown.length} things cannot be read`}</h2>
      <p className="shoot-note">They are kept as written. Limits that need them are not known until they are mended.</p>
      <ul>
        {shown.map((problem, at) => (
          <li key={`${problem.path} ${problem.code}`} className="problem">
            <Told open={open} problem={problem} onGo={onGo} />
            <div className="problem-mends no-print">
              {(isTypable(written, problem) || (held && isSame(held.problem, problem))) && (
                <div onFocus={() => setHeld({ problem, at })} onBlur={() => setHeld(undefined)}>
                  <WrittenField open={open} path={problem.path} label="Write instead" isToldElsewhere />
                </div>
              )}
              {mendsOf(written, problem).map(({ label, summary, patch }) => (
                <Button key={label} onClick={() => open.commit(patch, summary)}>
                  {label}
                </Button>
              ))}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
} // prettier-ignore
