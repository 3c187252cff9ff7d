/** Which of the themes is on, kept in this browser; the system decides until the person does. */

export const THEMES = ['system', 'light', 'dark', 'stage'] as const;
export type Theme = (typeof THEMES)[number];

/** The same key is read before the first paint. */
const KEY = 'longsecond.theme';

export function themeNow(): Theme {
  const on = document.documentElement.dataset['theme'];
  return THEMES.find((theme) => theme === on) ?? 'system';
}

const listeners = new Set<() => void>();

/** Calls back after every change of the theme; returns how to stop that. */
export function onTheme(changed: () => void): () => void {
  listeners.add(changed);
  return () => void listeners.delete(changed);
}

export function setTheme(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
  try {
    if (theme === 'system') localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, theme);
  } catch {
    // Storage may be shut; the theme then lasts as long as the page.
  }
  for (const listener of [...listeners]) listener();
}
