import { useState } from 'react';
import { kitHref, shotHref } from '../hrefs.ts';
import { GoLink } from './GoLink.tsx';
import { Button } from '../parts/Button.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import { Notice } from '../parts/Notice.tsx';
import type { OpenShoot } from '../state/contract.ts';
import { About } from './shoot/About.tsx';
import { Board } from './shoot/Board.tsx';
import { newFrame } from './shoot/board.ts';
import { boardOrder } from '../../turnover/film.ts';
import { Problems } from './shoot/Problems.tsx';
import { ShootHead } from './shoot/ShootHead.tsx';
import './shoot/shoot.css';
import { newShot } from './shoot/shotList.ts';
import { ShotList } from './shoot/ShotList.tsx';
import { WholeShoot } from './shoot/WholeShoot.tsx';

export interface ShootProps {
  readonly open: OpenShoot;
  readonly onGo: (href: string) => void;
}

/** The whole day at a glance: what the film needs, every shot with its limits, and what is wrong anywhere. */
export function Shoot({ open, onGo }: ShootProps) {
  const [said, setSaid] = useState<string>();
  const { plan, written } = open;
  const shotIds = plan.shots.map(({ id }) => id);
  const isEmpty = shotIds.length === 0 && Object.keys(open.shoot.board).length === 0;
  const goShot = (shotId: string) => onGo(shotHref(open.id, shotId));
  const { cameras, lenses } = open.shoot.kit;
  const lacksKit = Object.keys(cameras).length === 0 || Object.keys(lenses).length === 0;
  const addFrame = () => open.commit(newFrame(written, boardOrder(open.shoot)).patch, 'New frame');
  const addShot = () => {
    const { shotId, patch } = newShot(written, shotIds);
    open.commit(patch, 'New shot');
    goShot(shotId);
  };

  return (
    <div className="shoot">
      <ShootHead open={open} onNewShot={addShot} onGo={onGo} />
      <About open={open} />
      <Problems open={open} onGo={onGo} />
      {lacksKit && (
        <p className="shoot-lacks">
          There is no camera or no lens in this shoot yet, so no settings can be found.{' '}
          <GoLink href={kitHref(open.id)} onGo={onGo}>
            Put them into the Kit
          </GoLink>
          , or begin a shoot with the kit of another.
        </p>
      )}
      {isEmpty ? (
        <EmptyPlace
          level={2}
          title="Nothing to shoot yet"
          says="A shoot starts from either end: with the frames of the film, or with what must be filmed. Say what you know; the rest is worked out."
        >
          <Button look="main" onClick={addShot}>
            Write the first shot
          </Button>
          <Button onClick={addFrame}>Write the first frame</Button>
        </EmptyPlace>
      ) : (
        <>
          <Board open={open} onShot={goShot} onSaid={setSaid} />
          <ShotList open={open} onShot={goShot} onNewShot={addShot} onSaid={setSaid} />
          <WholeShoot open={open} onGo={onGo} />
        </>
      )}
      {said !== undefined && (
        <Notice
          says={said}
          action={{
            label: 'Undo',
            onPress: () => {
              open.undo();
              setSaid(undefined);
            },
          }}
          onDismiss={() => setSaid(undefined)}
        />
      )}
    </div>
  );
}
