/** Which column of the mode grid a heading means, by its words. */
import type { ModeKey } from './modeKeys.ts';

/** Widths and heights may stand in columns of their own; a column that is none of ours is undefined. */
export type Column = ModeKey | 'width' | 'height' | undefined;

const WIDTH = ['width', 'columns', 'cols', 'horizontal', 'across'];
const HEIGHT = ['height', 'rows', 'lines', 'vertical', 'down'];
const RATE = ['fps', 'rate', 'framerate', 'speed', 'hz', 'frames'];
const PIXELS = ['pixels', 'resolution', 'size', 'px', 'dimensions', 'window', 'roi', 'image', 'picture'];
const TITLE = ['title', 'name', 'mode', 'format', 'label', 'preset'];
/** Words of columns that look like ours and are not: a data rate, the pitch of the pixels, the lowest rate. */
const OTHER = ['pitch', 'µm', 'um', 'data', 'bitrate', 'mb', 'gb', 'min', 'minimum', 'lowest', 'price', 'time', 'seconds']; // prettier-ignore

/** The column a heading means: `Max. frame rate (fps)` → rate, `Resolution (H × V)` → pixels, `Price` → undefined. */
export function columnOfHeading(heading: string): Column {
  const words = heading
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
  const has = (...names: readonly string[]) => words.some((word) => names.includes(word));
  const whole = words.join(' ');
  if (words.length === 0 || has(...OTHER)) return undefined;
  if (has(...WIDTH) && has(...HEIGHT)) return 'pixels';
  if (has('fps') || (has('frame', 'frames') && has('rate', 'rates', 'second', 's'))) return 'rate';
  if (has(...WIDTH) || whole === 'w' || whole === 'x') return 'width';
  if (has(...HEIGHT) || whole === 'h' || whole === 'y') return 'height';
  if (has('binning', 'bin', 'binned')) return 'binning';
  if (has('bits', 'bit') || (has('depth') && !has('field'))) return 'bits';
  if (has(...RATE)) return 'rate';
  if (has(...PIXELS)) return 'pixels';
  if (has(...TITLE)) return 'title';
  return undefined;
}
