import { appendFileSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clipFolder, noFfmpeg } from '../../test/footage/clips.ts';
import { numbersIn, NUMBERED_FORMS } from '../../test/footage/numbered.ts';
import { createStills } from './stills.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);
const [FORM] = NUMBERED_FORMS;

function clip() {
  const path = at('clip.mp4');
  FORM!.make(path);
  const fileOf = () => ({ size_B: statSync(path).size, modified_ms: statSync(path).mtimeMs });
  return { path, fileOf, ask: (frame: number, width = 64) => ({ path, file: fileOf(), frame, width }) };
}

describe.skipIf(noFfmpeg)('stills', () => {
  test('are made once and kept, in bytes that are the same', async () => {
    const { path, ask } = clip();
    const stills = createStills({ folder: at('kept') });
    const asked = ask(33);
    const first = await stills.still(asked);
    expect(numbersIn({ bytes: first })).toEqual([33]);
    expect(readdirSync(at('kept'))).toHaveLength(1);
    // Without its clip, it can only be the one that was kept.
    rmSync(path);
    expect(await createStills({ folder: at('kept') }).still(asked)).toEqual(first);
  });

  test('asked for many at a time are each the one that was asked for', async () => {
    const { ask } = clip();
    const stills = createStills({ folder: at('many') });
    const frames = [3, 14, 3, 41, 59, 3];
    const found = await Promise.all(frames.map((frame) => stills.still(ask(frame))));
    expect(found.map((bytes) => numbersIn({ bytes })[0])).toEqual(frames);
    expect(readdirSync(at('many'))).toHaveLength(4);
  });

  test('of a clip that was written to are made anew', async () => {
    const { path, fileOf, ask } = clip();
    const stills = createStills({ folder: at('anew') });
    await stills.still(ask(5));
    const before = fileOf();
    appendFileSync(path, Buffer.alloc(16));
    expect(fileOf()).not.toEqual(before);
    await stills.still(ask(5));
    expect(readdirSync(at('anew'))).toHaveLength(2);
  });

  test('beyond the end, or of nothing, are refused, and the next is given', async () => {
    const { ask } = clip();
    const stills = createStills({ folder: at('beyond') });
    await expect(stills.still(ask(60))).rejects.toMatchObject({ code: 'media.no-such-frame' });
    writeFileSync(at('broken.mov'), 'nothing of the kind');
    await expect(stills.still({ ...ask(0), path: at('broken.mov') })).rejects.toMatchObject({ code: 'media.not-a-movie' }); // prettier-ignore
    expect(numbersIn({ bytes: await stills.still(ask(59)) })).toEqual([59]);
  });

  test('that cannot be kept are given all the same', async () => {
    const { ask } = clip();
    writeFileSync(at('a file'), '');
    const stills = createStills({ folder: at('a file') });
    expect(numbersIn({ bytes: await stills.still(ask(7)) })).toEqual([7]);
  });

  test('are kept to a size', async () => {
    const { ask } = clip();
    mkdirSync(at('size'));
    const stills = createStills({ folder: at('size'), most_B: 1 });
    await stills.still(ask(0));
    const early = readdirSync(at('size'));
    for (let frame = 1; frame <= 50; frame += 1) writeFileSync(at(`size/other ${frame}.jpg`), 'old');
    await createStills({ folder: at('size'), most_B: 1 }).still(ask(1));
    expect(readdirSync(at('size'))).toHaveLength(1);
    expect(readdirSync(at('size'))).not.toEqual(early);
  });
});
