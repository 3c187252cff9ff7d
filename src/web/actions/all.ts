/** Every action there is, in the order in which the help lists them. */
import { historyHref, reckonerHref, shootHref, shotHref } from '../hrefs.ts';
import type { Action, ActionState } from './action.ts';

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
