/** The line of a light over time, within a drawing: every extreme of it, in no more points than there are pixels to show. */

export interface LineBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Light at the top; none is at the bottom. */
  readonly most: number;
}

const round = (value: number) => Math.round(value * 10) / 10;

/** One period from edge to edge, as a path. */
export function periodPath(samples: ArrayLike<number>, { left, right, top, bottom, most }: LineBox): string {
  const count = samples.length;
  const columns = Math.max(1, Math.min(count, Math.floor(right - left)));
  const x = (cell: number) => round(left + ((cell + 0.5) / count) * (right - left));
  const y = (light: number) => round(bottom - (light / most) * (bottom - top));
  const points: string[] = [`${round(left)} ${y(samples[0] ?? 0)}`];
  for (let column = 0; column < columns; column += 1) {
    const from = Math.floor((column * count) / columns);
    const to = Math.floor(((column + 1) * count) / columns);
    let [low, high] = [from, from];
    for (let cell = from; cell < to; cell += 1) {
      if (samples[cell]! < samples[low]!) low = cell;
      if (samples[cell]! > samples[high]!) high = cell;
    }
    const [first, second] = low < high ? [low, high] : [high, low];
    points.push(`${x(first)} ${y(samples[first]!)}`);
    if (samples[second] !== samples[first]) points.push(`${x(second)} ${y(samples[second]!)}`);
  }
  points.push(`${round(right)} ${y(samples[count - 1] ?? 0)}`);
  return `M${points.join('L')}`;
}
