import { useId } from 'react';
import { useScrolls } from '../../../parts/useScrolls.ts';
import { levelOf, type MapId, type TileMap } from './tileMap.ts';
import { STEP_COUNT, TilePatterns, TileSwatch } from './TilePatterns.tsx';

function Legend({ map }: { readonly map: TileMap }) {
  const prefix = `legend${useId()}`;
  return (
    <div className="tile-legend">
      <svg width="0" height="0" aria-hidden="true">
        <TilePatterns prefix={prefix} />
      </svg>
      <span>{map.unit}, from</span>
      <ul>
        {Array.from({ length: STEP_COUNT }, (_, i) => (
          <li key={i}>
            <TileSwatch prefix={prefix} level={i + 1} />
            {map.say(map.steps[i]!)}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Table({ map, columns }: { readonly map: TileMap; readonly columns: number }) {
  const scrolls = useScrolls<HTMLDivElement>(`${map.title} of each tile`);
  const rows = Math.ceil(map.values.length / columns);
  return (
    <details className="tile-table">
      <summary>{map.title} of each tile, in figures</summary>
      <div className="tile-scroll" {...scrolls}>
        <table>
          <caption className="hidden-text">
            {map.title}, {map.unit}, by tile: rows from the top, columns from the left
          </caption>
          <thead>
            <tr>
              <td />
              {Array.from({ length: columns }, (_, column) => (
                <th key={column} scope="col">
                  {column + 1}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: rows }, (_, row) => (
              <tr key={row}>
                <th scope="row">{row + 1}</th>
                {Array.from({ length: columns }, (__, column) => {
                  const value = map.values[row * columns + column]!;
                  return (
                    <td key={column} className={levelOf(map, value) > 0 ? 'is-marked' : undefined}>
                      {map.say(value)}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

export interface MapChoiceProps {
  readonly maps: readonly TileMap[];
  readonly chosen: TileMap | undefined;
  readonly opacity: number;
  readonly onChoose: (id: MapId | undefined) => void;
  readonly onOpacity: (opacity: number) => void;
}

/** Which map lies over the picture, and how strongly. */
export function MapChoice({ maps, chosen, opacity, onChoose, onOpacity }: MapChoiceProps) {
  const [mapId, opacityId] = [useId(), useId()];
  return (
    <>
      <label className="clip-choice">
        <span id={mapId}>Over the picture</span>
        <select className="field-input" aria-labelledby={mapId} value={chosen?.id ?? ''} onChange={(event) => onChoose((event.currentTarget.value || undefined) as MapId | undefined)}>
          <option value="">nothing</option>
          {maps.map(({ id, title }) => (
            <option key={id} value={id}>
              {title.toLowerCase()}
            </option>
          ))}
        </select>
      </label>
      {chosen && (
        <label className="clip-choice" htmlFor={opacityId}>
          <span>Strength</span>
          <input id={opacityId} type="range" min="0.2" max="1" step="0.1" value={opacity} onChange={(event) => onOpacity(Number(event.currentTarget.value))} />
        </label>
      )}
    </>
  );
} // prettier-ignore

/** What the steps of the map over the picture mean, and its figures. */
export function MapFigures({ map, columns }: { readonly map: TileMap; readonly columns: number }) {
  return (
    <div className="clip-map no-print">
      <Legend map={map} />
      <Table map={map} columns={columns} />
    </div>
  );
}
