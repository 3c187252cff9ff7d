import { useSyncExternalStore } from 'react';
import { Button } from './Button.tsx';
import { Icon } from './Icon.tsx';
import { Menu } from './Menu.tsx';
import { onTheme, setTheme, THEMES, themeNow, type Theme } from './theme.ts';

const WORDS: Readonly<Record<Theme, readonly [label: string, note: string]>> = {
  system: ['As the system', ''],
  light: ['Light', 'for a bright office'],
  dark: ['Dark', ''],
  stage: ['Stage', 'for a dark set'],
};

/** Chooses between light, dark and stage. */
export function ThemeMenu() {
  const theme = useSyncExternalStore(onTheme, themeNow);
  return (
    <Menu
      align="end"
      trigger={
        <Button look="sign" aria-label="Theme" title="Theme">
          <Icon name="half" />
        </Button>
      }
      items={THEMES.map((id) => ({
        id,
        label: WORDS[id][0],
        isCurrent: id === theme,
        ...(WORDS[id][1] === '' ? {} : { note: WORDS[id][1] }),
      }))}
      onChoose={(id) => setTheme(id as Theme)}
    />
  );
}
