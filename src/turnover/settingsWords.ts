/** The settings of a shot as they are called out on the set. */
import type { UnitSystem } from '../base/quantity.ts';
import type { Shoot } from '../document/schema.ts';
import type { Settings } from '../plan/types.ts';
import { numberWords, said } from './words.ts';

export interface SettingsWords {
  readonly rate: string;
  /** "1/15000 s". */
  readonly shutter: string;
  readonly angle: string;
  readonly stop: string;
  readonly index: string;
  readonly camera: string;
  /** Pixels across and down, "4096 × 2304". */
  readonly format: string;
  readonly lens: string;
  /** Sensor to subject. */
  readonly distance: string;
  /** Front of the lens to subject. */
  readonly clear: string;
  readonly magnification: string;
}

export function settingsWords(settings: Settings, shoot: Shoot, system: UnitSystem = 'metric'): SettingsWords {
  const { camera, lens, widthCount, heightCount, isoSpeed } = settings;
  const say = (name: Exclude<keyof Settings, 'camera' | 'mode' | 'lens'>): string =>
    said(numberWords({ name, value: settings[name], kind: name === 'stop' ? 'tStop' : undefined, system }));
  return {
    rate: say('captureRate_fps'),
    shutter: say('exposureTime_s'),
    angle: say('shutterAngle_deg'),
    stop: say('stop'),
    index: `EI ${isoSpeed}`,
    camera: shoot.kit.cameras[camera]?.title ?? camera,
    format: `${widthCount} × ${heightCount}`,
    lens: shoot.kit.lenses[lens]?.title ?? lens,
    distance: say('sensorToSubject_m'),
    clear: say('workingDistance_m'),
    magnification: `${say('magnificationRatio')} : 1`,
  };
}
