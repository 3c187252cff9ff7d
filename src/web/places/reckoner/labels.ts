/** Where the words of a map go: on their lines, clear of one another and of what must stay in sight. */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface LabelLine {
  readonly label: string;
  readonly width: number;
  /** In CSS pixels. */
  readonly points: readonly Spot[];
}

export interface Placed extends Spot {
  readonly label: string;
}

const HEIGHT = 16;
const GAP = 6;

const boxAround = ({ x, y }: Spot, width: number): Box => ({
  left: x - width / 2 - GAP,
  right: x + width / 2 + GAP,
  top: y - HEIGHT / 2,
  bottom: y + HEIGHT / 2,
});

const isApart = (a: Box, b: Box) => a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;

const isInside = (a: Box, area: Box) =>
  a.left >= area.left && a.right <= area.right && a.top >= area.top && a.bottom <= area.bottom;

const lengthOf = (points: readonly Spot[]) =>
  points.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - points[i]!.x, y - points[i]!.y), 0);

/** The point a fraction of the way along a line. */
function along(points: readonly Spot[], fraction: number): Spot {
  let left = lengthOf(points) * fraction;
  for (let i = 1; i < points.length; i += 1) {
    const [from, to] = [points[i - 1]!, points[i]!];
    const step = Math.hypot(to.x - from.x, to.y - from.y);
    if (left <= step && step > 0)
      return { x: from.x + ((to.x - from.x) * left) / step, y: from.y + ((to.y - from.y) * left) / step };
    left -= step;
  }
  return points.at(-1)!;
}

/** Places along a line to try, the middle first. */
const FRACTIONS = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];

/** One label a line at most, none where there is no room for it. */
export function placeLabels(lines: readonly LabelLine[], area: Box, avoid: readonly Box[] = []): readonly Placed[] {
  const taken = [...avoid];
  const placed: Placed[] = [];
  for (const { label, width, points } of lines) {
    if (points.length < 2 || lengthOf(points) < width * 1.4) continue;
    for (const fraction of FRACTIONS) {
      const spot = along(points, fraction);
      const box = boxAround(spot, width);
      if (!isInside(box, area) || !taken.every((other) => isApart(box, other))) continue;
      taken.push(box);
      placed.push({ ...spot, label });
      break;
    }
  }
  return placed;
}
