import { useMemo, useState } from 'react';
import type { PatchOperation } from '../../plan/types.ts';
import { Button } from '../parts/Button.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import { Notice } from '../parts/Notice.tsx';
import { kitHref, kitHrefAt } from '../hrefs.ts';
import type { OpenShoot } from '../state/contract.ts';
import { useUnits } from '../state/unitChoice.ts';
import { KitProvider, type KitContext } from './kit/kitContext.ts';
import { Drawings } from './light/Drawings.tsx';
import { FindLamps } from './light/FindLamps.tsx';
import { FlagList } from './light/FlagList.tsx';
import { Findings } from './light/Findings.tsx';
import { LampList } from './light/LampList.tsx';
import { addSetup, type Thing } from './light/lightEdits.ts';
import { LightProvider, type LightContext } from './light/lightContext.ts';
import { LitShots } from './light/LitShots.tsx';
import { Reading } from './light/Reading.tsx';
import { Resting } from './light/Resting.tsx';
import { Schedule } from './light/Schedule.tsx';
import { SetupHead } from './light/SetupHead.tsx';
import { SetupList } from './light/SetupList.tsx';
import { TakeCare } from './light/TakeCare.tsx';
import { useLampMoves } from './light/useLampMoves.ts';
import { useSetup } from './light/useSetup.ts';
import { fieldId } from './shot/shotContext.ts';
import { useShotEdits } from './shot/useShotEdits.ts';
import './kit/kit.css';
import './light/light.css';
import './light/drawing.css';

export interface LightProps {
  readonly open: OpenShoot;
  /** The set-up in the address, where one is. */
  readonly setupId: string | undefined;
  readonly hrefOf: (setupId?: string) => string;
  readonly onGo: (href: string) => void;
}

interface SetupProps extends LightProps {
  readonly setupId: string;
  readonly onAdd: () => void;
  readonly edit: (patch: readonly PatchOperation[], summary: string) => void;
}

/** One set-up: drawn, listed, held against the shots it lights. */
function Setup({ open, setupId, hrefOf, onGo, onAdd, edit }: SetupProps) {
  const edits = useShotEdits(open);
  const system = useUnits(open.shoot.shoot.units);
  const [only, setOnly] = useState<string>();
  const [selected, setSelected] = useState<Thing>();
  const [said, setSaid] = useState('');
  const moves = useLampMoves(setupId, edits);
  const setup = useSetup(open, setupId, { move: moves.now, only });
  const title = setup.setup.title ?? setupId;
  const context: LightContext = {
    ...setup,
    open,
    system,
    setupId,
    title,
    only,
    onOnly: setOnly,
    selected,
    onSelect: setSelected,
    edits,
    moves,
    edit,
    say: setSaid,
    follow: (path) => {
      const href = kitHrefAt(open.id, path);
      if (href !== undefined) onGo(href);
      else document.getElementById(fieldId(path))?.focus();
    },
    onGo,
  };
  return (
    <LightProvider value={context}>
      <div className="light">
        <div className="light-side">
          <SetupList open={open} setupId={setupId} hrefOf={hrefOf} onGo={onGo} onAdd={onAdd} />
          <SetupHead hrefOf={hrefOf} />
          <LitShots />
          <Reading />
        </div>
        <div className="light-middle">
          <Drawings />
        </div>
        <div className="light-list">
          <Findings />
          <LampList />
          <FlagList />
          <Resting>
            <FindLamps />
            <TakeCare />
          </Resting>
        </div>
        <div className="light-paper">
          <Resting>
            <Schedule />
          </Resting>
        </div>
      </div>
      <p className="hidden-text" role="status" aria-live="polite">
        {said}
      </p>
    </LightProvider>
  );
}

/** The light of every set-up: lamps placed, aimed and dimmed, and what they give the shots. */
export function Light({ open, setupId, hrefOf, onGo }: LightProps) {
  const system = useUnits(open.shoot.shoot.units);
  const [said, setSaid] = useState<string>();
  const ids = Object.keys(open.shoot.lighting);
  const shown = setupId ?? ids[0];
  const edit = (patch: readonly PatchOperation[], summary: string) => {
    open.commit(patch, summary);
    setSaid(summary);
  };
  const onAdd = () => {
    const { id, patch } = addSetup(open.written);
    edit(patch, 'New set-up added');
    onGo(hrefOf(id));
  };
  /** Fields of the kit's forms write here too; they ask for no more than these. */
  const kit = useMemo(
    (): KitContext => ({
      open,
      system,
      hrefOf: (kind, item) => kitHref(open.id, kind, item),
      onGo,
      edit: open.commit,
      onAdd: () => undefined,
      onMade: () => undefined,
      onCopyFrom: () => undefined,
      onRemove: () => undefined,
    }),
    [open, system, onGo],
  );
  return (
    <KitProvider value={kit}>
      {shown === undefined ? (
        <EmptyPlace
          title="No light yet"
          says="A set-up is lamps that stand somewhere and light one or more shots. Add one, put lamps of the kit where they go, and see what they give before a stand is carried in."
        >
          <Button look="main" onClick={onAdd}>
            Add a set-up
          </Button>
          <Button onClick={() => onGo(kitHref(open.id, 'lamps'))}>Lamps in the kit</Button>
        </EmptyPlace>
      ) : ids.includes(shown) ? (
        <Setup key={shown} open={open} setupId={shown} hrefOf={hrefOf} onGo={onGo} onAdd={onAdd} edit={edit} />
      ) : (
        <EmptyPlace title="No such set-up" says="It may have been taken out. The others are in the list.">
          <Button onClick={() => onGo(hrefOf())}>Light</Button>
        </EmptyPlace>
      )}
      {said !== undefined && (open.undoSummary ?? said) === said && (
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
    </KitProvider>
  );
}
