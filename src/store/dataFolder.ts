/** Where a person's shoots are kept, by the custom of each system. */
import { isAbsolute, join, win32 } from 'node:path';

export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** The user's data folder. A relative XDG_DATA_HOME counts as none, as its specification asks. */
export function dataFolder({ platform, home, env }: Machine): string {
  if (platform === 'win32')
    return win32.join(env['LOCALAPPDATA'] ?? win32.join(home, 'AppData', 'Local'), 'Longsecond');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Longsecond');
  const shared = env['XDG_DATA_HOME'];
  return join(shared !== undefined && isAbsolute(shared) ? shared : join(home, '.local', 'share'), 'longsecond');
}
