import { describe, expect, test } from 'vitest';
import { accepted, madeBytes } from '../../test/photometry/files.ts';
import { changed, SMALL } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { readPhotometry } from '../laws/light/photometry/read.ts';
import { lampFileKey, lampFilesOf, tellLampFiles, type LampFile, type LampFileState } from './lampFiles.ts';
import { lightOfSetup } from './lighting.ts';
import { photometryOf, photometryTold } from './photometry.ts';
import { planShoot } from './plan.ts';
import { readLampFile } from './readLampFile.ts';
import { waveformsOf } from './waveforms.ts';

const [HASH, OTHER] = ['a'.repeat(64), 'b'.repeat(64)];
const LAMBERT = accepted(readPhotometry(madeBytes('lambert-1000cd.ies')));

const lit = (more: Readonly<Record<string, Written>> = {}): Written =>
  changed(SMALL, {
    '/files': {
      matte: { name: 'matte.ies', sha256: HASH },
      light: { name: 'light.csv', sha256: OTHER },
      nowhere: { name: 'nowhere.ies' },
    },
    '/kit/lamps': {
      soft: { title: 'Soft', file: 'matte', measured: { full: { file: 'light' } } },
      twin: { title: 'Twin', file: 'matte' },
      lost: { title: 'Lost', file: 'nowhere' },
    },
    '/lighting/key': { title: 'Key', lamps: { left: { lamp: 'soft', at: '0 m, -2 m, 0 m' } } },
    ...more,
  });
const shootOf = (written: Written) => readShoot(written).shoot;
const FRONT = { azimuth_deg: 0, elevation_deg: 0 };

const state =
  (of: Readonly<Record<string, LampFileState>>) =>
  (file: LampFile): LampFileState | undefined =>
    of[lampFileKey(file)];
const READ: LampFileState = { kind: 'photometry', photometry: LAMBERT };

describe('files of a shoot’s lamps', () => {
  test('are told once each, by what they are named for, where the shoot says their hash', () => {
    expect(lampFilesOf(shootOf(lit()))).toEqual([
      { kind: 'photometry', sha256: HASH, name: 'matte.ies' },
      { kind: 'waveform', sha256: OTHER, name: 'light.csv' },
    ]);
  });

  test('make a lamp’s light known once they are read', () => {
    const shoot = shootOf(lit());
    tellLampFiles(shoot, state({ [`photometry ${HASH}`]: READ }));
    // 1000 cd at 2 m, facing the subject.
    expect(lightOfSetup(shoot, 'key', FRONT).illuminance_lx).toBeCloseTo(250, 6);
    expect(photometryOf(shoot)!.get(HASH)).toBe(LAMBERT);
    expect(waveformsOf(shoot)!.size).toBe(0);
  });

  test('say while they are not read why, in the lamp’s lack and in the shot’s margin', () => {
    const shoot = shootOf(lit());
    tellLampFiles(shoot, () => ({ kind: 'unread', says: 'matte.ies is being read' }));
    expect(lightOfSetup(shoot, 'key', FRONT).lacks[0]?.what).toBe('matte.ies is being read');
    const light = planShoot(shoot).shots[0]!.margins.find(({ id }) => id === 'light');
    expect(light?.state).toBe('unknown');
    expect(light?.missing.map(({ title }) => title)).toContain('Photometric file of Soft: matte.ies is being read');
  });

  test('plan again what they light once more is told, and nothing where the same is told again', () => {
    const shoot = shootOf(lit());
    tellLampFiles(shoot, () => ({ kind: 'unread', says: 'matte.ies is being read' }));
    const [before] = planShoot(shoot).shots;
    const reads = state({ [`photometry ${HASH}`]: READ });
    tellLampFiles(shoot, reads);
    const [after] = planShoot(shoot).shots;
    expect(after).not.toBe(before);
    const told = photometryTold(shoot);
    tellLampFiles(shoot, reads);
    expect(photometryTold(shoot)).toBe(told);
    expect(planShoot(shoot).shots[0]).toBe(after);
  });

  test('are told by the shoot’s files alone, so that looking at it as it was forgets nothing of it as it is', () => {
    const written = lit();
    const told = state({ [`photometry ${HASH}`]: READ });
    const shoot = shootOf(written);
    tellLampFiles(shoot, told);
    const before = shootOf(changed(written, { '/kit/lamps/soft/file': undefined, '/kit/lamps/twin/file': undefined }));
    expect(before.files).toBe(shoot.files);
    tellLampFiles(before, told);
    expect(photometryOf(shoot)?.get(HASH)).toBe(LAMBERT);
  });

  test('stay told through an edit that leaves them alone', () => {
    const written = lit();
    tellLampFiles(shootOf(written), state({ [`photometry ${HASH}`]: READ }));
    const edited = shootOf(changed(written, { '/shots/one/title': 'Another' }));
    expect(photometryOf(edited)?.get(HASH)).toBe(LAMBERT);
  });
});

describe('reading one', () => {
  const asked = { kind: 'photometry', sha256: HASH, name: 'matte.ies' } as const;

  test('gives what it holds', () => {
    expect(readLampFile(asked, madeBytes('lambert-1000cd.ies'))).toEqual(READ);
  });

  test('says name, line and reason where it cannot be read', () => {
    const broken = new TextEncoder().encode('IESNA:LM-63-2002\nTILT=NONE\n1 1000 one 3 1 1 2 0 0 0\n');
    const read = readLampFile(asked, broken);
    expect(read.kind === 'unread' && read.says).toMatch(/^matte\.ies, line 3: /);
  });

  test('of light over time gives its period, and refuses what repeats nowhere', () => {
    const asRecord = { ...asked, kind: 'waveform', name: 'light.csv' } as const;
    const lines = (of: (t: number) => number) => Array.from({ length: 4000 }, (_, i) => `${i * 1e-4},${of(i * 1e-4)}`).join('\n'); // prettier-ignore
    const bytes = (text: string) => new TextEncoder().encode(`time (s),light\n${text}`);
    const read = readLampFile(asRecord, bytes(lines((t) => 2 + Math.sin(2 * Math.PI * 100 * t))));
    expect(read.kind === 'waveform' && read.waveform.period_s).toBeCloseTo(0.01, 5);
    expect(readLampFile(asRecord, bytes(lines(() => 2)))).toMatchObject({ kind: 'unread', says: expect.stringMatching(/^light\.csv: /) as string }); // prettier-ignore
  });
});
