import { Button } from '../../../parts/Button.tsx';
import { Icon } from '../../../parts/Icon.tsx';
import { about, movedBy, wholeOf, zoomed, type View } from './axis.ts';
import { useClip } from './clipContext.ts';

export interface ViewToolsProps {
  readonly view: View;
  readonly setView: (next: (view: View) => View) => void;
}

/** Closer, farther and along the clip, without a wheel. */
export function ViewTools({ view, setView }: ViewToolsProps) {
  const { playhead, measurement, kept } = useClip();
  const { frameCount } = measurement;
  const isWhole = view.from <= 0 && view.to >= frameCount;
  const zoom = (factor: number) => setView((was) => zoomed(was, { factor, about: playhead.frame() + 0.5, frameCount }));
  const move = (share: number) => setView((was) => movedBy(was, share * (was.to - was.from), frameCount));
  const sign = (icon: Parameters<typeof Icon>[0]['name'], says: string, isOff: boolean, onPress: () => void) => (
    <Button look="sign" aria-label={says} title={says} aria-disabled={isOff} onClick={() => !isOff && onPress()}>
      <Icon name={icon} />
    </Button>
  );
  return (
    <div className="clip-tools no-print" role="group" aria-label="Part of the clip that is shown">
      {sign('back', 'Show what is before', view.from <= 0, () => move(-0.5))}
      {sign('forward', 'Show what is after', view.to >= frameCount, () => move(0.5))}
      {sign('farther', 'Show more of the clip', isWhole, () => zoom(0.5))}
      {sign('closer', 'Look closer', view.to - view.from <= 8, () => zoom(2))}
      <Button look="quiet" aria-disabled={isWhole} onClick={() => setView(() => wholeOf(frameCount))}>
        All of it
      </Button>
      <Button look="quiet" onClick={() => setView(() => about(kept.inFrame, kept.outFrame, frameCount))}>
        What is kept
      </Button>
    </div>
  );
}
