import { Figure } from '../../parts/Figure.tsx';
import { Panel } from '../../parts/Panel.tsx';
import type { Shown } from '../../../base/quantity.ts';
import type { Reason, SettingName, Settings } from '../../../plan/types.ts';
import { useShot } from './shotContext.ts';
import { saidShown, showNamed } from './showValue.ts';

interface Cell {
  readonly title: string;
  /** The number its trace starts from. */
  readonly name: SettingName;
  readonly shown: Shown;
  /** A second figure beneath, that belongs with it. */
  readonly also?: string;
  readonly reason: Reason | undefined;
}

interface CellProps extends Cell {
  readonly onTrace: (name: string) => void;
}

function AnswerCell({ title, name, shown, also, reason, onTrace }: CellProps) {
  return (
    <button type="button" className="answer-cell" onClick={() => onTrace(name)}>
      <span className="answer-title">{title}</span>
      <Figure {...shown} size="big" />
      {also !== undefined && <span className="answer-also">{also}</span>}
      {reason && (
        <span className={reason.isFixed ? 'answer-reason is-fixed' : 'answer-reason'}>{reason.says}</span>
      )}
      <span className="hidden-text">Where this comes from</span>
    </button>
  );
} // prettier-ignore

function cellsOf(settings: Settings, reasons: Readonly<Partial<Record<SettingName, Reason>>>, cameraTitle: string, show: (name: SettingName) => Shown): readonly Cell[] {
  const said = (name: SettingName) => saidShown(show(name));
  return [
    { title: 'Frame rate', name: 'captureRate_fps', shown: show('captureRate_fps'), reason: reasons.captureRate_fps },
    { title: 'Shutter', name: 'exposureTime_s', shown: show('exposureTime_s'), also: said('shutterAngle_deg'), reason: reasons.exposureTime_s },
    { title: 'Stop', name: 'stop', shown: show('stop'), reason: reasons.stop },
    { title: 'EI', name: 'isoSpeed', shown: { number: String(settings.isoSpeed), unit: '' }, reason: reasons.isoSpeed },
    { title: 'Format', name: 'widthCount', shown: { number: String(settings.widthCount), unit: `× ${settings.heightCount}` }, also: cameraTitle, reason: reasons.camera },
    { title: 'Lens', name: 'sensorToSubject_m', shown: show('focalLength_mm'), also: `at ${said('sensorToSubject_m')}`, reason: reasons.lens },
  ];
} // prettier-ignore

/** What to set on the camera, each number with why it is that one; pressing a number shows where it comes from. */
export function Answer() {
  const { open, plan, system, trace } = useShot();
  const { settings, reasons, missing, triedCount } = plan;
  if (!settings) return <NoAnswer missing={missing} />;
  const show = (name: SettingName) =>
    showNamed({ name, value: Number(settings[name]), kind: name === 'stop' ? 'tStop' : undefined, system });
  const camera = open.shoot.kit.cameras[settings.camera]?.title ?? settings.camera;
  return (
    <Panel title="Answer" aside={triedCount > 1 ? `the best of ${triedCount} tried` : undefined} className="answer">
      <div className="answer-cells">
        {cellsOf(settings, reasons, camera, show).map((cell) => (
          <AnswerCell key={cell.title} {...cell} onTrace={trace} />
        ))}
      </div>
    </Panel>
  );
}

function NoAnswer({ missing }: { readonly missing: ReturnType<typeof useShot>['plan']['missing'] }) {
  const { follow } = useShot();
  return (
    <Panel title="Answer" className="answer">
      <p className="answer-none">No settings yet. What is lacking:</p>
      <ul className="answer-lacking">
        {missing.map(({ name, title, path, what }) => (
          <li key={name + path}>
            <button type="button" onClick={() => follow(path)}>
              {title}
            </button>
            {what !== undefined && <span> {what}</span>}
          </li>
        ))}
      </ul>
    </Panel>
  );
}
