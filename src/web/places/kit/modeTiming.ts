/** The modes of a camera held against the rows model: what one row costs, which figures stand out, and what lies between. */
import type { Camera } from '../../../document/schema.ts';
import { fitModes, misfitFraction, type ListedMode } from '../../../laws/buffer/modesFit.ts';
import { frameRateByRows_fps, type RowTiming } from '../../../laws/buffer/rows.ts';

/** Beyond this a listed rate is no rounding of the model's. */
export const MISFIT_TOLD_FRACTION = 0.03;

export interface ModeFit {
  readonly id: string;
  readonly widthCount: number;
  readonly heightCount: number;
  readonly rate_fps: number;
  /** Listed over modelled, less one. */
  readonly misfitFraction: number;
  readonly isOff: boolean;
}

/** Modes that one row time may explain: those of one binning, and of one width where it alone has enough of them. */
export interface TimingGroup {
  readonly binningCount: number;
  /** Where the group is of one width. */
  readonly widthCount?: number;
  readonly timing: RowTiming;
  readonly fits: readonly ModeFit[];
  /** Two heights fix the model and test nothing. */
  readonly isTested: boolean;
}

interface Mode extends ListedMode {
  readonly id: string;
  readonly widthCount: number;
  readonly binningCount: number;
}

const LEAST_TESTED = 3;

function grouped<Of>(items: readonly Of[], keyOf: (item: Of) => number): ReadonlyMap<number, readonly Of[]> {
  const groups = new Map<number, Of[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}

const heightCount = (modes: readonly Mode[]) => new Set(modes.map(({ rowCount }) => rowCount)).size;

function groupOf(modes: readonly Mode[], isOneWidth: boolean): TimingGroup | undefined {
  if (heightCount(modes) < 2) return undefined;
  let timing: RowTiming;
  try {
    timing = fitModes(modes);
  } catch (error) {
    // Modes that grow faster with more rows: no row time explains them, and there is nothing to show.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
  const isTested = heightCount(modes) >= LEAST_TESTED;
  const fits = modes.map(({ id, widthCount, rowCount, frameRate_fps }): ModeFit => {
    const misfit = misfitFraction({ rowCount, frameRate_fps, ...timing });
    const isOff = isTested && Math.abs(misfit) > MISFIT_TOLD_FRACTION;
    return { id, widthCount, heightCount: rowCount, rate_fps: frameRate_fps, misfitFraction: misfit, isOff };
  });
  const { binningCount, widthCount } = modes[0]!;
  return { binningCount, ...(isOneWidth ? { widthCount } : {}), timing, fits, isTested };
}

/** Every group of modes that has heights enough, in the order of binning. */
export function timingGroups(camera: Camera): readonly TimingGroup[] {
  const modes = Object.entries(camera.modes).flatMap(([id, { pixels, maxRate_fps, binningCount = 1 }]): readonly Mode[] =>
    pixels && maxRate_fps !== undefined
      ? [{ id, widthCount: pixels.widthCount, rowCount: pixels.heightCount, frameRate_fps: maxRate_fps, binningCount }]
      : [],
  );
  return [...grouped(modes, ({ binningCount }) => binningCount)]
    .sort(([a], [b]) => a - b)
    .flatMap(([, binned]) => {
      const byWidth = [...grouped(binned, ({ widthCount }) => widthCount).values()];
      const own = byWidth.filter((width) => heightCount(width) >= LEAST_TESTED);
      const others = byWidth.filter((width) => !own.includes(width)).flat();
      const isAlone = byWidth.length === 1;
      return [...own.map((width) => groupOf(width, true)), groupOf(others, isAlone)].filter((group) => group !== undefined);
    });
} // prettier-ignore

/** `2048 × 1152 is listed 18 % faster than its neighbours: check the figure.` */
export function sayMisfit({ widthCount, heightCount: rows, misfitFraction: misfit }: ModeFit): string {
  const percent = Math.round(Math.abs(misfit) * 100);
  return `${widthCount} × ${rows} is listed ${percent} % ${misfit > 0 ? 'faster' : 'slower'} than its neighbours: check the figure.`;
}

export interface WorkedOut {
  /** Rounded down: a camera goes no faster than its sensor. */
  readonly rate_fps: number;
  /** Whether the height lies beyond every listed one. */
  readonly isBeyond: boolean;
}

/** The highest rate of a height by the model of a group. Throws RangeError unless the rows are whole, 1 or above. */
export function rateOfRows({ timing, fits }: TimingGroup, rowCount: number): WorkedOut {
  const listed = fits.map((fit) => fit.heightCount);
  return {
    rate_fps: Math.floor(frameRateByRows_fps({ rowCount, ...timing }) * (1 + 1e-9)),
    isBeyond: rowCount < Math.min(...listed) || rowCount > Math.max(...listed),
  };
}
