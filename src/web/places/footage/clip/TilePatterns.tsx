/** Hatching that grows denser step by step, so that the steps of a map are told apart without colour. */

export const STEP_COUNT = 5;

/** From line to line, in CSS pixels: closer the higher the step. */
const APART_px = [22, 15, 11, 8, 5] as const;

export const patternId = (prefix: string, level: number): string => `${prefix}-${level}`;

export function TilePatterns({ prefix }: { readonly prefix: string }) {
  return (
    <defs>
      {APART_px.map((apart, i) => (
        <pattern key={apart} id={patternId(prefix, i + 1)} width={apart} height={apart} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className={`tile-fill is-${i + 1}`} width={apart} height={apart} />
          <path className="tile-line" d={`M0 0V${apart}`} />
        </pattern>
      ))}
    </defs>
  );
} // prettier-ignore

/** One step of a map as a swatch of its legend. */
export function TileSwatch({ prefix, level }: { readonly prefix: string; readonly level: number }) {
  return (
    <svg className="tile-swatch" width="28" height="18" aria-hidden="true">
      {level > 0 && <rect width="28" height="18" fill={`url(#${patternId(prefix, level)})`} />}
    </svg>
  );
}
