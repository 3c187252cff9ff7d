import { useState } from 'react';
import { CATALOGUE } from '../../../laws/catalogue.ts';
import { reckonerHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyPlace } from '../../parts/EmptyPlace.tsx';
import { Mark } from '../../parts/Mark.tsx';
import { Menu } from '../../parts/Menu.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { PlayWarning } from '../../parts/PlayWarning.tsx';
import { PlaceRow } from '../../parts/PlaceRow.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { ThemeMenu } from '../../parts/ThemeMenu.tsx';
import { Exhibit, State } from './Exhibit.tsx';
import type { Bench } from './useBench.ts';

/** What opens over the page. */
export function Overlays({ bench }: { readonly bench: Bench }) {
  const { shots } = bench.plan;
  const [chosen, setChosen] = useState(shots[0]?.id);
  const [isOpen, setOpen] = useState(false);
  const [hasNotice, setNotice] = useState(true);
  const title = shots.find(({ id }) => id === chosen)?.title ?? '';
  return (
    <>
      <Exhibit of="Menu" says={`A list to choose one thing from. Chosen: ${title}.`}>
        <Menu
          trigger={<Button>Shots</Button>}
          items={shots.map((shot) => ({
            id: shot.id,
            label: shot.title,
            isCurrent: shot.id === chosen,
            note: shot.margins.filter(({ state }) => state === 'short').length + ' short',
          }))}
          onChoose={setChosen}
        />
      </Exhibit>
      <Exhibit of="ThemeMenu" says="Light, dark, stage, or as the system has it: for the whole page at once.">
        <ThemeMenu />
      </Exhibit>
      <Exhibit of="Sheet" says="Over the edge of the page, for reading something in full. Escape puts it away.">
        <Button onClick={() => setOpen(true)}>Open a sheet</Button>
        <Sheet isOpen={isOpen} title={title} onClose={() => setOpen(false)}>
          <p>The cursor stays in here until the sheet is closed, and then goes back to what opened it.</p>
        </Sheet>
      </Exhibit>
      <Exhibit of="PlayWarning" says="Stands before anything that flashes is played; leaving it is what the Enter key does.">
        <PlayWarning says="It flashes 12 times a second." isAgain={false} playLabel="Play it" onPlay={() => {}} onLeave={() => {}} />
      </Exhibit>
      <Exhibit of="Notice" says="What was just done, and how to take it back. In a place it lies at the foot of the window.">
        {hasNotice ? (
          <>
            <State says="can be taken back">
              <Notice
                says={bench.undoSummary === undefined ? 'Nothing was changed yet' : `Applied: ${bench.undoSummary}`}
                {...(bench.undoSummary === undefined ? {} : { action: { label: 'Undo', onPress: bench.undo } })}
                onDismiss={() => setNotice(false)}
              />
            </State>
            <State says="only told">
              <Notice says="That is written in the shoot’s text, at shoot, seed" onDismiss={() => setNotice(false)} />
            </State>
          </>
        ) : (
          <Button onClick={() => setNotice(true)}>Show them again</Button>
        )}
      </Exhibit>
    </>
  );
} // prettier-ignore

const LAWS = CATALOGUE.slice(0, 7);

/** What holds other parts. */
export function Holders({ onGo }: { readonly onGo: (href: string) => void }) {
  return (
    <>
      <Exhibit of="Panel" says="A part of a place under its own heading.">
        <Panel title="Margins" aside="in stops">
          <p>What the panel is about.</p>
        </Panel>
      </Exhibit>
      <Exhibit of="EmptyPlace" says="Says what goes there and how to start.">
        <EmptyPlace level={2} title="Nothing to shoot yet" says="A shoot starts from either end: with the frames of the film, or with what must be filmed.">
          <Button look="main" disabled>
            Write the first shot
          </Button>
        </EmptyPlace>
      </Exhibit>
      <Exhibit of="Mark" says="A short stroke drawn out into a long one.">
        <Mark />
      </Exhibit>
      <Exhibit of="PlaceRow" says="Never two lines: where there is no room it scrolls by itself, the current one in sight, and fades at its ends.">
        <PlaceRow
          label="Laws"
          places={LAWS.map(({ id, title }, i) => ({ label: title, href: reckonerHref({ lawId: id }), isCurrent: i === 2 }))}
          onGo={onGo}
        />
      </Exhibit>
      <Exhibit of="Shell" says="The frame around this page: skip link, places, how edits stand, undo and redo of what is changed here.">
        <p>It is the one you see: change a value, then look at the top of the page.</p>
      </Exhibit>
    </>
  );
} // prettier-ignore
