import { useEffect, useState } from 'react';
import type { Grid } from './contour.ts';
import { startGrid, type Across, type Asking } from './sample.ts';

export interface GridAsk {
  readonly asking: Asking;
  readonly across: Across;
}

export interface DrawnGrid extends GridAsk {
  readonly grid: Grid;
}

/** Points answered before the page may do something else. */
const PIECE = 500;

const isSamePicture = (a: GridAsk, b: GridAsk) =>
  a.asking.of === b.asking.of &&
  a.asking.result === b.asking.result &&
  a.across.over.name === b.across.over.name &&
  a.across.and.name === b.across.and.name;

/** A law over two inputs, worked out between keystrokes; the picture before stays until the new one is whole. */
export function useGrid(ask: GridAsk | undefined): DrawnGrid | undefined {
  const [drawn, setDrawn] = useState<DrawnGrid>();
  useEffect(() => {
    if (!ask) return undefined;
    const { grid, work } = startGrid(ask.asking, ask.across);
    let waiting: ReturnType<typeof setTimeout>;
    const step = () => {
      if (work(PIECE)) setDrawn({ ...ask, grid });
      else waiting = setTimeout(step);
    };
    step();
    return () => clearTimeout(waiting);
  }, [ask]);
  return ask && drawn && isSamePicture(drawn, ask) ? drawn : undefined;
}
