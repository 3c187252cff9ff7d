import { describe, expect, test } from 'vitest';
import { dataFolder } from './dataFolder.ts';

describe('the data folder', () => {
  test.each([
    ['linux', '/home/ada', {}, '/home/ada/.local/share/longsecond'],
    ['linux', '/home/ada', { XDG_DATA_HOME: '/data' }, '/data/longsecond'],
    ['linux', '/home/ada', { XDG_DATA_HOME: 'data' }, '/home/ada/.local/share/longsecond'],
    ['linux', '/home/ada', { XDG_DATA_HOME: '' }, '/home/ada/.local/share/longsecond'],
    ['darwin', '/Users/ada', { XDG_DATA_HOME: '/data' }, '/Users/ada/Library/Application Support/Longsecond'],
    ['win32', 'C:\\Users\\ada', { LOCALAPPDATA: 'D:\\Local' }, 'D:\\Local\\Longsecond'],
    ['win32', 'C:\\Users\\ada', {}, 'C:\\Users\\ada\\AppData\\Local\\Longsecond'],
  ] as const)('on %s, home %s, with %o, is %s', (platform, home, env, expected) => {
    expect(dataFolder({ platform, home, env })).toBe(expected);
  });
});
