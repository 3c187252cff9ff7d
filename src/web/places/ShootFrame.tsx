import { useCallback, useEffect, useRef, type ReactNode } from 'react';
import { KeyHelp } from '../actions/KeyHelp.tsx';
import { useActions } from '../actions/useActions.ts';
import { Button } from '../parts/Button.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import type { PlaceLink } from '../parts/PlaceRow.tsx';
import { Shell } from '../parts/Shell.tsx';
import {
  dayHref,
  footageHref,
  historyHref,
  kitHref,
  lightHref,
  paperHref,
  reckonerHref,
  SHOOTS_HREF,
  shootHref,
  shotHref,
} from '../hrefs.ts';
import type { OpenShoot, Saving } from '../state/contract.ts';
import { FieldMarkProvider } from '../parts/fieldMarks.ts';
import { OpenShootProvider, useOpening, useOthers } from '../state/hooks.ts';
import { client } from '../state/page.ts';
import { NameBar } from './crew/NameBar.tsx';
import { People } from './crew/People.tsx';
import { Refusals } from './crew/Refusals.tsx';
import { useHere } from './crew/useHere.ts';
import { pathOfField, sayMark } from './crew/where.ts';
import './crew/crew.css';

/** The places of one shoot, by the names that they go by. */
export type ShootPlace = 'Shoot' | 'Shot' | 'Light' | 'Day' | 'Footage' | 'Kit' | 'Paper' | 'Reckoner' | 'History';

export interface ShootFrameProps {
  readonly shootId: string;
  /** The shot on the screen, where one is. */
  readonly shotId: string | undefined;
  readonly place: ShootPlace;
  readonly onGo: (href: string) => void;
  readonly children: ReactNode;
}

const ALL_SHOOTS = { label: 'All shoots', href: SHOOTS_HREF, isCurrent: false };
const RECKONER = { label: 'Reckoner', href: reckonerHref(), isCurrent: false };

function placesOf({ id, plan }: OpenShoot, place: ShootPlace, shotId: string | undefined): readonly PlaceLink[] {
  const shot = plan.shots.find((each) => each.id === shotId) ?? plan.shots[0];
  const link = (label: ShootPlace, href: string): PlaceLink => ({ label, href, isCurrent: label === place });
  return [
    link('Shoot', shootHref(id)),
    ...(shot ? [link('Shot', shotHref(id, shot.id))] : []),
    link('Light', lightHref(id)),
    link('Day', dayHref(id)),
    link('Footage', footageHref(id)),
    link('Kit', kitHref(id)),
    link('Paper', paperHref(id)),
    link('Reckoner', reckonerHref({ shootId: id })),
    ALL_SHOOTS,
  ];
}

const WORDS: Readonly<Record<Saving, string>> = {
  saved: 'saved',
  saving: 'saving',
  unsent: 'not sent yet: no connection. Kept in this browser',
  refused: 'an edit was refused',
};

function standingOf({ id, saving, revision, refusals }: OpenShoot, isCurrent: boolean) {
  const isMany = saving === 'refused' && refusals.length > 1;
  const word =
    saving === 'saved'
      ? `saved, revision ${revision}`
      : isMany
        ? `${refusals.length} edits were refused`
        : WORDS[saving];
  return { word, isSettled: saving === 'saved', href: historyHref(id), isCurrent };
}

/** The frame of everything inside one shoot: it opens the shoot, says how its edits stand, and listens for keys. */
export function ShootFrame({ shootId, shotId, place, onGo, children }: ShootFrameProps) {
  const { opening, store } = useOpening(shootId);
  const open = opening.state === 'open' ? opening.open : undefined;
  const help = useActions({ ...(open ? { open } : {}), ...(shotId === undefined ? {} : { shotId }), go: onGo });
  const shot = open?.plan.shots.find(({ id }) => id === shotId);
  const ofPlace = place === 'Shoot' || place === 'Shot' ? shot?.title : place;
  const title = [ofPlace, open?.plan.title, 'Longsecond'].filter((part) => part !== undefined).join(', ');
  useEffect(() => {
    if (place !== 'Reckoner') document.title = title;
  }, [title, place]);

  const others = useOthers(shootId);
  const marks = useCallback(
    (id: string) => {
      const path = others.length === 0 ? undefined : pathOfField(id);
      return path === undefined ? undefined : sayMark(others, path, client);
    },
    [others],
  );
  const places = open ? placesOf(open, place, shotId) : [ALL_SHOOTS, RECKONER];
  useHere({ shootId, place: shot?.title ?? `the ${place}`, base: shot ? `/shots/${shot.id}` : '' });

  // The link that led here is gone with its place: the keyboard goes on in the new one, not at the top of the page.
  const from = useRef(shotId);
  useEffect(() => {
    const isMoved = from.current !== shotId;
    from.current = shotId;
    if (isMoved && document.activeElement === document.body) document.getElementById('place')?.focus({ preventScroll: true });
  }, [shotId]);

  if (opening.state === 'failed') {
    const { fault, isAway } = opening;
    return (
      <Shell places={places} onGo={onGo}>
        <EmptyPlace title={isAway ? 'The shoot cannot be reached' : fault.what} says={isAway ? `${fault.what}. ${fault.mend} It is tried again by itself.` : fault.mend}>
          {isAway && <Button onClick={store.wake}>Try again now</Button>}
          <Button onClick={() => onGo(SHOOTS_HREF)}>All shoots</Button>
        </EmptyPlace>
        <KeyHelp {...help} />
      </Shell>
    );
  }
  if (!open)
    return (
      <Shell places={places} onGo={onGo}>
        <p className="shoot-opening" role="status">
          Opening…
        </p>
        <KeyHelp {...help} />
      </Shell>
    );
  const step = (summary: string | undefined, onPress: () => void) => ({
    ...(summary === undefined ? {} : { summary }),
    onPress,
  });
  return (
    <Shell
      places={places}
      onGo={onGo}
      title={open.plan.title}
      standing={standingOf(open, place === 'History')}
      people={<People open={open} others={others} onGo={onGo} />}
      notices={<Refusals open={open} />}
      undo={step(open.undoSummary, open.undo)}
      redo={step(open.redoSummary, open.redo)}
    >
      <OpenShootProvider value={open}>
        <FieldMarkProvider value={marks}>{children}</FieldMarkProvider>
      </OpenShootProvider>
      <NameBar others={others} />
      <KeyHelp {...help} />
    </Shell>
  );
} // prettier-ignore
