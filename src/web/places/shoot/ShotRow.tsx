import { showQuantity, showShutter, type Shown } from '../../../base/quantity.ts';
import type { Shoot } from '../../../document/schema.ts';
import type { ShotPlan } from '../../../plan/types.ts';
import { Button } from '../../parts/Button.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { Menu } from '../../parts/Menu.tsx';
import { StateShape } from '../../parts/StateWord.tsx';
import { GoLink } from '../GoLink.tsx';
import { useFieldMark } from '../../parts/fieldMarks.ts';
import { LimitStrip } from './LimitStrip.tsx';
import { layStrip, sayWorst } from './strip.ts';
import { writtenFieldId } from './WrittenField.tsx';

export interface ShotRowProps {
  readonly shoot: Shoot;
  readonly shot: ShotPlan;
  readonly href: string;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly onOpen: () => void;
  readonly onMove: (by: 1 | -1) => void;
  readonly onCopy: () => void;
  readonly onRemove: () => void;
}

interface Setting {
  readonly name: string;
  readonly says: string;
  readonly shown: Shown;
}

/** What goes on the camera, in the order a crew calls it out. */
function settingsOf(shoot: Shoot, { settings }: ShotPlan): readonly Setting[] {
  if (!settings) return [];
  const { captureRate_fps, exposureTime_s, stop, isoSpeed, focalLength_mm, lens } = settings;
  return [
    { name: 'rate', says: 'Frame rate', shown: showQuantity('rate', captureRate_fps) },
    { name: 'shutter', says: 'Shutter', shown: showShutter(exposureTime_s) },
    { name: 'stop', says: 'Stop', shown: showQuantity('tStop', stop) },
    { name: 'index', says: 'EI', shown: { number: String(isoSpeed), unit: '' } },
    { name: 'lens', says: `Lens, ${shoot.kit.lenses[lens]?.title ?? lens}`, shown: { number: String(focalLength_mm), unit: 'mm' } },
  ];
} // prettier-ignore

function Settings({ shoot, shot }: Pick<ShotRowProps, 'shoot' | 'shot'>) {
  const settings = settingsOf(shoot, shot);
  if (settings.length === 0) {
    const lacking = shot.missing.map(({ title }) => title.toLowerCase()).slice(0, 3);
    return (
      <span className="shot-row-none">
        {lacking.length === 0 ? 'no answer yet' : `no answer yet: ${lacking.join(', ')}`}
      </span>
    );
  }
  return (
    <span className="shot-row-settings">
      {settings.map(({ name, says, shown }) => (
        <span key={name} className={`setting-${name}`} title={says}>
          <span className="hidden-text">{says} </span>
          {name === 'index' && <span className="setting-word">EI </span>}
          <Figure {...shown} />
        </span>
      ))}
    </span>
  );
}

function Worst({ shot }: Pick<ShotRowProps, 'shot'>) {
  const { standing, worst, others } = sayWorst(shot.margins);
  return (
    <span className={`shot-row-worst ${standing}`}>
      <span className="shot-row-binds">
        <StateShape standing={standing} />
        {worst}
      </span>
      {others !== '' && <span className="shot-row-others">{others}</span>}
    </span>
  );
}

/** All limits of the strip in words, for whoever cannot see it. */
function StripWords({ shot }: Pick<ShotRowProps, 'shot'>) {
  const { marks, beyond, unknown } = layStrip(shot.margins);
  const all = [...beyond.left, ...marks.map(({ says }) => says), ...beyond.right, ...unknown];
  return <span className="hidden-text">{all.length === 0 ? '' : `All limits: ${all.join('; ')}.`}</span>;
}

/** One shot of the list: what it is, what to set, and how it stands; the whole row leads to it. */
export function ShotRow({ shoot, shot, href, isFirst, isLast, onOpen, onMove, onCopy, onRemove }: ShotRowProps) {
  const { id, number, title } = shot;
  const mark = useFieldMark(writtenFieldId(`/shots/${id}`));
  const frames = (shoot.shots[id]?.board ?? []).map((frame) => shoot.board[frame]?.title ?? frame);
  return (
    <li className="shot-row">
      <span className="shot-row-number">{number}</span>
      <span className="shot-row-name">
        <GoLink className="shot-row-title" href={href} onGo={onOpen}>
          {title}
        </GoLink>
        {mark !== undefined && <span className="here-mark">{mark}</span>}
        {Object.keys(shoot.board).length > 0 && (
          <span className="shot-row-frames">{frames.length === 0 ? 'serves no frame' : frames.join(', ')}</span>
        )}
      </span>
      <Settings shoot={shoot} shot={shot} />
      <LimitStrip margins={shot.margins} />
      <Worst shot={shot} />
      <StripWords shot={shot} />
      <span className="shot-row-tools no-print">
        <Button look="sign" data-move={`${id} -1`} disabled={isFirst} aria-label={`Move ${title} up`} onClick={() => onMove(-1)}>
          <Icon name="up" />
        </Button>
        <Button look="sign" data-move={`${id} 1`} disabled={isLast} aria-label={`Move ${title} down`} onClick={() => onMove(1)}>
          <Icon name="down" />
        </Button>
        <Menu
          align="end"
          trigger={
            <Button look="sign" aria-label={`More for ${title}`}>
              <Icon name="more" />
            </Button>
          }
          items={[
            { id: 'copy', label: 'Copy' },
            { id: 'remove', label: 'Take out' },
          ]}
          onChoose={(chosen) => (chosen === 'copy' ? onCopy() : onRemove())}
        />
      </span>
    </li>
  );
} // prettier-ignore
