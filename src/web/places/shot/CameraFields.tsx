import type { Shoot } from '../../../document/schema.ts';
import type { Written } from '../../../document/written.ts';
import { writeQuantity } from '../../../base/quantity.ts';
import type { Settings } from '../../../plan/types.ts';
import { AskChoice } from './AskChoice.tsx';
import { AskField } from './AskField.tsx';
import { ASK_GROUPS } from './askFields.ts';
import { FittedField } from './FittedField.tsx';
import { findWritten } from './shotEdits.ts';
import { useShot } from './shotContext.ts';
import { saidShown, showNamed } from './showValue.ts';
import { SolvedToggle } from './SolvedToggle.tsx';

const LINES = ASK_GROUPS.find(({ id }) => id === 'camera')!.lines;

/** A solved setting as it would be written down, and as it is shown meanwhile. */
function solvedSetting(key: string, settings: Settings): { readonly written: Written; readonly said: string } | undefined {
  const { captureRate_fps, exposureTime_s, stop, isoSpeed } = settings;
  switch (key) {
    case 'rate':
      return { written: writeQuantity('rate', captureRate_fps), said: saidShown(showNamed({ name: 'captureRate_fps', value: captureRate_fps, kind: 'rate' })) };
    case 'shutter':
      return { written: writeQuantity('time', exposureTime_s), said: saidShown(showNamed({ name: 'exposureTime_s', value: exposureTime_s, kind: 'time' })) };
    case 'stop':
      return { written: writeQuantity('tStop', stop), said: saidShown(showNamed({ name: 'stop', value: stop, kind: 'tStop' })) };
    case 'index':
      return { written: isoSpeed, said: String(isoSpeed) };
    default:
      return undefined;
  }
} // prettier-ignore

const choicesOf = (items: Readonly<Record<string, { readonly title?: string; readonly availability?: string }>>) =>
  Object.entries(items)
    .filter(([, { availability }]) => availability !== 'unwanted')
    .map(([value, { title, availability }]) => ({
      value,
      label: `${title ?? value}${availability === 'hire' ? ', to hire' : ''}`,
    }));

function modeChoices(shoot: Shoot, camera: string | undefined) {
  const modes = (camera === undefined ? undefined : shoot.kit.cameras[camera]?.modes) ?? {};
  return Object.entries(modes).map(([value, { title, pixels }]) => ({
    value,
    label: title ?? (pixels ? `${pixels.widthCount} × ${pixels.heightCount}` : value),
  }));
}

const titleIn = (choices: readonly { readonly value: string; readonly label: string }[], id: string | undefined) =>
  choices.find(({ value }) => value === id)?.label ?? 'not solved';

/** Camera, lens and settings: each solved, or fixed. */
export function CameraFields() {
  const { open, shotId, plan } = useShot();
  const { settings } = plan;
  const { kit } = open.shoot;
  const cameras = choicesOf(kit.cameras);
  const lenses = choicesOf(kit.lenses);
  const camera = findWritten(open.written, shotId, 'camera').text || settings?.camera;
  const modes = modeChoices(open.shoot, camera);
  const choice = (name: 'camera' | 'mode' | 'lens', label: string, choices: typeof cameras) => (
    <AskChoice
      name={name}
      label={label}
      choices={choices}
      unsaid={titleIn(choices, settings?.[name])}
      after={<SolvedToggle name={name} label={label} solved={settings?.[name]} />}
    />
  );
  return (
    <>
      {choice('camera', 'Camera', cameras)}
      {choice('mode', 'Format', modes)}
      {choice('lens', 'Lens', lenses)}
      {LINES.map(({ key, label }) => {
        const solved = settings && solvedSetting(key, settings);
        return (
          <AskField
            key={key}
            name={key}
            label={label}
            placeholder={solved?.said ?? 'not solved'}
            after={<SolvedToggle name={key} label={label} solved={solved?.written} />}
          />
        );
      })}
      <FittedField />
    </>
  );
}
