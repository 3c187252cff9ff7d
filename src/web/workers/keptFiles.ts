/** Files of lamps as a worker has them: sent by the page once each, told to plans of every shoot that is read here. */
import { readShoot, type Written } from '../../document/read.ts';
import type { Shoot } from '../../document/schema.ts';
import { lampFileKey, tellLampFiles, type LampFileContent } from '../../plan/lampFiles.ts';

export interface KeptFiles {
  readonly keep: (name: string, value: unknown) => void;
  /** The shoot as it is written, its files told. */
  readonly read: (written: Written) => Shoot;
}

export function openKeptFiles(): KeptFiles {
  const files = new Map<string, LampFileContent>();
  return {
    keep: (name, value) => files.set(name, value as LampFileContent),
    read: (written) => {
      const { shoot } = readShoot(written);
      tellLampFiles(shoot, (file) => files.get(lampFileKey(file)));
      return shoot;
    },
  };
}
