import { expect, test } from 'vitest';
import { madeBytes } from '../../test/photometry/files.ts';
import { tempStore } from '../../test/tempStore.ts';
import { readShoot } from '../document/read.ts';
import { lightOfSetup } from '../plan/lighting.ts';
import { tellStoredFiles } from './lampFiles.ts';

const AT = '2027-03-09T07:00:00.000Z';

const LIT = (sha256: string) => `longsecond: 1
shoot: { title: Lit }
files: { matte: { name: matte.ies, sha256: ${sha256} } }
kit: { lamps: { soft: { title: Soft, file: matte } } }
lighting: { key: { lamps: { left: { lamp: soft, at: '0 m, -2 m, 0 m' } } } }
`;

const FRONT = { azimuth_deg: 0, elevation_deg: 0 };

test('a plan made on the server has the files that the shoot names, and says which of them are not there', async () => {
  const store = await tempStore();
  store.bringIn({ editId: 'import-0001', at: AT, text: LIT('f'.repeat(64)), id: 's' });
  const shoot = () => readShoot(store.open('s').written).shoot;
  const light = async () => {
    const now = shoot();
    await tellStoredFiles(store, 's', now);
    return lightOfSetup(now, 'key', FRONT);
  };
  expect((await light()).lacks[0]?.what).toBe('matte.ies is not here: only its name was brought in');

  const sha256 = store.keepFile('s', { name: 'matte.ies', kind: 'application/octet-stream', bytes: madeBytes('lambert-1000cd.ies') }); // prettier-ignore
  const patch = [{ op: 'replace' as const, path: '/files/matte/sha256', value: sha256 }];
  store.edit('s', { editId: 'edit-000001', who: 'w', at: AT, revision: 0, patch, summary: 'The file' });
  // 1000 cd at 2 m, facing the subject.
  expect((await light()).illuminance_lx).toBeCloseTo(250, 6);

  const broken = store.keepFile('s', { name: 'matte.ies', kind: 'application/octet-stream', bytes: Buffer.from('IESNA:LM-63-2002\nTILT=NONE\n1 1000 one 3 1 1 2 0 0 0\n') }); // prettier-ignore
  store.edit('s', { editId: 'edit-000002', who: 'w', at: AT, revision: 1, patch: [{ op: 'replace', path: '/files/matte/sha256', value: broken }], summary: 'Broken' }); // prettier-ignore
  expect((await light()).lacks[0]?.what).toMatch(/^matte\.ies, line 3: /);
});
