import { useEffect, useState, type DragEvent } from 'react';
import type { ImportZipReply, ShootEntry, ShootReply, Standing } from '../../api/replies.ts';
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
import { BroughtIn } from './shoots/BroughtIn.tsx';
import { DuplicateSheet } from './shoots/DuplicateSheet.tsx';
import { Refused } from './shoots/Refused.tsx';
import { Notice } from '../parts/Notice.tsx';
import { isZip, sectionsOf } from './shoots/sections.ts';
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

const BECAME: Readonly<Record<Standing, string>> = {
  current: 'is with the current shoots',
  template: 'is a template: others can begin from it',
  archived: 'is archived',
};

/** The text of a file. Throws Fault `file.not-text` where it is not text in UTF-8. */
function textOf(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (cause) {
    throw new Fault({
      code: 'file.not-text',
      what: 'The file is neither text in UTF-8 nor a zip',
      where: name,
      mend: 'Choose a shoot as YAML, JSON or zip, such as one that Longsecond exported.',
      cause,
    });
  }
}

/** Every shoot there is, the one changed last first; here one is begun or brought in. */
export function Shoots({ onGo }: ShootsProps) {
  const { list, again } = useShootList();
  const [fault, setFault] = useState<Fault>();
  const [isBusy, setBusy] = useState(false);
  const [isOver, setOver] = useState(false);
  const [copied, setCopied] = useState<ShootEntry>();
  const [broughtIn, setBroughtIn] = useState<ImportZipReply>();
  const [said, setSaid] = useState<string>();
  const help = useActions({ go: onGo });
  useEffect(() => {
    document.title = 'Shoots, Longsecond';
  }, []);

  /** One thing at a time: what is done here shows at once, or the reason why not. */
  const perform = async (work: () => Promise<void>) => {
    setBusy(true);
    setFault(undefined);
    setBroughtIn(undefined);
    setSaid(undefined);
    try {
      await work();
    } catch (error) {
      setFault(faultOf(error));
    } finally {
      setBusy(false);
    }
  };
  const enter = ({ id }: ShootReply) => onGo(shootHref(id));
  const begin = (title: string, kitOf: string | undefined) =>
    void perform(async () => {
      const text = kitOf === undefined ? blankShootText(title) : sameKitText(title, (await server.open(kitOf)).written);
      enter(await server.bringIn({ editId: makeId(), text }));
    });
  const bringInZip = async (bytes: Uint8Array<ArrayBuffer>) => {
    const reply = await server.bringInZip({ editId: makeId(), bytes });
    if (reply.missingFiles.length === 0) enter(reply);
    else {
      setBroughtIn(reply);
      again();
    }
  };
  const bringIn = (file: File) =>
    void perform(async () => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      if (isZip(bytes)) await bringInZip(bytes);
      else enter(await server.bringIn({ editId: makeId(), text: textOf(bytes, file.name) }));
    });
  const duplicate = (shoot: ShootEntry, title: string) =>
    void perform(async () => enter(await server.duplicate(shoot.id, { editId: makeId(), title })));
  const setStanding = ({ id, title }: ShootEntry, standing: Standing) =>
    void perform(async () => {
      await server.setStanding(id, standing);
      setSaid(`${title} ${BECAME[standing]}`);
      again();
    });

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
        {fault && !copied && <Refused fault={fault} onDismiss={() => setFault(undefined)} />}
        {broughtIn && (
          <BroughtIn
            title={broughtIn.title}
            missing={broughtIn.missingFiles}
            onOpen={() => enter(broughtIn)}
            onDismiss={() => setBroughtIn(undefined)}
          />
        )}
        {list.state === 'failed' && (
          <EmptyPlace title={list.fault.what} says={list.fault.mend}>
            <Button onClick={again}>Try again</Button>
          </EmptyPlace>
        )}
        {list.state === 'listed' && shoots.length === 0 && (
          <p className="shoots-none">There are no shoots here yet. Begin one, or bring in a file somebody sent you.</p>
        )}
        {sectionsOf(shoots).map(({ standing, title, shoots: listed }, _i, sections) => (
          <section key={standing} className="shoots-section">
            {(sections.length > 1 || standing !== 'current') && <h2>{title}</h2>}
            <ul className="shoots-list">
              {listed.map((shoot) => (
                <ShootRow
                  key={shoot.id}
                  shoot={shoot}
                  onGo={onGo}
                  onDuplicate={() => {
                    setFault(undefined);
                    setCopied(shoot);
                  }}
                  onStanding={(next) => setStanding(shoot, next)}
                />
              ))}
            </ul>
          </section>
        ))}
        {list.state !== 'loading' && (
          <div className="shoots-new">
            <Begin shoots={shoots} isBusy={isBusy} onBegin={begin} />
            <BringIn isBusy={isBusy} onFile={bringIn} />
          </div>
        )}
      </div>
      <DuplicateSheet
        shoot={copied}
        isBusy={isBusy}
        fault={copied ? fault : undefined}
        onDuplicate={duplicate}
        onClose={() => setCopied(undefined)}
      />
      {said !== undefined && <Notice says={said} onDismiss={() => setSaid(undefined)} />}
      <KeyHelp {...help} />
    </Shell>
  );
} // prettier-ignore
