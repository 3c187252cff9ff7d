import { useEffect, useRef } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { StateShape, type Standing } from '../../parts/StateWord.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { GoLink } from '../GoLink.tsx';
import { shotsLitBy } from './litShots.ts';

export interface SetupListProps {
  readonly open: OpenShoot;
  readonly setupId: string | undefined;
  readonly hrefOf: (setupId: string) => string;
  readonly onGo: (href: string) => void;
  readonly onAdd: () => void;
}

const WORST: readonly Standing[] = ['short', 'tight', 'unknown', 'spare'];

/** How the worst of some shots stands in its light. */
function standingIn(open: OpenShoot, setupId: string): Standing | undefined {
  const states = shotsLitBy(open, setupId).flatMap(({ margin }) => (margin ? [margin.state] : []));
  return WORST.find((state) => states.includes(state));
}

/** Every set-up of the light, with how many lamps it has and how its shots stand. */
export function SetupList({ open, setupId, hrefOf, onGo, onAdd }: SetupListProps) {
  const list = useRef<HTMLUListElement>(null);
  // On a phone the list runs sideways.
  useEffect(() => {
    const current = list.current?.querySelector<HTMLElement>('[aria-current]');
    if (list.current && current) list.current.scrollLeft = current.offsetLeft - list.current.offsetLeft - 8;
  }, [setupId]);
  return (
    <nav className="light-setups" aria-label="Set-ups of the light">
      <ul ref={list}>
        {Object.entries(open.shoot.lighting).map(([id, setup]) => {
          const lamps = Object.keys(setup.lamps).length;
          const shots = shotsLitBy(open, id).length;
          const standing = standingIn(open, id);
          const word = standing === 'unknown' ? 'not known' : standing;
          return (
            <li key={id}>
              <GoLink className="light-setup" href={hrefOf(id)} onGo={onGo} aria-current={id === setupId ? 'page' : undefined}>
                <span className="light-setup-title">{setup.title ?? id}</span>
                <span className="light-setup-figures">
                  <span>{lamps === 0 ? 'no lamps' : lamps === 1 ? '1 lamp' : `${lamps} lamps`}</span>
                  <span>{shots === 0 ? 'no shot' : shots === 1 ? '1 shot' : `${shots} shots`}</span>
                  {standing && (
                    <span className={`light-setup-state ${standing}`}>
                      <StateShape standing={standing} /> {word}
                    </span>
                  )}
                </span>
              </GoLink>
            </li>
          );
        })}
      </ul>
      <Button look="quiet" className="no-print" onClick={onAdd}>
        <Icon name="plus" /> Add a set-up
      </Button>
    </nav>
  );
} // prettier-ignore
