import { showNumber } from '../../../../base/quantity.ts';
import type { ClipEntry } from '../../../../record/footage.ts';
import { measureCsv } from '../../../../turnover/measureCsv.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import { footageHref } from '../../../hrefs.ts';
import { Button } from '../../../parts/Button.tsx';
import { saveText } from '../../day/saveText.ts';
import { GoLink } from '../../GoLink.tsx';
import { ClipState } from '../ClipState.tsx';
import { isSynthetic } from '../clipGroups.ts';

export interface ClipHeadProps {
  readonly shootId: string;
  readonly entry: ClipEntry;
  readonly clip: MeasuredClip | undefined;
  readonly onMeasure: (isAnew: boolean) => void;
  readonly onStop: () => void;
  readonly onGo: (href: string) => void;
}

const BASIS = { given: 'as it was said', plan: 'as its shot is planned', file: 'for want of another: the rate at which it plays' } as const; // prettier-ignore

function factsOf({ codec, measurement, frameRateBasis, curve, curveBasis }: MeasuredClip): string {
  const { width, height, frameRate_fps, playback_fps } = measurement;
  const shown = frameRateBasis === 'file' ? '' : `, shown at ${showNumber(playback_fps, 5)}`;
  return `${codec}, ${width} × ${height}, taken at ${showNumber(frameRate_fps, 5)} fps, ${BASIS[frameRateBasis]}${shown}; curve ${curve}${curveBasis === 'assumed' ? ', assumed' : ''}.`;
}

/** Which clip this is, and how it stands. */
export function ClipHead({ shootId, entry, clip, onMeasure, onStop, onGo }: ClipHeadProps) {
  const { name, measuring, note, isHere } = entry;
  const isBusy = measuring?.state === 'running' || measuring?.state === 'waiting';
  return (
    <header className="clip-head">
      <div>
        <p className="clip-back no-print">
          <GoLink href={footageHref(shootId)} onGo={onGo}>
            All footage
          </GoLink>
        </p>
        <h1>
          {name} {isSynthetic(entry) && <span className="footage-label">synthetic: made up, not filmed</span>}
        </h1>
        <p className="clip-facts">{clip ? factsOf(clip) : ' '}</p>
        {note !== undefined && <p className="clip-hint">{note}</p>}
        <ClipState clip={entry} />
      </div>
      <div className="clip-does no-print">
        {clip?.isWhole && (
          <Button look="quiet" onClick={() => saveText(`${name}.csv`, measureCsv([{ name, measurement: clip.measurement }]))}>
            Save values as CSV
          </Button>
        )}
        {isBusy ? <Button onClick={onStop}>Stop measuring</Button> : isHere && <Button onClick={() => onMeasure(measuring?.state !== 'stopped')}>{measuring?.state === 'stopped' ? 'Go on measuring' : clip ? 'Measure again' : 'Measure'}</Button>}
      </div>
    </header>
  );
} // prettier-ignore
