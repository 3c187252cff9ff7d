import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { Fault } from '../base/fault.ts';
import { readShootSource } from './shootFile.ts';

const folder = mkdtempSync(join(tmpdir(), 'longsecond-shoot-'));
afterAll(() => rmSync(folder, { recursive: true }));

const SHOOT = 'longsecond: 1\nshoot: { title: "Grüße, 41 klx ± 8 %" }\n';

function written(name: string, content: string | Uint8Array): string {
  const file = join(folder, name);
  writeFileSync(file, content);
  return file;
}

async function* chunksOf(...chunks: readonly Uint8Array[]) {
  for (const chunk of chunks) yield await Promise.resolve(chunk);
}

const nothing = () => chunksOf();

async function faultOf(file: string, input: AsyncIterable<Uint8Array> = nothing()): Promise<Fault> {
  const error: unknown = await readShootSource(file, input).catch((caught: unknown) => caught);
  expect(error).toBeInstanceOf(Fault);
  return error as Fault;
}

describe('what is read', () => {
  test('a file is read whole, under the name it was given by', async () => {
    const file = written('good.yaml', SHOOT);
    expect(await readShootSource(file, nothing())).toEqual({ name: file, text: SHOOT });
  });

  test('a dash reads the input, whatever pieces it comes in', async () => {
    const bytes = Buffer.from(SHOOT);
    // The cut falls inside a letter of two bytes.
    const cut = bytes.indexOf(0xc3) + 1;
    const input = chunksOf(bytes.subarray(0, cut), bytes.subarray(cut));
    expect(await readShootSource('-', input)).toEqual({ name: 'standard input', text: SHOOT });
  });
});

describe('what is refused', () => {
  test.each([
    ['a file that is not there', join(folder, 'none.yaml')],
    ['a file in a folder that is none', join(folder, 'good.yaml', 'x.yaml')],
    ['a folder', folder],
  ])('%s, by its name', async (_, file) => {
    mkdirSync(folder, { recursive: true });
    const { code, where } = await faultOf(file);
    expect({ code, where }).toEqual({ code: 'shoot.unreadable-file', where: file });
  });

  test.each([
    ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])],
    ['text in UTF-16', Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(SHOOT, 'utf16le')])],
    ['text with zero bytes', Buffer.from(`${SHOOT}\0\0`)],
  ])('%s, as no text in UTF-8', async (_, content) => {
    expect((await faultOf(written('other', content))).code).toBe('shoot.not-text');
  });

  test('an input without end, as soon as it is larger than any shoot', async () => {
    let given_B = 0;
    async function* endless() {
      for (;;) {
        given_B += 1_000_000;
        yield await Promise.resolve(Buffer.alloc(1_000_000, 'a'));
      }
    }
    expect((await faultOf('-', endless())).code).toBe('document.too-large');
    expect(given_B).toBeLessThan(10_000_000);
  });
});
