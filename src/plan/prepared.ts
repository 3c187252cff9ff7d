/** A shot on its way to its plan: what it is worked from, and what came of it at one candidate. */
import type { Shoot } from '../document/schema.ts';
import type { Kit } from './candidates.ts';
import type { Effective, Givens } from './givens.ts';
import type { JudgedLimit } from './limits.ts';
import type { Model } from './model.ts';

/** A shot ready to be worked: its model, its limits, and what it is given before a kit is chosen. */
export interface Prepared {
  readonly shoot: Shoot;
  readonly shotId: string;
  readonly effective: Effective;
  readonly model: Model;
  readonly givens: Givens;
  readonly kits: readonly Kit[];
}

/** A shot worked through at one candidate, all numbers in place. */
export interface Worked {
  readonly givens: Givens;
  readonly values: Float64Array;
  readonly limits: readonly JudgedLimit[];
}
