import { WAVEFORM_KINDS } from '../../../document/schema.ts';
import type { LampTaken } from '../../../plan/flickerLamps.ts';
import { Button } from '../../parts/Button.tsx';
import { clearingPatch } from '../shot/shotEdits.ts';
import { useShotEdits } from '../shot/useShotEdits.ts';
import { itemAt } from './kitEdits.ts';
import { KitChoice } from './KitChoice.tsx';
import { KitField } from './KitField.tsx';
import { labelOf } from './kinds.ts';
import { useKit } from './kitContext.ts';
import { kindNamed, sayFigure, standinFor, standinsElsewhere, unusedKeys, WAVEFORM_FIELDS, wavePath } from './waveformFields.ts'; // prettier-ignore
import { isRecord } from '../../../document/written.ts';

export interface WaveformFormProps {
  readonly lampId: string;
  /** The lamp as a plan takes it by what is written. */
  readonly taken: LampTaken | undefined;
}

function Unused({ lampId, keys }: { readonly lampId: string; readonly keys: readonly string[] }) {
  const { open } = useKit();
  const edits = useShotEdits(open);
  if (keys.length === 0) return null;
  const names = keys.map((key) => labelOf(key).toLowerCase()).join(', ');
  const paths = keys.map((key) => wavePath(lampId, key));
  return (
    <p className="wave-unused">
      Written, and of no use to this kind: {names}.{' '}
      <Button look="quiet" onClick={() => edits.commit((now) => clearingPatch(now, paths), `${names}: taken away`)}>
        Take away
      </Button>
    </p>
  );
}

/** What is written of how a lamp's light changes: its kind, and the figures that this kind uses. */
export function WaveformForm({ lampId, taken }: WaveformFormProps) {
  const { open } = useKit();
  const written = itemAt(open.written, 'lamps', lampId)['waveform'];
  const wave = isRecord(written) ? written : {};
  const kind = kindNamed(wave['kind']);
  const unsaid = taken && taken.unknown === undefined ? `not said: ${taken.says}` : 'not said';
  return (
    <div className="wave-form">
      <KitChoice
        path={wavePath(lampId, 'kind')}
        label="Kind"
        says="What makes its light, and so how the mains or pulses show in it."
        words={Object.entries(WAVEFORM_KINDS)}
        unsaid={unsaid}
      />
      {kind !== undefined &&
        WAVEFORM_FIELDS[kind].map((field) => {
          const { key, label, inPlaceOf } = field;
          const standin = standinFor(taken, lampId, field);
          return (
            <KitField
              key={key}
              path={wavePath(lampId, key)}
              label={label}
              {...(standin ? { placeholder: standin.text, note: `Assumed: ${standin.why}.` } : {})}
              {...(inPlaceOf === undefined ? {} : { placeholder: 'not said', note: `Used in place of ${inPlaceOf}.` })}
            />
          );
        })}
      <Unused lampId={lampId} keys={unusedKeys(kind, wave)} />
      <Elsewhere lampId={lampId} taken={taken} />
    </div>
  );
}

/** What else its light rests on that nobody wrote. */
function Elsewhere({ lampId, taken }: WaveformFormProps) {
  const { open } = useKit();
  const written = itemAt(open.written, 'lamps', lampId)['waveform'];
  const kind = kindNamed(isRecord(written) ? written['kind'] : undefined);
  const figures = standinsElsewhere(taken, lampId, kind);
  if (figures.length === 0) return null;
  return (
    <ul className="wave-elsewhere" aria-label="Also assumed">
      {figures.map((figure) => (
        <li key={figure.name}>
          {figure.title}: <b>{sayFigure(figure)}</b> <span>{figure.why}</span>
        </li>
      ))}
    </ul>
  );
}
