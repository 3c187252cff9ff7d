import { patternId, TilePatterns } from './TilePatterns.tsx';
import { levelOf, type TileMap, type TilePlace } from './tileMap.ts';

export interface TileOverlayProps {
  readonly map: TileMap;
  readonly places: readonly TilePlace[];
  /** 0 to 1. */
  readonly opacity: number;
  /** Of the ids of its patterns. */
  readonly prefix: string;
}

const percent = (value: number) => `${value.toFixed(3)}%`;

/** A map laid over the picture; its figures stand in the table beneath. */
export function TileOverlay({ map, places, opacity, prefix }: TileOverlayProps) {
  return (
    <svg className="clip-tiles" aria-hidden="true" style={{ opacity }}>
      <TilePatterns prefix={prefix} />
      {places.map(({ left, top, width, height }, tile) => {
        const level = levelOf(map, map.values[tile]!);
        return (
          level > 0 && (
            <rect key={tile} x={percent(left)} y={percent(top)} width={percent(width)} height={percent(height)} fill={`url(#${patternId(prefix, level)})`} />
          )
        );
      })}
    </svg>
  );
} // prettier-ignore
