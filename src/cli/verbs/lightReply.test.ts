/** What `longsecond light --json` prints has the form that its schema says, key by key. */
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { LightReply } from '../../turnover/planSchema.ts';
import type { Verb } from '../command.ts';
import { lightVerb } from './light.ts';

const pathOf = (name: string) => fileURLToPath(new URL(`../../../${name}`, import.meta.url));

async function reply(...args: readonly string[]) {
  const setUp = lightVerb(Readable.from([]));
  const verbs: readonly Verb[] = [{ name: 'light', says: 'light', load: () => Promise.resolve(setUp) }];
  const { out, err, code } = await captureCommand(['light', ...args, '--json'], verbs);
  expect([err, code]).toEqual(['', 0]);
  return LightReply.parse(JSON.parse(out));
}

test('a photometric file fits the schema', async () => {
  expect(await reply(pathOf('test/photometry/lambert-1000cd.ies'))).toHaveProperty('file.onAxis_cd', 1000);
});

test('the set-ups of a shoot fit the schema', async () => {
  const told = await reply(pathOf('demo/shoot.yaml'));
  expect('setups' in told && told.setups.length).toBeGreaterThan(3);
});

test.each(['least-power', 'least-money'])('lamps found with %s fit the schema', async (wish) => {
  const told = await reply(pathOf('docs/guide/lit-shoot.yaml'), '--find', wish);
  expect('setups' in told && told.setups[0]!.found!.answers.length).toBeGreaterThan(0);
});
