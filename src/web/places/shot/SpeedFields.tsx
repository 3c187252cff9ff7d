import { useState } from 'react';
import { isList, isRecord, type Written } from '../../../document/written.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { SHOT_FIELDS } from '../../../document/schema.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { AskChoice } from './AskChoice.tsx';
import { AskField } from './AskField.tsx';
import { KnotTable, type Knot } from './KnotTable.tsx';
import { clearingPatch } from './shotEdits.ts';
import { fieldId, useShot } from './shotContext.ts';
import type { MakePatch } from './useShotEdits.ts';

type SpeedBy = 'solved' | 'constant' | 'profile';

const BETWEEN = Object.keys(SHOT_FIELDS.speed.of.fields.between.of.words).map((value) => ({ value, label: value }));

const WAYS_TO_SAY = [
  { value: 'solved', label: 'from the times' },
  { value: 'constant', label: 'one speed' },
  { value: 'profile', label: 'a profile' },
];

const asText = (value: Written | undefined) =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : '';

function knotsIn(value: Written | undefined): readonly Knot[] {
  if (!isList(value)) return [];
  return value.filter(isRecord).map(({ at, speed }) => ({ at: asText(at), speed: asText(speed) }));
}

/** Playback speed as one reads it: 1/50. */
const asFraction = (fraction: number) => (fraction < 1 ? `1/${Number((1 / fraction).toPrecision(3))}` : String(Number(fraction.toPrecision(3)))); // prettier-ignore

/** How fast the film plays: worked out from the two times, one speed, or a profile of knots. */
export function SpeedFields() {
  const { open, shotId, plan, edits, problemAt } = useShot();
  const own = `/shots/${shotId}/speed`;
  const [wanted, setWanted] = useState<{ readonly shotId: string; readonly by: SpeedBy }>();
  const written = (key: string) =>
    writtenValueAt(open.written, `${own}/${key}`) ?? writtenValueAt(open.written, `/defaults/speed/${key}`);
  const knots = knotsIn(written('knots'));
  const now: SpeedBy = knots.length > 0 ? 'profile' : written('constant') !== undefined ? 'constant' : 'solved';
  const by = wanted?.shotId === shotId ? wanted.by : now;

  const choose = (next: SpeedBy) => {
    setWanted({ shotId, by: next });
    const fraction = plan.clocks?.slowestFraction ?? 0.04;
    const length_s = plan.clocks?.screenTime_s ?? 4;
    const plainly = asFraction(fraction);
    const start: Written =
      next === 'constant'
        ? { constant: plainly }
        : { knots: [0, 1].map((end) => ({ at: `${Number((end * length_s).toPrecision(3))} s`, speed: plainly })) };
    if (next === 'solved') edits.commit((base) => clearingPatch(base, [own]), 'Playback speed: from the times');
    else edits.commit(() => [{ op: 'add', path: own, value: start }], `Playback speed: ${next === 'constant' ? plainly : 'a profile'}`); // prettier-ignore
  };

  const speed = plan.clocks && asFraction(plan.clocks.slowestFraction);
  const problem = problemAt(own) ?? problemAt(`${own}/knots`);
  return (
    <>
      <ChoiceField
        id={fieldId(own)}
        label="Speed"
        value={by}
        choices={WAYS_TO_SAY}
        isGiven={by === 'solved'}
        {...(by === 'solved' && speed !== undefined
          ? { note: speed === '1' ? 'in real time' : `${speed} of real time` }
          : {})}
        {...(problem === undefined ? {} : { problem })}
        onChoose={(next) => choose(next as SpeedBy)}
      />
      {by === 'constant' && <AskField name="speed/constant" label="Plays at" placeholder="1/40" />}
      {by === 'profile' && (
        <>
          <KnotTable
            id={fieldId(`${own}/knots`)}
            knots={knots}
            problemOf={(i, key) => problemAt(`${own}/knots/${i}/${key}`)}
            onChange={(next, isMeant) => {
              const make: MakePatch = () => [
                { op: 'add', path: `${own}/knots`, value: next.map((knot) => ({ ...knot })) },
              ];
              if (isMeant) edits.commit(make, 'Speed profile');
              else edits.draft(make);
            }}
            onCancel={edits.cancel}
          />
          <AskChoice name="speed/between" label="Between knots" choices={BETWEEN} unsaid="linear" />
        </>
      )}
    </>
  );
}
