import { useEffect, useRef, useState } from 'react';
import { shotHref } from '../../hrefs.ts';
import { Button } from '../../parts/Button.tsx';
import { focusMover } from '../../parts/focusMover.ts';
import { Panel } from '../../parts/Panel.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { StripAxis } from './LimitStrip.tsx';
import { copyShot, movePatch, removePatch } from './shotList.ts';
import { ShotRow } from './ShotRow.tsx';

export interface ShotListProps {
  readonly open: OpenShoot;
  readonly onShot: (shotId: string) => void;
  readonly onNewShot: () => void;
  /** Something was done that can be taken back. */
  readonly onSaid: (says: string) => void;
}

const COLUMNS = ['Rate', 'Shutter', 'Stop', 'EI', 'Lens'] as const;

/** All shots in the order people read them, each with its settings and its limits on one shared axis. */
export function ShotList({ open, onShot, onNewShot, onSaid }: ShotListProps) {
  const { plan, shoot, written } = open;
  const { shots } = plan;
  const ids = shots.map(({ id }) => id);
  const list = useRef<HTMLOListElement>(null);
  const [moved, setMoved] = useState<{ readonly id: string; readonly by: 1 | -1 }>();
  useEffect(() => {
    if (moved && list.current) focusMover(list.current, moved.id, moved.by);
  }, [moved]);
  const movedShot = shots.find(({ id }) => id === moved?.id);

  const move = (id: string, title: string, by: 1 | -1) => {
    open.commit(movePatch(ids, id, by), `${title} moved ${by < 0 ? 'up' : 'down'}`);
    setMoved({ id, by });
  };
  const copy = (id: string, title: string) => {
    open.commit(copyShot(written, ids, id, title).patch, `${title} copied`);
    onSaid(`Copied: ${title}`);
  };
  const remove = (id: string, title: string) => {
    open.commit(removePatch(written, id), `${title} taken out`);
    onSaid(`Taken out: ${title}`);
  };

  return (
    <Panel title="Shots" aside={shots.length === 0 ? undefined : 'every limit a mark, in stops'} className="shot-list">
      {shots.length === 0 ? (
        <div className="shoot-none">
          <p>No shots yet. A shot says what must be filmed; its settings and limits are then worked out.</p>
          <Button look="main" onClick={onNewShot}>
            Write the first shot
          </Button>
        </div>
      ) : (
        <div className="shot-rows">
          <div className="shot-columns" aria-hidden="true">
            {COLUMNS.map((title) => (
              <span key={title} className={`column-${title.toLowerCase()}`}>
                {title}
              </span>
            ))}
            <StripAxis />
          </div>
          <ol ref={list}>
            {shots.map((shot, i) => (
              <ShotRow
                key={shot.id}
                shoot={shoot}
                shot={shot}
                href={shotHref(open.id, shot.id)}
                isFirst={i === 0}
                isLast={i === shots.length - 1}
                onOpen={() => onShot(shot.id)}
                onMove={(by) => move(shot.id, shot.title, by)}
                onCopy={() => copy(shot.id, shot.title)}
                onRemove={() => remove(shot.id, shot.title)}
              />
            ))}
          </ol>
          <p className="hidden-text" role="status">
            {movedShot ? `${movedShot.title} is now ${movedShot.number} of ${shots.length}` : ''}
          </p>
        </div>
      )}
    </Panel>
  );
}
