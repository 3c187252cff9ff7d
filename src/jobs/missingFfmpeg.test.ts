import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { tempFolder } from '../../test/tempStore.ts';

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllEnvs();
  vi.resetModules();
});

test.runIf(process.platform !== 'win32')('what is missing is told with how to get it, and asked again until it is there', async () => {
  const folder = tempFolder();
  vi.stubEnv('LONGSECOND_FFMPEG', join(folder, 'ffmpeg'));
  vi.useFakeTimers({ toFake: ['performance'] });
  const { missingFfmpeg } = await import('./missingFfmpeg.ts');
  const missing = await missingFfmpeg();
  expect(missing?.what).toContain('ffmpeg');
  expect(missing?.mend).toMatch(/install/i);
  const install = (name: string) => {
    writeFileSync(join(folder, name), '#!/bin/sh\nexit 0\n');
    chmodSync(join(folder, name), 0o755);
  };
  install('ffmpeg');
  // Whoever looks four times a second does not start a program each time.
  expect(await missingFfmpeg()).toEqual(missing);
  vi.advanceTimersByTime(6000);
  expect((await missingFfmpeg())?.what).toContain('ffprobe');
  install('ffprobe');
  vi.advanceTimersByTime(6000);
  expect(await missingFfmpeg()).toBeUndefined();
}); // prettier-ignore
