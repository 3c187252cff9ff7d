/** What keeps the light of a set-up from being worked out, and places of the document as laws take them. */
import type { Position } from '../document/shape.ts';
import type { Vec3 } from '../laws/light/area/polygon.ts';

/** What keeps a lamp from being worked out, and where it would be written. */
export interface LampLack {
  readonly title: string;
  readonly path: string;
  readonly isUnread: boolean;
  /** What a law said, where it refused. */
  readonly what?: string;
}

/** A place of the document as laws take it, metres. */
export const vecOf = ({ right_m, away_m, up_m }: Position): Vec3 => [right_m, away_m, up_m];
