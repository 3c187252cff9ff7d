import { paperPath } from '../../../api/paperPath.ts';
import type { Shoot } from '../../../document/schema.ts';
import { DUTY_NAMES, peopleOf } from '../../../turnover/sheets/morningSheet.ts';
import { Button } from '../../parts/Button.tsx';
import { ChoiceField, type Choice } from '../../parts/ChoiceField.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import type { PaperAsk } from './asked.ts';

export interface PaperChoiceProps {
  readonly open: OpenShoot;
  readonly ask: PaperAsk;
  readonly sheetCount: number;
  readonly onAsk: (ask: PaperAsk) => void;
}

const SHEETS: readonly Choice[] = [
  { value: 'card', label: 'Shot cards' },
  { value: 'plan', label: 'The plan' },
  { value: 'morning', label: 'Morning sheets' },
  { value: 'cues', label: 'Cue sheets' },
  { value: 'day', label: 'The day' },
  { value: 'dressing', label: 'Stylist’s sheet' },
];
const SIZES: readonly Choice[] = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'Letter' },
];
const UNITS: readonly Choice[] = [
  { value: '', label: 'as the shoot' },
  { value: 'metric', label: 'metres, lux' },
  { value: 'imperial', label: 'feet, footcandles' },
];

/** Said where the PDF is not what the screen shows: it is made from what the server has. */
const NOT_SENT = 'The newest edit has not reached the server yet: the PDF is of the revision before it.';

/** The same ask with a key set, or left out where the value is empty. */
const asked = <Key extends 'shot' | 'duty' | 'units'>(ask: PaperAsk, key: Key, value: string): PaperAsk => {
  const { [key]: _old, ...rest } = ask;
  return (value === '' ? rest : { ...rest, [key]: value }) as PaperAsk;
};

/** Everybody who gets a sheet, then each duty for itself. */
function forWhom(shoot: Shoot): readonly Choice[] {
  const people = peopleOf(shoot).map(({ id, title }) => ({ value: id, label: title }));
  const named = new Set(people.map(({ value }) => value));
  const duties = DUTY_NAMES.filter((duty) => !named.has(duty)).map((duty) => ({
    value: duty,
    label: `the duty: ${duty}`,
  }));
  return [...people, ...duties];
}

/** What is printed and on which paper, and the ways to get it. */
export function PaperChoice({ open, ask, sheetCount, onAsk }: PaperChoiceProps) {
  const { id, plan, shoot, saving, revision } = open;
  const shots = [{ value: '', label: 'all' }, ...plan.shots.map((shot) => ({ value: shot.id, label: `${shot.number} ${shot.title}` }))];
  const people = [{ value: '', label: 'everybody' }, ...forWhom(shoot)];
  const pdf = paperPath(id, ask);
  return (
    <aside className="paper-choice no-print" aria-label="What to print">
      <h1>Paper</h1>
      <p>What the set needs on paper, from the plan as it stands.</p>
      <ChoiceField id="paper-sheet" label="Sheets" value={ask.sheet} choices={SHEETS} onChoose={(value) => onAsk({ ...ask, sheet: value as PaperAsk['sheet'] })} />
      {(ask.sheet === 'card' || ask.sheet === 'cues') && <ChoiceField id="paper-shot" label="Shot" value={ask.shot ?? ''} choices={shots} onChoose={(value) => onAsk(asked(ask, 'shot', value))} />}
      {ask.sheet === 'morning' && <ChoiceField id="paper-duty" label="For" value={ask.duty ?? ''} choices={people} onChoose={(value) => onAsk(asked(ask, 'duty', value))} />}
      <ChoiceField id="paper-size" label="Paper" value={ask.size} choices={SIZES} onChoose={(value) => onAsk({ ...ask, size: value as PaperAsk['size'] })} />
      <ChoiceField id="paper-units" label="Units" value={ask.units ?? ''} choices={UNITS} onChoose={(value) => onAsk(asked(ask, 'units', value))} />
      <div className="paper-do">
        <Button look="main" onClick={() => window.print()}>
          Print
        </Button>
        <a className="button plain" href={pdf} target="_blank" rel="noreferrer">
          Open the PDF
        </a>
        <a className="button quiet" href={pdf} download={`${id}-${ask.sheet}.pdf`}>
          Save the PDF
        </a>
      </div>
      <p className="paper-count">
        {sheetCount === 1 ? '1 sheet' : `${sheetCount} sheets`} of revision {revision}. A sheet may run to several pages.
      </p>
      {saving !== 'saved' && <p role="status">{NOT_SENT}</p>}
    </aside>
  );
} // prettier-ignore
