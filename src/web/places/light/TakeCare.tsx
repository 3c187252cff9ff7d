import { useMemo } from 'react';
import { CAUTION_WORDS } from '../../../plan/cautions.ts';
import { glareOf } from '../../../plan/eyes.ts';
import { StateWord } from '../../parts/StateWord.tsx';
import { glareSaid } from './glareWords.ts';
import { useLight } from './lightContext.ts';
import '../../parts/cautions.css';

/** White paper under this much light is as bright to look at as sunlit snow. */
const BRIGHT_lx = 50_000;

/** How bright every lamp is to look into, the worst first: an alert, which says whose limits it goes by. */
function Glare() {
  const { open, setupId, light, system } = useLight();
  const glares = useMemo(() => glareOf(open.shoot, setupId, light.lamps), [open.shoot, setupId, light.lamps]);
  if (glares.length === 0) return null;
  const numberOf = (id: string) => light.lamps.findIndex((lamp) => lamp.id === id) + 1;
  return (
    <div className="light-glare">
      <h4>To look into</h4>
      <ul>
        {glares.map((glare) => {
          const { isNear, brightness, says } = glareSaid(glare, system);
          return (
            <li key={glare.id} className={isNear ? 'is-near' : undefined}>
              <p>
                <span className="light-row-number">{numberOf(glare.id)}</span> <b>{glare.title}</b> {brightness}
                {isNear && <StateWord standing="short" word="too near to look into" />}
              </p>
              <p className="light-glare-says">{says}</p>
            </li>
          );
        })}
      </ul>
      <p className="light-glare-says">
        By the limits published for workers with healthy eyes, as if what glows glowed evenly: an alert, not an
        assessment. The maker’s report on its class and a qualified person come first, and nobody looks in.
      </p>
    </div>
  );
}

/** The usual caution with lamps. */
export function TakeCare() {
  const { light, reference, setup } = useLight();
  const brightest = Math.max(light.illuminance_lx || 0, reference?.value_lx ?? 0, setup.illuminance_lx ?? 0);
  return (
    <section className="cautions light-care" aria-label="Cautions">
      <h3>Take care</h3>
      <Glare />
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
