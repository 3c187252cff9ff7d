import type { ReactNode } from 'react';
import { Button } from '../../parts/Button.tsx';
import { ChoiceField, type Choice } from '../../parts/ChoiceField.tsx';
import { writtenValueAt } from '../../../document/patch.ts';
import { CUE, SHOT_FIELDS } from '../../../document/schema.ts';
import { fieldId, useShot } from '../shot/shotContext.ts';
import { writingPatch } from '../shot/shotEdits.ts';
import { WrittenField } from '../shoot/WrittenField.tsx';
import { addCuePatch, ANY_CUE_FIELDS, CUE_FIELDS, removeCuePatch } from './timeEdits.ts';

const DOES: readonly Choice[] = Object.entries(CUE.fields.does.of.words).map(([value, label]) => ({ value, label }));

const BY: readonly Choice[] = [
  { value: '', label: 'nothing written' },
  ...Object.entries(SHOT_FIELDS.trigger.of.fields.by.of.words).map(([value, label]) => ({ value, label })),
];

const MEETS: readonly Choice[] = [
  { value: '', label: 'must meet them' },
  { value: 'yes', label: 'need not meet them' },
];

function Written({ path, label, example }: { readonly path: string; readonly label: string; readonly example: string }) {
  const { open } = useShot();
  return <WrittenField open={open} id={fieldId(path)} path={path} label={label} placeholder={example} />;
} // prettier-ignore

function Chosen({ path, label, choices }: { readonly path: string; readonly label: string; readonly choices: readonly Choice[] }) {
  const { open, edits, problemAt } = useShot();
  const value = writtenValueAt(open.written, path);
  const problem = problemAt(path);
  return (
    <ChoiceField
      id={fieldId(path)}
      label={label}
      value={value === true ? 'yes' : typeof value === 'string' ? value : ''}
      choices={choices}
      {...(problem === undefined ? {} : { problem })}
      onChoose={(next) => edits.commit((written) => writingPatch(written, path, next), `${label}: ${choices.find((c) => c.value === next)?.label ?? next}`)}
    />
  );
} // prettier-ignore

function CueFields({ cueId, rigs }: { readonly cueId: string; readonly rigs: readonly Choice[] }) {
  const { open, shotId, edits } = useShot();
  const path = `/shots/${shotId}/cues/${cueId}`;
  const does = writtenValueAt(open.written, `${path}/does`);
  const title = open.shoot.shots[shotId]?.cues[cueId]?.title ?? cueId;
  const needed = CUE_FIELDS[typeof does === 'string' ? does : 'acts'] ?? [];
  return (
    <fieldset className="cue-form" id={fieldId(path)} tabIndex={-1}>
      <legend>{title}</legend>
      <div className="cue-fields">
        <Written path={`${path}/title`} label="Title" example="Left quince" />
        <Chosen path={`${path}/rig`} label="Rig" choices={[{ value: '', label: 'no rig yet' }, ...rigs]} />
        <Chosen path={`${path}/does`} label="It" choices={DOES} />
        {needed.map(([key, label, example]) => (
          <Written key={key} path={`${path}/${key}`} label={label} example={example} />
        ))}
        {ANY_CUE_FIELDS.map(([key, label, example]) => (
          <Written key={key} path={`${path}/${key}`} label={label} example={example} />
        ))}
        <Chosen path={`${path}/apart`} label="With the others" choices={MEETS} />
      </div>
      <Button look="quiet" onClick={() => edits.commit(() => removeCuePatch(shotId, cueId), `Cue taken out: ${title}`)}>
        Take this cue out
      </Button>
    </fieldset>
  );
} // prettier-ignore

function Group({ title, path, children }: { readonly title: string; readonly path: string; readonly children: ReactNode }) {
  return (
    <fieldset className="cue-form" id={fieldId(path)} tabIndex={-1}>
      <legend>{title}</legend>
      <div className="cue-fields">{children}</div>
    </fieldset>
  );
} // prettier-ignore

/** What fires, what meets, and what tells the camera: everything the strip is worked out from. */
export function CueForm() {
  const { open, shotId, edits } = useShot();
  const cues = Object.keys(open.shoot.shots[shotId]?.cues ?? {});
  const rigs = Object.entries(open.shoot.kit.rigs).map(([value, { title }]) => ({ value, label: title ?? value }));
  const shot = `/shots/${shotId}`;
  return (
    <div className="cue-forms no-print">
      {cues.map((cueId) => (
        <CueFields key={cueId} cueId={cueId} rigs={rigs} />
      ))}
      <Button id={fieldId(`${shot}/cues`)} onClick={() => edits.commit((written) => addCuePatch(written, shotId, rigs[cues.length]?.value), 'New cue')}>
        Add a cue
      </Button>
      <Group title="Meeting" path={`${shot}/meeting`}>
        <Written path={`${shot}/meeting/tolerance`} label="Within" example="6 ms" />
        <Written path={`${shot}/meeting/at`} label="After the action starts" example="40 ms" />
        <Written path={`${shot}/meeting/chance`} label="Takes in which they should" example="80 %" />
      </Group>
      <Group title="Trigger" path={`${shot}/trigger`}>
        <Chosen path={`${shot}/trigger/by`} label="By" choices={BY} />
        <Written path={`${shot}/trigger/answers`} label="Answers, after the action starts" example="-320 ms" />
        <Written path={`${shot}/trigger/latency`} label="Comes after that" example="230 ms" />
        <Written path={`${shot}/trigger/jitter`} label="Varies by" example="45 ms" />
        <Written path={`${shot}/trigger/post`} label="Kept after it" example="left to be found" />
        <Written path={`${shot}/trigger/early`} label="Fires of its own" example="2 %" />
        <Written path={`${shot}/trigger/never`} label="Does not fire" example="1 %" />
        <Written path={`${shot}/catch`} label="Takes to be caught whole" example="95 %" />
      </Group>
    </div>
  );
} // prettier-ignore
