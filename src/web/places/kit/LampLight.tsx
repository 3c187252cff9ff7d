import { useMemo } from 'react';
import { sayShown, showQuantity } from '../../../base/quantity.ts';
import { waveformOf } from '../../../laws/flicker/lamp.ts';
import type { Waveform } from '../../../laws/flicker/waveform.ts';
import type { LampTaken } from '../../../plan/flickerLamps.ts';
import { Panel } from '../../parts/Panel.tsx';
import { LightFacts } from '../flicker/LightFacts.tsx';
import { PeriodDrawing } from '../flicker/PeriodDrawing.tsx';
import { useKit } from './kitContext.ts';
import { MeasuredList } from './MeasuredList.tsx';
import { lampAlone } from './waveformFields.ts';
import { WaveformForm } from './WaveformForm.tsx';
import './lampLight.css';

/** The light that a lamp is taken to give, or why a law refuses its figures. */
function lightOf(taken: LampTaken | undefined): Waveform | string | undefined {
  if (!taken?.lamp) return taken?.unknown;
  try {
    return waveformOf(taken.lamp);
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
}

function Shown({ taken, light }: { readonly taken: LampTaken | undefined; readonly light: Waveform | string | undefined }) {
  if (light === undefined || typeof light === 'string')
    return <p className="kit-says">Nothing to draw yet{light === undefined ? '' : `: ${light}`}. Say what kind of light it is.</p>;
  const period = sayShown(showQuantity('time', light.period_s, { digits: 3 }));
  return (
    <>
      <p className="wave-says">
        {taken!.basis === 'assumed' ? 'Assumed' : 'As written'}: {taken!.says}
      </p>
      <PeriodDrawing waveform={light} says={`One period of its light, ${period}: ${taken!.says}`} />
      <LightFacts waveform={light} />
    </>
  );
} // prettier-ignore

/** How a lamp's light changes within a period: what is written of it, a period drawn, and what was measured. */
export function LampLight({ lampId }: { readonly lampId: string }) {
  const { open } = useKit();
  const taken = useMemo(() => lampAlone(open.shoot, lampId), [open.shoot, lampId]);
  const light = useMemo(() => lightOf(taken), [taken]);
  return (
    <>
      <Panel title="How its light changes" aside="for flicker in the frames" className="lamp-light">
        <div className="wave">
          <WaveformForm lampId={lampId} taken={taken} />
          <div className="wave-shown">
            <Shown taken={taken} light={light} />
          </div>
        </div>
      </Panel>
      <MeasuredList lampId={lampId} />
    </>
  );
}
