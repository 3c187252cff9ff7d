import { Button } from '../../parts/Button.tsx';
import type { Surface } from './lightMap.ts';
import { useLight } from './lightContext.ts';
import { SURFACES } from './mapWords.ts';
import { lengthWords } from '../shot/pictureWords.ts';
import type { Snap } from './useGrips.ts';
import { REACHES_m } from './viewport.ts';

export type MapChoice = Surface | 'none';

const SNAPS: Readonly<Record<Snap, string>> = { free: 'free, to 1 cm', grid: 'to 5 cm', round: 'round, by 15°' };

export interface DrawingToolsProps {
  readonly map: MapChoice;
  readonly onMap: (map: MapChoice) => void;
  readonly snap: Snap;
  readonly onSnap: (snap: Snap) => void;
  /** Which reach about the subject; −1 for the whole set. */
  readonly reachIndex: number;
  readonly onReach: (index: number) => void;
}

/** What the drawings show: the map, how near, and how a lamp moves. */
export function DrawingTools({ map, onMap, snap, onSnap, reachIndex, onReach }: DrawingToolsProps) {
  const { system } = useLight();
  const reach_m = REACHES_m[reachIndex];
  return (
    <div className="light-tools no-print">
      <label className="light-choose">
        <span>Map of</span>
        <select value={map} onChange={({ currentTarget }) => onMap(currentTarget.value as MapChoice)}>
          {Object.entries(SURFACES).map(([value, { name }]) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
          <option value="none">nothing</option>
        </select>
      </label>
      <label className="light-choose">
        <span>Things move</span>
        <select value={snap} onChange={({ currentTarget }) => onSnap(currentTarget.value as Snap)}>
          {Object.entries(SNAPS).map(([value, name]) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <div className="light-zoom" role="group" aria-label="How near">
        <span>{reach_m === undefined ? 'all of it' : `${lengthWords(reach_m, system)} about the subject`}</span>
        <Button look="sign" aria-label="Wider" disabled={reachIndex < 0} onClick={() => onReach(reachIndex - 1)}>
          −
        </Button>
        <Button
          look="sign"
          aria-label="Nearer"
          disabled={reachIndex >= REACHES_m.length - 1}
          onClick={() => onReach(reachIndex + 1)}
        >
          +
        </Button>
      </div>
    </div>
  );
}
