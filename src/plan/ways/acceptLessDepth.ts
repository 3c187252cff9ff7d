/** Ask for less depth: a wider stop holds it, which lets in light and softens less by diffraction. */
import { settableStopAtOrBelow, roundedDown } from '../settable.ts';
import { depthOfField_m } from '../../laws/lens/depthOfField.ts';
import { fNumberAtAiry } from '../../laws/lens/diffraction.ts';
import { apart_stops, setQuantity, type Move, type MoveContext } from './move.ts';
import { say } from './words.ts';

/** The stop that would close the margin, before what the lens allows. */
function stopWanted({ margin, lack_stops, settings, number }: MoveContext): number {
  if (margin.id === 'light' || margin.id === 'noise') return settings.stop / 2 ** (lack_stops / 2);
  const airyDiameter_m = number('diffractionWanted_px') * number('deliveredPitch_m');
  const fNumber = fNumberAtAiry({ airyDiameter_m, ...closeUp(number) });
  return fNumber / Math.sqrt(number('transmittanceFraction'));
}

const closeUp = (number: MoveContext['number']) => ({
  magnificationRatio: number('magnificationRatio'),
  pupilMagnificationRatio: number('pupilMagnificationRatio'),
});

export const acceptLessDepth: Move = {
  id: 'accept-less-depth',
  closes: ['depth', 'light', 'noise', 'diffraction'],
  propose(context) {
    const { margin, effective, number } = context;
    const wanted_m = number('depthWanted_m');
    if (!(wanted_m > 0) || (effective.shot.stop !== undefined && margin.id !== 'depth')) return [];
    let depth_m = number('depth_m');
    if (margin.id !== 'depth') {
      const stop = Math.max(settableStopAtOrBelow(stopWanted(context)), number('widestStop') || 0);
      if (!(stop < context.settings.stop)) return [];
      const fNumber = stop * Math.sqrt(number('transmittanceFraction'));
      const lens = { focalLength_mm: number('focalLength_mm'), circleOfConfusion_m: number('circleOfConfusion_m') };
      depth_m = depthOfField_m({ fNumber, ...lens, ...closeUp(number) });
    }
    const ask_m = roundedDown(depth_m * (1 - 1e-9));
    if (!(ask_m > 0 && ask_m < wanted_m)) return [];
    return [
      {
        title: `Ask for ${say('length', ask_m)} of depth`,
        patch: [setQuantity(context, 'depth', 'length', ask_m)],
        gives_stops: apart_stops(ask_m, wanted_m),
      },
    ];
  },
};
