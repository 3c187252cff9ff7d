import { useMemo } from 'react';
import { flagTakes } from '../../../plan/flagTakes.ts';
import { withSetup, type PlacedFlag } from '../../../plan/lighting.ts';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { letterOf } from './drawn.ts';
import { FlagCard } from './FlagCard.tsx';
import { takesSaid } from './flagWords.ts';
import { addFlag, isThing, switchThing } from './lightEdits.ts';
import { useLight } from './lightContext.ts';

/** One flag in a line: what it takes away, standing or not; its fields beneath while it is chosen. */
function FlagRow({ flag, letter }: { readonly flag: PlacedFlag; readonly letter: string }) {
  const { open, setup, setupId, view, system, selected, onSelect, edit } = useLight();
  const { id, isOff, lacks } = flag;
  const { shoot, written } = open;
  const mark = `Flag ${letter}`;
  const title = flag.title === id ? mark : flag.title;
  const isChosen = isThing(selected, 'flag', id);
  const takes = useMemo(() => flagTakes({ shoot: withSetup(shoot, setupId, () => setup), setupId, flagId: id, view }), [shoot, setupId, setup, id, view]);
  return (
    <li className={`light-row${isChosen ? ' is-chosen' : ''}${isOff ? ' is-dim' : ''}`} data-flag-row={id}>
      <div className="light-row-head">
        <button type="button" className="light-row-name" aria-expanded={isChosen} onClick={() => onSelect(isChosen ? undefined : { kind: 'flag', id })}>
          <span className="light-row-number is-letter">{letter}</span>
          <span className="light-row-title">{title}</span>
        </button>
        <span className="light-row-figures">
          {isOff ? 'taken away' : lacks.length > 0 ? <span className="is-short">lacks {lacks.length === 1 ? 'a figure' : `${lacks.length} figures`}</span> : <span>{takesSaid(takes, system)}</span>}
        </span>
        <span className="light-row-switches no-print">
          <button type="button" className="light-word" aria-pressed={isOff} aria-label={`${mark} off`} onClick={() => edit(switchThing(written, setupId, { kind: 'flag', id }, !isOff), `${title} ${isOff ? 'stands again' : 'taken away'}`)}>
            off
          </button>
        </span>
      </div>
      {isChosen && <FlagCard flag={flag} mark={mark} />}
    </li>
  );
} // prettier-ignore

/** Every flag of the set-up, as the drawing has them. */
export function FlagList() {
  const { light, open, setupId, title, edit, onSelect } = useLight();
  const add = () => {
    const { id, patch } = addFlag(open.written, setupId);
    edit(patch, `Flag added to ${title}`);
    onSelect({ kind: 'flag', id });
  };
  return (
    <Panel title="Flags" aside={light.flags.length > 0 ? 'what each takes at the subject' : 'what keeps light off'} className="light-flags">
      <ol>
        {light.flags.map((flag, i) => (
          <FlagRow key={flag.id} flag={flag} letter={letterOf(i)} />
        ))}
      </ol>
      <div className="light-add no-print">
        <Button look="quiet" onClick={add}>
          Add a flag
        </Button>
      </div>
    </Panel>
  );
} // prettier-ignore
