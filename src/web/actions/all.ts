/** Every action there is, in the order in which the help lists them. */
import { footageHref, historyHref, reckonerHref, shootHref, shotHref } from '../hrefs.ts';
import type { Action, ActionState } from './action.ts';
import type { PlayerKeys } from './player.ts';

const shotBeside = ({ open, shotId }: ActionState, by: 1 | -1): string | undefined => {
  const shots = open?.plan.shots ?? [];
  const at = shots.findIndex(({ id }) => id === shotId);
  return at < 0 ? undefined : shots[at + by]?.id;
};

const stepToShot = (id: string, label: string, key: string, by: 1 | -1): Action => ({
  id,
  label,
  keys: [key],
  when: (state) => shotBeside(state, by) !== undefined,
  perform: (state) => state.go(shotHref(state.open!.id, shotBeside(state, by)!)),
});

const ofPlayer = (id: string, label: string, keys: readonly string[], press: (player: PlayerKeys) => (() => void) | undefined): Action => ({
  id,
  label,
  keys,
  when: ({ player }) => player !== undefined && press(player) !== undefined,
  perform: ({ player }) => press(player!)!(),
}); // prettier-ignore

const PLAYER: readonly Action[] = [
  ofPlayer('play', 'A clip: play, stop', ['Space'], ({ toggle }) => toggle),
  ofPlayer(
    'frame-back',
    'A clip: one frame back',
    [',', 'ArrowLeft'],
    ({ stepBy }) =>
      () =>
        stepBy(-1),
  ),
  ofPlayer(
    'frame-on',
    'A clip: one frame on',
    ['.', 'ArrowRight'],
    ({ stepBy }) =>
      () =>
        stepBy(1),
  ),
  ofPlayer(
    'frames-back',
    'A clip: ten frames back',
    ['Shift+ArrowLeft'],
    ({ stepBy }) =>
      () =>
        stepBy(-10),
  ),
  ofPlayer(
    'frames-on',
    'A clip: ten frames on',
    ['Shift+ArrowRight'],
    ({ stepBy }) =>
      () =>
        stepBy(10),
  ),
  ofPlayer('to-in', 'A clip: to the first frame kept', ['I'], ({ toIn }) => toIn),
  ofPlayer('to-out', 'A clip: to the last frame kept', ['O'], ({ toOut }) => toOut),
  ofPlayer('to-peak', 'A clip: to where most moves', ['M'], ({ toPeak }) => toPeak),
  ofPlayer('keep-from', 'A clip: keep from this frame', ['Shift+I'], ({ keepFromHere }) => keepFromHere),
  ofPlayer('keep-to', 'A clip: keep up to this frame', ['Shift+O'], ({ keepToHere }) => keepToHere),
  ofPlayer(
    'loop',
    'A clip: loop what is kept',
    ['L'],
    ({ setLooped }) =>
      () =>
        setLooped((was) => !was),
  ),
];

export const ACTIONS: readonly Action[] = [
  {
    id: 'undo',
    label: 'Undo',
    keys: ['Mod+Z'],
    when: ({ open }) => open?.undoSummary !== undefined,
    perform: ({ open }) => open?.undo(),
  },
  {
    id: 'redo',
    label: 'Redo',
    keys: ['Mod+Shift+Z', 'Mod+Y'],
    when: ({ open }) => open?.redoSummary !== undefined,
    perform: ({ open }) => open?.redo(),
  },
  stepToShot('next-shot', 'Next shot', 'N', 1),
  stepToShot('previous-shot', 'Shot before', 'P', -1),
  {
    id: 'shoot',
    label: 'Go to the Shoot',
    keys: ['S'],
    when: ({ open }) => open !== undefined,
    perform: ({ open, go }) => go(shootHref(open!.id)),
  },
  {
    id: 'footage',
    label: 'Go to the Footage',
    keys: ['F'],
    when: ({ open }) => open !== undefined,
    perform: ({ open, go }) => go(footageHref(open!.id)),
  },
  {
    id: 'reckoner',
    label: 'Go to the Reckoner',
    keys: ['R'],
    when: () => true,
    perform: ({ open, go }) => go(reckonerHref({ shootId: open?.id })),
  },
  {
    id: 'history',
    label: 'Go to the history of the shoot',
    keys: ['H'],
    when: ({ open }) => open !== undefined,
    perform: ({ open, go }) => go(historyHref(open!.id)),
  },
  ...PLAYER,
  {
    id: 'theme',
    label: 'Next theme: system, light, dark, stage',
    keys: ['T'],
    when: () => true,
    perform: ({ nextTheme }) => nextTheme(),
  },
  {
    id: 'help',
    label: 'This list of keys',
    keys: ['?'],
    when: () => true,
    perform: ({ toggleHelp }) => toggleHelp(),
  },
];
