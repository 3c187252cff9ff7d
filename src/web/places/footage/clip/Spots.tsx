import type { Spot } from './spots.ts';

export interface SpotsProps {
  readonly spots: readonly Spot[];
  readonly width: number;
  readonly height: number;
}

/** A ring round dust, a lozenge round a pixel. */
function outline({ kind, x, y, radius_px: r }: Spot): string {
  if (kind === 'pixel') return `M${x} ${y - r}L${x + r} ${y}L${x} ${y + r}L${x - r} ${y}Z`;
  return `M${x - r} ${y}A${r} ${r} 0 1 0 ${x + r} ${y}A${r} ${r} 0 1 0 ${x - r} ${y}Z`;
}

/** Marks laid over the picture; what they mark is said in the sentences beside it. */
export function Spots({ spots, width, height }: SpotsProps) {
  const path = spots.map(outline).join('');
  return (
    <svg className="clip-spots" viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
      <path className="spot-under" d={path} />
      <path className="spot-mark" d={path} />
    </svg>
  );
}

export interface SpotsChoiceProps {
  readonly says: string;
  readonly isMarked: boolean;
  readonly onMark: (isMarked: boolean) => void;
}

export function SpotsChoice({ says, isMarked, onMark }: SpotsChoiceProps) {
  return (
    <label className="clip-check">
      <input type="checkbox" checked={isMarked} onChange={(event) => onMark(event.currentTarget.checked)} />
      <span>Mark spots: {says}</span>
    </label>
  );
}
