const PATHS = {
  undo: 'M8 5 3.5 9.5 8 14M4 9.5h8.5a4.5 4.5 0 0 1 0 9H9',
  redo: 'M14 5l4.5 4.5L14 14M18 9.5H9.5a4.5 4.5 0 0 0 0 9H13',
  back: 'M13.5 4.5 7 11l6.5 6.5',
  forward: 'M8.5 4.5 15 11l-6.5 6.5',
  up: 'M5 13.5l6-6 6 6',
  down: 'M5 8.5l6 6 6-6',
  more: 'M4.2 11a.5.5 0 1 0 1 0a.5.5 0 1 0-1 0M10.5 11a.5.5 0 1 0 1 0a.5.5 0 1 0-1 0M16.8 11a.5.5 0 1 0 1 0a.5.5 0 1 0-1 0',
  close: 'M5.5 5.5l11 11M16.5 5.5l-11 11',
  plus: 'M11 4.5v13M4.5 11h13',
  person: 'M11 4.2a3.4 3.4 0 1 1 0 6.8a3.4 3.4 0 1 1 0-6.8M4.5 18.2c.7-3.4 3.3-4.9 6.5-4.9s5.8 1.5 6.5 4.9',
  play: 'M7 4.5v13l10-6.5z',
  stop: 'M7.5 5v12M14.5 5v12',
  frameBack: 'M15.5 5v12L8 11zM5.5 5v12',
  frameOn: 'M6.5 5v12l7.5-6zM16.5 5v12',
  toIn: 'M6 4.5v13M6 4.5h3.5M6 17.5h3.5M17 11H9.5M12.5 8l-3 3 3 3',
  toOut: 'M16 4.5v13M16 4.5h-3.5M16 17.5h-3.5M5 11h7.5M9.5 8l3 3-3 3',
  toPeak: 'M2.5 17c5 0 5.5-11.5 8.5-11.5S14.5 17 19.5 17',
  closer: 'M9.5 3.5a6 6 0 1 1 0 12a6 6 0 1 1 0-12M14 14l5 5M9.5 6.8v5.4M6.8 9.5h5.4',
  farther: 'M9.5 3.5a6 6 0 1 1 0 12a6 6 0 1 1 0-12M14 14l5 5M6.8 9.5h5.4',
  half: 'M11 3.5a7.5 7.5 0 1 0 0 15zM11 3.5a7.5 7.5 0 0 1 0 15',
} as const;

export type IconName = keyof typeof PATHS;

export const ICON_NAMES = Object.keys(PATHS) as readonly IconName[];

/** A drawn sign; whatever holds it says in words what it does. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="icon" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.6"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}
