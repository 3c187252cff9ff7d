import { useId } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { Picture } from '../../../plan/types.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { layFrame, type Box, type CropDrawn, type FrameLayout } from './frameLayout.ts';
import { lengthRuler } from './lengthRuler.ts';
import { lengthWords, sayFrame } from './pictureWords.ts';

/** Crops are told apart by the stroke of their edge, here and in the table. */
export const STROKES = ['', '9 4', '2 4', '12 3 2 3', '5 2', '1 2'] as const;

export const strokeOf = (index: number): string => STROKES[index % STROKES.length]!;

const px = (value: number) => Math.round(value * 10) / 10;

const boxOf = ({ x, y, width, height }: Box) => ({ x: px(x), y: px(y), width: px(Math.max(width, 0)), height: px(Math.max(height, 0)) }); // prettier-ignore

const pathOf = ({ x, y, width, height }: Box) => `M${px(x)} ${px(y)}h${px(width)}v${px(height)}h${px(-width)}z`;

/** About how wide a text of the drawing is. */
const LETTER_px = 7.4;

/** The width of one crop above the picture, tied to its edges. */
function Dimension({ drawn, index, field, text, right_px }: { readonly drawn: CropDrawn; readonly index: number; readonly field: Box; readonly text: string; readonly right_px: number }) {
  const { box, lineY: y, standing } = drawn;
  const [from, to] = [box.x, box.x + box.width];
  const room = text.length * LETTER_px + 12;
  const middle = (from + to) / 2;
  const fits = room < box.width - 24;
  // A word wider than its line stands beside it, on a side where there is room; where there is none, over it.
  const side = fits ? 'in' : to + room < right_px ? 'right' : from - room > 0 ? 'left' : 'over';
  const gap = fits ? `H${px(middle - room / 2)}M${px(middle + room / 2)} ${y}` : '';
  const place = {
    in: { x: middle, textAnchor: 'middle' },
    over: { x: Math.min(Math.max(middle, room / 2), right_px - room / 2), textAnchor: 'middle' },
    right: { x: to + 7, textAnchor: 'start' },
    left: { x: from - 7, textAnchor: 'end' },
  } as const;
  return (
    <g className={standing.state === 'cut' ? 'dimension is-cut' : 'dimension'}>
      <path className="extension" d={`M${px(from)} ${px(y)}V${px(Math.max(box.y, field.y))}M${px(to)} ${px(y)}V${px(Math.max(box.y, field.y))}`} />
      <path d={`M${px(from)} ${y}${gap}H${px(to)}`} strokeDasharray={strokeOf(index)} />
      <path d={`M${px(from) + 5} ${y - 3.5}l-5 3.5 5 3.5M${px(to) - 5} ${y - 3.5}l5 3.5-5 3.5`} />
      <text className={side === 'over' ? 'is-over' : undefined} x={px(place[side].x)} y={y + 4} textAnchor={place[side].textAnchor}>
        {text}
      </text>
    </g>
  );
} // prettier-ignore

/** What the action covers: washed where every crop holds it, hatched where one cuts it. */
function Reach({ laid, isCut, hatch }: { readonly laid: FrameLayout; readonly isCut: boolean; readonly hatch: string }) {
  const { reach, common, centre } = laid;
  if (!reach) return null;
  const isLine = reach.width === 0 || reach.height === 0;
  if (isLine) {
    const [x, y] = [centre.x - reach.width / 2, centre.y - reach.height / 2];
    const ends = reach.width === 0 ? `M${px(x - 6)} ${px(y)}h12m-12 ${px(reach.height)}h12` : `M${px(x)} ${px(y - 6)}v12m${px(reach.width)}-12v12`;
    return <path className="reach-line" d={`M${px(x)} ${px(y)}l${px(reach.width)} ${px(reach.height)}${ends}`} />;
  }
  const inside = isCut && common ? { x: Math.max(reach.x, common.x), y: Math.max(reach.y, common.y), width: Math.min(reach.width, common.width), height: Math.min(reach.height, common.height) } : reach;
  return (
    <g className="reach">
      {isCut && <path className="reach-cut" d={pathOf(reach) + pathOf(inside)} fillRule="evenodd" fill={`url(#${hatch})`} />}
      <rect className="reach-whole" {...boxOf(inside)} />
      <rect className="reach-edge" {...boxOf(reach)} rx="3" />
      {reach.runsOff && <text className="reach-off" x={px(centre.x)} y={px(reach.y + reach.height - 6)} textAnchor="middle">and beyond the drawing</text>}
    </g>
  );
} // prettier-ignore

function Ruler({ laid, system }: { readonly laid: FrameLayout; readonly system: UnitSystem }) {
  const { centre, scale_px_per_m: scale, height_px } = laid;
  const { x, width } = laid.field;
  const half_m = width / scale / 2;
  const y = height_px - 24;
  const { ticks, unit } = lengthRuler({ from_m: -half_m, to_m: half_m, most: Math.floor(width / 54), system });
  return (
    <g className="ruler">
      <path d={`M${px(x)} ${px(y)}h${px(width)}`} />
      {ticks.map(({ at_m, label }) => {
        const at = px(centre.x + at_m * scale);
        return (
          <g key={at_m}>
            <path d={`M${at} ${px(y)}v5`} />
            <text x={at} y={px(y) + 18} textAnchor="middle">
              {at_m === 0 ? `${label} ${unit}` : label}
            </text>
          </g>
        );
      })}
    </g>
  );
}

export interface FrameDrawingProps {
  readonly picture: Picture;
  readonly system: UnitSystem;
}

/** The recorded picture to scale, every crop of it, and how far the action reaches about the subject point. */
export function FrameDrawing({ picture, system }: FrameDrawingProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>();
  const [hatch, held] = [useId(), useId()];
  const laid = layFrame(picture, { width_px, mostHeight_px: width_px < 500 ? 300 : 330, edge_px: 14 });
  const { field, crops, centre } = laid;
  const isCut = crops.some(({ standing }) => standing.state === 'cut');
  return (
    <div className="frame-drawing" ref={ref}>
      {width_px > 0 && (
        <svg width={width_px} height={px(laid.height_px)} viewBox={`0 0 ${width_px} ${px(laid.height_px)}`} role="img" aria-label={sayFrame(picture, system)}>
          <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-38)">
            <rect className="hatch-under" width="7" height="7" />
            <rect className="hatch-over" width="7" height="4.2" />
          </pattern>
          <pattern id={held} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect className="held-line" width="6" height="1" />
          </pattern>
          <rect className="field-whole" {...boxOf(field)} />
          {crops.map(({ held: move, box, standing }) => move && <path key={standing.crop.deliverable} d={pathOf(move) + pathOf(box)} fillRule="evenodd" fill={`url(#${held})`} />)}
          <Reach laid={laid} isCut={isCut} hatch={hatch} />
          {crops.map(({ box, safe, standing }, i) => (
            <g key={standing.crop.deliverable} className={standing.state === 'cut' ? 'crop is-cut' : 'crop'}>
              <rect {...boxOf(box)} strokeDasharray={strokeOf(i)} />
              {safe && <rect className="crop-safe" {...boxOf(safe)} />}
            </g>
          ))}
          {crops.map((drawn, i) => {
            const { title, width_m } = drawn.standing.crop;
            const text = `${title} ${lengthWords(width_m, system)}${drawn.standing.state === 'cut' ? ' cuts' : ''}`;
            return <Dimension key={drawn.standing.crop.deliverable} drawn={drawn} index={i} field={field} text={text} right_px={width_px} />;
          })}
          <path className="subject-point" d={`M${px(centre.x) - 7} ${px(centre.y)}h14M${px(centre.x)} ${px(centre.y) - 7}v14`} />
          <Ruler laid={laid} system={system} />
        </svg>
      )}
    </div>
  );
} // prettier-ignore
