import { parseQuantity, writeQuantity } from '../../../base/quantity.ts';
import { CURVE_FORMS } from '../../../measure/curveText.ts';
import type { ClipEntry, FootageEvent } from '../../../record/footage.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { QuantityField } from '../../parts/QuantityField.tsx';
import type { OpenShoot } from '../../state/contract.ts';
import { checkBlack, checkCurve, checkNote, checkRate } from './checks.ts';
import { NO_SHOT, shotChoices } from './shotChoices.ts';

type Told = Extract<FootageEvent, { readonly kind: 'told' }>;
export type ClipChange = Omit<Told, 'kind' | 'clipId'>;

export interface CorrectClipProps {
  readonly open: OpenShoot;
  readonly clip: ClipEntry;
  readonly onTell: (change: ClipChange) => void;
}

/** What a typed text says; nothing typed takes back what was told. */
const told = <Value,>(text: string, read: (said: string) => Value): Value | null => text.trim() === '' ? null : read(text.trim()); // prettier-ignore

function rateOf(text: string): number {
  const parsed = parseQuantity('rate', text);
  if (!parsed.ok) throw new RangeError(`checked before: ${text}`);
  return parsed.value;
}

/** What the file of a clip does not say, or says wrongly: its shot, its rate on the set, how its light is coded, a note. */
export function CorrectClip({ open, clip, onTell }: CorrectClipProps) {
  const { id, shotId, captureRate_fps, curve, blackCode, note, brief } = clip;
  const field = (name: string) => ({ id: `clip-${name}-${id}`, onDraft: () => undefined, onCancel: () => undefined });
  return (
    <div className="correct-clip">
      <p className="footage-quiet">What is left empty is taken from the shot, or from the file. What was measured before is kept until it is measured again.</p>
      <ChoiceField
        id={`clip-shot-${id}`}
        label="A take of"
        value={shotId ?? NO_SHOT}
        choices={shotChoices(open.plan.shots)}
        onChoose={(value) => onTell({ shotId: value === NO_SHOT ? null : value })}
      />
      <QuantityField
        {...field('rate')}
        label="Taken at"
        text={captureRate_fps === undefined ? '' : writeQuantity('rate', captureRate_fps)}
        placeholder={brief && captureRate_fps === undefined ? writeQuantity('rate', brief.frameRate_fps) : '1000 fps'}
        note="Frames a second on the set, not the rate at which the file plays."
        check={checkRate}
        onCommit={(text) => checkRate(text).ok && onTell({ captureRate_fps: told(text, rateOf) })}
      />
      <QuantityField
        {...field('curve')}
        label="Curve"
        text={curve ?? ''}
        placeholder="as the file says"
        note={`How its light is coded: ${CURVE_FORMS}.`}
        check={checkCurve}
        onCommit={(text) => checkCurve(text).ok && onTell({ curve: told(text, (said) => said) })}
      />
      <QuantityField
        {...field('black')}
        label="Black"
        inputMode="numeric"
        text={blackCode === undefined ? '' : String(blackCode)}
        placeholder="as the file says"
        note="The code value that the camera writes for no light."
        check={checkBlack}
        onCommit={(text) => checkBlack(text).ok && onTell({ blackCode: told(text, Number) })}
      />
      <QuantityField
        {...field('note')}
        label="Note"
        text={note ?? ''}
        placeholder="for whoever reads this"
        check={checkNote}
        onCommit={(text) => checkNote(text).ok && onTell({ note: told(text, (said) => said) })}
      />
    </div>
  );
} // prettier-ignore
