import { CAUTION_WORDS } from '../../../plan/cautions.ts';
import { useLight } from './lightContext.ts';

/** White paper under this much light is as bright to look at as sunlit snow. */
const BRIGHT_lx = 50_000;

/** The usual caution with lamps. */
export function TakeCare() {
  const { light, reference, setup } = useLight();
  const brightest = Math.max(light.illuminance_lx || 0, reference?.value_lx ?? 0, setup.illuminance_lx ?? 0);
  return (
    <section className="cautions light-care" aria-label="Cautions">
      <h3>Take care</h3>
      <ul>
        <li>
          {brightest > BRIGHT_lx
            ? CAUTION_WORDS['intense-light']
            : 'Face lamps away before they are struck, and call it: nobody looks into one or along its beam.'}
        </li>
        <li>{CAUTION_WORDS['heat']} Keep each maker’s distance to diffusion, gels, paper and cloth.</li>
        <li>
          Sandbag every stand, one leg under the load, cables out of the way of feet; whatever hangs overhead has a
          second fixing.
        </li>
        <li>
          Local codes, the makers’ instructions and the person responsible on the set come first; supply and
          distribution belong to a qualified electrician.
        </li>
      </ul>
    </section>
  );
}
