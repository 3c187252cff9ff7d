/** Use another mode, lens or body: those here first, then those that can be hired. */
import type { Proposal, Move, MoveContext } from './move.ts';
import { setKey } from './move.ts';

const isHere = ({ availability = 'here' }: { readonly availability?: string }) => availability === 'here';
const isForHire = ({ availability }: { readonly availability?: string }) => availability === 'hire';

function modes(context: MoveContext): readonly Proposal[] {
  const { shoot, settings, effective } = context;
  const camera = shoot.kit.cameras[settings.camera];
  if (!camera) return [];
  return Object.entries(camera.modes)
    .filter(([id]) => id !== settings.mode)
    .map(([id, { title, pixels }]) => ({
      title: `Record ${title ?? (pixels ? `${pixels.widthCount} × ${pixels.heightCount}` : id)}`,
      patch: [setKey(context, 'camera', settings.camera), setKey(context, 'mode', id)],
      gives_stops: 0.2,
      touchesFixed: effective.shot.mode !== undefined,
    }));
}

function lenses(context: MoveContext): readonly Proposal[] {
  const { shoot, settings, effective } = context;
  return Object.entries(shoot.kit.lenses)
    .filter(([id, lens]) => id !== settings.lens && (isHere(lens) || isForHire(lens)))
    .map(([id, lens]) => ({
      title: `${isHere(lens) ? 'Use' : 'Hire'} ${lens.title ?? id}`,
      patch: [...(isHere(lens) ? [] : [{ op: 'add' as const, path: `/kit/lenses/${id}/availability`, value: 'here' }]), setKey(context, 'lens', id)],
      gives_stops: isHere(lens) ? 0.2 : 1,
      touchesFixed: effective.shot.lens !== undefined,
    }));
} // prettier-ignore

function bodies(context: MoveContext): readonly Proposal[] {
  const { shoot, settings, effective, shotId } = context;
  return Object.entries(shoot.kit.cameras)
    .filter(([id, camera]) => id !== settings.camera && (isHere(camera) || isForHire(camera)))
    .map(([id, camera]) => ({
      title: `${isHere(camera) ? 'Use' : 'Hire'} ${camera.title ?? id}`,
      patch: [
        ...(isHere(camera) ? [] : [{ op: 'add' as const, path: `/kit/cameras/${id}/availability`, value: 'here' }]),
        ...(effective.shot.mode === undefined ? [] : [{ op: 'remove' as const, path: `${effective.at('mode')}/mode` }]),
        { op: 'add' as const, path: `/shots/${shotId}/camera`, value: id },
      ],
      gives_stops: isHere(camera) ? 0.3 : 1.5,
      touchesFixed: effective.shot.camera !== undefined || effective.shot.mode !== undefined,
    }));
}

export const otherMode: Move = { id: 'other-mode', closes: ['frame-rate', 'picture-size', 'buffer', 'trigger-catch', 'coverage', 'noise', 'diffraction', 'focus'], propose: modes }; // prettier-ignore
export const otherLens: Move = {
  id: 'other-lens',
  closes: ['coverage', 'focus', 'clearance', 'light', 'depth'],
  propose: lenses,
};
export const otherBody: Move = { id: 'other-body', closes: ['frame-rate', 'picture-size', 'buffer', 'trigger-catch', 'noise', 'highlights', 'light'], propose: bodies }; // prettier-ignore
