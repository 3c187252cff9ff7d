/**
 * A drop striking a surface: the numbers that say whether it spreads or splashes, how wide it spreads and how long it
 * takes to arrive whole.
 *
 *     We = ρ·U²·D / σ        Re = ρ·U·D / μ        Oh = μ / √(ρ·σ·D)        τ = D / U        spread = D·We^¼
 *
 * We Weber number, inertia over surface tension        Re Reynolds number, inertia over viscosity        Oh √We / Re
 * D diameter, m        U speed, m/s        ρ density, kg/m³        σ surface tension, N/m        μ viscosity, Pa·s
 * τ time in which the drop falls by its own diameter, s
 *
 * The numbers hold for any liquid body of one size and speed. The spread holds for thin liquids on smooth, well-wetting
 * or greasy surfaces before any splash; a splash throws some of the liquid farther.
 *
 * @source weber-example the Weber number, worked
 * @source reynolds-examples the Reynolds number, worked
 * @source ohnesorge-article the Ohnesorge number, and its value for a raindrop
 * @source spread-scaling the widest spread
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { DENSITY_TAKEN, LIQUIDS, SURFACE_TENSION_TAKEN, VISCOSITY_TAKEN } from './liquids.ts';

const { water } = LIQUIDS;

export interface MovingDrop {
  readonly diameter_m: number;
  readonly speed_m_per_s: number;
}

/** Inertia over surface tension. Throws RangeError outside positive inputs. */
export function weberNumber(
  drop: MovingDrop & { readonly density_kg_per_m3?: number; readonly surfaceTension_N_per_m?: number },
): number {
  const { diameter_m, speed_m_per_s } = drop;
  const { density_kg_per_m3 = water.density_kg_per_m3, surfaceTension_N_per_m = water.surfaceTension_N_per_m } = drop;
  requirePositive({ diameter_m, speed_m_per_s, density_kg_per_m3, surfaceTension_N_per_m });
  return (density_kg_per_m3 * speed_m_per_s ** 2 * diameter_m) / surfaceTension_N_per_m;
}

/** Inertia over viscosity. Throws RangeError outside positive inputs. */
export function reynoldsNumber(
  drop: MovingDrop & { readonly density_kg_per_m3?: number; readonly viscosity_Pa_s?: number },
): number {
  const { diameter_m, speed_m_per_s } = drop;
  const { density_kg_per_m3 = water.density_kg_per_m3, viscosity_Pa_s = water.viscosity_Pa_s } = drop;
  requirePositive({ diameter_m, speed_m_per_s, density_kg_per_m3, viscosity_Pa_s });
  return (density_kg_per_m3 * speed_m_per_s * diameter_m) / viscosity_Pa_s;
}

/** Viscosity over inertia and surface tension: the liquid and the size alone. Throws RangeError outside positive inputs. */
export function ohnesorgeNumber(drop: {
  readonly diameter_m: number;
  readonly density_kg_per_m3?: number;
  readonly viscosity_Pa_s?: number;
  readonly surfaceTension_N_per_m?: number;
}): number {
  const { diameter_m, density_kg_per_m3 = water.density_kg_per_m3 } = drop;
  const { viscosity_Pa_s = water.viscosity_Pa_s, surfaceTension_N_per_m = water.surfaceTension_N_per_m } = drop;
  requirePositive({ diameter_m, density_kg_per_m3, viscosity_Pa_s, surfaceTension_N_per_m });
  return viscosity_Pa_s / Math.sqrt(density_kg_per_m3 * surfaceTension_N_per_m * diameter_m);
}

/** Time in which a drop moves by its own diameter. Throws RangeError outside positive inputs. */
export function impactTime_s({ diameter_m, speed_m_per_s }: MovingDrop): number {
  requirePositive({ diameter_m, speed_m_per_s });
  return diameter_m / speed_m_per_s;
}

/** Widest spread of a drop that does not splash. Throws RangeError as `weberNumber` does. */
export function spreadDiameter_m(drop: Parameters<typeof weberNumber>[0]): number {
  return drop.diameter_m * weberNumber(drop) ** 0.25;
}

const DROP = { diameter_m: 'Diameter of the drop', speed_m_per_s: 'Speed at impact' };
const WORDS = ['drop', 'droplet', 'splash', 'impact', 'dimensionless'];

export const weber = law(weberNumber, {
  id: 'weber-number',
  title: 'Weber number',
  says: 'How far a moving drop or jet is ruled by its speed rather than by surface tension.',
  equation: 'We = ρ · U² · D / σ',
  takes: { ...DROP, ...DENSITY_TAKEN, ...SURFACE_TENSION_TAKEN },
  gives: { weberNumber: { title: 'Weber number', as: 'ratio' } },
  holds: 'By definition.',
  sources: ['weber-example'],
  words: WORDS,
  example: { diameter_m: 0.004, speed_m_per_s: 3.13 },
});

export const reynolds = law(reynoldsNumber, {
  id: 'reynolds-number',
  title: 'Reynolds number',
  says: 'How far a moving drop or jet is ruled by its speed rather than by its thickness.',
  equation: 'Re = ρ · U · D / μ',
  takes: { ...DROP, ...DENSITY_TAKEN, ...VISCOSITY_TAKEN },
  gives: { reynoldsNumber: { title: 'Reynolds number', as: 'ratio' } },
  holds: 'By definition.',
  sources: ['reynolds-examples'],
  words: WORDS,
  example: { diameter_m: 0.004, speed_m_per_s: 3.13 },
});

export const ohnesorge = law(ohnesorgeNumber, {
  id: 'ohnesorge-number',
  title: 'Ohnesorge number',
  says: 'How thick a liquid is for a drop of its size, whatever its speed.',
  equation: 'Oh = μ / √(ρ · σ · D)',
  takes: { diameter_m: DROP.diameter_m, ...DENSITY_TAKEN, ...VISCOSITY_TAKEN, ...SURFACE_TENSION_TAKEN },
  gives: { ohnesorgeNumber: { title: 'Ohnesorge number', as: 'ratio' } },
  holds: 'By definition.',
  sources: ['ohnesorge-article'],
  words: WORDS,
  example: { diameter_m: 0.004 },
});

export const impactTime = law(impactTime_s, {
  id: 'impact-time',
  title: 'Time of an impact',
  says: 'How long a drop takes to fall by its own diameter: the clock that spreading and splashing run by.',
  equation: 'τ = D / U',
  takes: DROP,
  gives: { impactTime_s: 'Time of the impact' },
  holds: 'By definition. Spreading takes three to five of these, a crown ten to twenty.',
  sources: ['splash-times'],
  words: [...WORDS, 'contact time', 'how fast'],
  example: { diameter_m: 0.004, speed_m_per_s: 3.13 },
});

export const spreadDiameter = law(spreadDiameter_m, {
  id: 'spread-diameter',
  title: 'Spread of a drop',
  says: 'How wide a drop flattens on a dry surface, so that the picture has room for it.',
  equation: 'spread = D · We^¼',
  takes: { ...DROP, ...DENSITY_TAKEN, ...SURFACE_TENSION_TAKEN },
  gives: { spreadDiameter_m: 'Widest spread' },
  holds: 'Thin liquids; honey spreads less. A splash throws drops farther.',
  sources: ['spread-scaling'],
  words: [...WORDS, 'pancake', 'frame'],
  example: { diameter_m: 0.004, speed_m_per_s: 3.13 },
});
