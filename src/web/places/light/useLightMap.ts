import { useEffect, useRef, useState } from 'react';
import type { LightSource } from '../../../laws/light/placed/source.ts';
import type { Grid } from '../reckoner/contour.ts';
import { openMapDesk, type MapDesk, type Sheet } from './lightMap.ts';

export interface DrawnMap {
  readonly sheet: Sheet;
  readonly grid: Grid;
}

/** Worked at a time before the page may do something else. */
const PIECE_ms = 7;

/** Light over a sheet, worked out lamp by lamp between frames; the map before stays until the new one is whole. */
export function useLightMap(sources: readonly LightSource[], sheet: Sheet | undefined): DrawnMap | undefined {
  const desk = useRef<MapDesk>(undefined);
  const [drawn, setDrawn] = useState<DrawnMap>();
  useEffect(() => {
    if (!sheet) return undefined;
    desk.current ??= openMapDesk();
    const { work, grid } = desk.current.start(sources, sheet);
    let waiting: ReturnType<typeof setTimeout>;
    const step = () => {
      const end_ms = performance.now() + PIECE_ms;
      if (work(() => performance.now() > end_ms)) setDrawn({ sheet, grid: grid() });
      else waiting = setTimeout(step);
    };
    step();
    return () => clearTimeout(waiting);
  }, [sources, sheet]);
  return sheet && drawn && drawn.sheet.surface === sheet.surface ? drawn : undefined;
}
