import { useEffect, useState, type DragEvent } from 'react';
import { Fault } from '../../base/fault.ts';
import { blankShootText } from '../../document/blank.ts';
import { KeyHelp } from '../actions/KeyHelp.tsx';
import { useActions } from '../actions/useActions.ts';
import { Button } from '../parts/Button.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import { Shell } from '../parts/Shell.tsx';
import { reckonerHref, SHOOTS_HREF, shootHref } from '../hrefs.ts';
import { makeId } from '../state/browser.ts';
import { useShootList } from '../state/hooks.ts';
import { server } from '../state/page.ts';
import { BringIn } from './shoots/BringIn.tsx';
import { Begin } from './shoots/Begin.tsx';
import { Refused } from './shoots/Refused.tsx';
import { sameKitText } from './shoots/sameKit.ts';
import { ShootRow } from './shoots/ShootRow.tsx';
import './shoots/shoots.css';

export interface ShootsProps {
  readonly onGo: (href: string) => void;
}

const faultOf = (error: unknown): Fault =>
  error instanceof Fault
    ? error
    : new Fault({
        code: 'server.away',
        what: 'The server cannot be reached',
        where: 'this page',
        mend: 'Check that Longsecond is running, then try again. Nothing was lost.',
        cause: error,
      });

/** Every shoot there is, the one changed last first; here one is begun or brought in. */
export function Shoots({ onGo }: ShootsProps) {
  const { list, again } = useShootList();
  const [fault, setFault] = useState<Fault>();
  const [isBusy, setBusy] = useState(false);
  const [isOver, setOver] = useState(false);
  const help = useActions({ go: onGo });
  useEffect(() => {
    document.title = 'Shoots, Longsecond';
  }, []);

  /** One thing at a time: whatever is made here is opened at once, or the reason why not is shown. */
  const make = async (text: () => string | Promise<string>) => {
    setBusy(true);
    setFault(undefined);
    try {
      const { id } = await server.bringIn({ editId: makeId(), text: await text() });
      onGo(shootHref(id));
    } catch (error) {
      setFault(faultOf(error));
    } finally {
      setBusy(false);
    }
  };
  const begin = (title: string, kitOf: string | undefined) =>
    void make(async () => (kitOf === undefined ? blankShootText(title) : sameKitText(title, (await server.open(kitOf)).written)));
  const bringIn = (file: File) => void make(() => file.text());

  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file) bringIn(file);
  };
  const shoots = list.state === 'listed' ? list.shoots : [];

  return (
    <Shell
      places={[
        { label: 'All shoots', href: SHOOTS_HREF, isCurrent: true },
        { label: 'Reckoner', href: reckonerHref(), isCurrent: false },
      ]}
      onGo={onGo}
    >
      <div
        className={isOver ? 'shoots is-over' : 'shoots'}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={(event) => event.currentTarget.contains(event.relatedTarget as Node | null) || setOver(false)}
        onDrop={onDrop}
      >
        <h1>Shoots</h1>
        {fault && <Refused fault={fault} onDismiss={() => setFault(undefined)} />}
        {list.state === 'failed' && (
          <EmptyPlace title={list.fault.what} says={list.fault.mend}>
            <Button onClick={again}>Try again</Button>
          </EmptyPlace>
        )}
        {list.state === 'listed' && shoots.length === 0 && (
          <p className="shoots-none">There are no shoots here yet. Begin one, or bring in a file somebody sent you.</p>
        )}
        {shoots.length > 0 && (
          <ul className="shoots-list">
            {shoots.map((shoot) => (
              <ShootRow key={shoot.id} shoot={shoot} onGo={onGo} />
            ))}
          </ul>
        )}
        {list.state !== 'loading' && (
          <div className="shoots-new">
            <Begin shoots={shoots} isBusy={isBusy} onBegin={begin} />
            <BringIn isBusy={isBusy} onFile={bringIn} />
          </div>
        )}
      </div>
      <KeyHelp {...help} />
    </Shell>
  );
} // prettier-ignore
