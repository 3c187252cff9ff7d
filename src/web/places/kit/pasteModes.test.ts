import { describe, expect, test } from 'vitest';
import { plainNumber } from './pasteCells.ts';
import { columnOfHeading } from './pasteHeadings.ts';
import { isBlock, readPasted } from './pasteModes.ts';

const rows = (text: string, start?: 'title' | 'pixels' | 'rate' | 'binning' | 'bits') => readPasted(text, start).rows;

const TWO = [
  { title: 'Full', pixels: '4096 x 2304', rate: '1062 fps', bits: '12' },
  { title: 'Half', pixels: '2048 x 1152', rate: '2079 fps', bits: '12' },
];

describe('a table with headings', () => {
  test.each([
    ['tabs', 'Title\tPixels\tMax fps\tBits\nFull\t4096 x 2304\t1062\t12\nHalf\t2048 x 1152\t2079\t12'],
    ['commas', 'Title,Pixels,Max fps,Bits\nFull,4096x2304,1062,12\nHalf,2048x1152,2079,12'],
    ['commas with quoted thousands', 'Title,Pixels,Max fps,Bits\nFull,4096x2304,"1,062",12\nHalf,2048x1152,"2,079",12'],
    ['semicolons', 'Title;Pixels;Max fps;Bits\r\nFull;4096x2304;1062;12\r\nHalf;2048x1152;2079;12\r\n'],
    [
      'bars',
      '| Title | Pixels | fps | Bits |\n| --- | --- | ---: | :--- |\n| Full | 4096 x 2304 | 1062 | 12 |\n| Half | 2048 x 1152 | 2079 | 12 |',
    ],
    ['spaces', 'Title   Pixels        fps    Bits\nFull    4096 x 2304   1062   12\nHalf    2048 x 1152   2079   12'],
  ])('is read when its cells are parted by %s', (_, text) => {
    const table = readPasted(text, undefined);
    expect(table.hasHeadings).toBe(true);
    expect(table.leftOut).toEqual([]);
    expect(table.rows).toEqual(TWO);
  });

  test('is read in any order of columns, with other words for them', () => {
    const text =
      'Bit depth\tFrame rate (fps)\tMode\tResolution (H × V)\n12\t1062\tFull\t4096×2304\n12\t2079\tHalf\t2048×1152';
    expect(rows(text)).toEqual(TWO);
  });

  test('may have width and height in columns of their own', () => {
    const text = 'Name;Width;Height;Max. rate;Bits\nFull;4.096;2.304;1.062;12\nHalf;2.048;1.152;2.079;12';
    expect(rows(text)).toEqual(TWO);
  });

  test('may have blank lines, blank columns, a caption above and cells missing at the end', () => {
    const text =
      '\nRates of the camera\n\nTitle\t\tPixels\tfps\n\nFull\t\t4096 x 2304\t1062\n\t\t\t\nHalf\t\t2048 x 1152\n\n';
    expect(rows(text)).toEqual([
      { title: 'Full', pixels: '4096 x 2304', rate: '1062 fps' },
      { title: 'Half', pixels: '2048 x 1152' },
    ]);
  });

  test('names the columns that are none of ours, and leaves them out', () => {
    const text = 'Mode\tPixels\tfps\tData rate (GB/s)\tRecord time\nFull\t4096x2304\t1062\t15.0\t6.4 s';
    const table = readPasted(text, undefined);
    expect(table.leftOut).toEqual(['Data rate (GB/s)', 'Record time']);
    expect(table.rows).toEqual([{ title: 'Full', pixels: '4096 x 2304', rate: '1062 fps' }]);
  });

  test('takes the first of two columns that mean the same, and names the second', () => {
    const table = readPasted('Pixels\tfps\tRate at 8 bits fps\n4096x2304\t1062\t1500', undefined);
    expect(table.rows).toEqual([{ pixels: '4096 x 2304', rate: '1062 fps' }]);
    expect(table.leftOut).toEqual(['Rate at 8 bits fps']);
  });

  test('with a width and no height has no size, and says so', () => {
    const table = readPasted('Width\tfps\n4096\t1062', undefined);
    expect(table.rows).toEqual([{ rate: '1062 fps' }]);
    expect(table.leftOut).toEqual(['Width']);
  });
});

describe('a table without headings', () => {
  test('is judged by what its columns hold', () => {
    expect(rows('Full\t4096 x 2304\t1062\t12\nHalf\t2048 x 1152\t2079\t12')).toEqual(TWO);
    expect(rows('1062\t4096 x 2304\t12\tFull\n2079\t2048 x 1152\t12\tHalf')).toEqual(TWO);
    expect(rows('4096\t2304\t1062 fps\n2048\t1152\t2079 fps')).toEqual([
      { pixels: '4096 x 2304', rate: '1062 fps' },
      { pixels: '2048 x 1152', rate: '2079 fps' },
    ]);
    expect(rows('4096,2304,1062,1,12\n2048,1152,2079,2,12')).toEqual([
      { pixels: '4096 x 2304', rate: '1062 fps', binning: '1', bits: '12' },
      { pixels: '2048 x 1152', rate: '2079 fps', binning: '2', bits: '12' },
    ]);
  });

  test('is laid from the cell where it was pasted on, where that fits', () => {
    expect(rows('1062\n2079', 'rate')).toEqual([{ rate: '1062 fps' }, { rate: '2079 fps' }]);
    expect(rows('1,062\n2,079', 'rate')).toEqual([{ rate: '1062 fps' }, { rate: '2079 fps' }]);
    expect(rows('1\t12\n2\t10', 'binning')).toEqual([
      { binning: '1', bits: '12' },
      { binning: '2', bits: '10' },
    ]);
  });

  test('is judged by what it holds where the cell would be the wrong one', () => {
    expect(rows('4096 x 2304\t1062\n2048 x 1152\t2079', 'bits')).toEqual([
      { pixels: '4096 x 2304', rate: '1062 fps' },
      { pixels: '2048 x 1152', rate: '2079 fps' },
    ]);
  });

  test('names by its place and first cell what it cannot use', () => {
    const table = readPasted('Full\t4096 x 2304\t1062\tgood\nHalf\t2048 x 1152\t2079\tbad', undefined);
    expect(table.leftOut).toEqual(['column 4, “good”']);
  });
});

describe('cells', () => {
  test.each([
    ['1920x1080', '1920 x 1080'],
    ['1920 × 1080', '1920 x 1080'],
    ['1920*1080 px', '1920 x 1080'],
    ['1,920 by 1,080', '1920 x 1080'],
    ['4.096 x 2.304', '4096 x 2304'],
    ['4 096 × 2 304', '4096 x 2304'],
  ])('%s is a size', (typed, pixels) => {
    expect(rows(`Pixels\tfps\n${typed}\t1000`)[0]!.pixels).toBe(pixels);
  });

  test.each([
    ['2079', '2079 fps'],
    ['2,079', '2079 fps'],
    ['2 079', '2079 fps'],
    ['2’079', '2079 fps'],
    ['2079 fps', '2079 fps'],
    ['2079 Hz', '2079 fps'],
    ['2079 frames per second', '2079 fps'],
    ['2.5 kfps', '2500 fps'],
    ['up to 2079 fps', '2079 fps'],
    ['59,94', '59.94 fps'],
    ['24000/1001', '24000/1001 fps'],
    ['1.062.500', '1062500 fps'],
    ['2.079,5', '2079.5 fps'],
  ])('%s is a rate', (typed, rate) => {
    expect(rows(`Pixels\tfps\n1920x1080\t${typed}`)[0]!.rate).toBe(rate);
  });

  test.each([
    ['2x2', '2'],
    ['2 × 2', '2'],
    ['2x', '2'],
    ['1:1', '1'],
    ['none', undefined],
  ])('%s is a binning', (typed, binning) => {
    expect(rows(`Pixels\tBinning\n1920x1080\t${typed}`)[0]!.binning).toBe(binning);
  });

  test('12 bit and 12-bit are twelve bits', () => {
    expect(rows('Pixels\tBits\n1920x1080\t12 bit\n1280x720\t12-bit').map(({ bits }) => bits)).toEqual(['12', '12']);
  });

  test('that cannot be read stay as they were typed', () => {
    expect(rows('Title\tPixels\tfps\tBits\nFull\twide\tfast\tmany')).toEqual([
      { title: 'Full', pixels: 'wide', rate: 'fast', bits: 'many' },
    ]);
    expect(rows('Width\tHeight\tfps\n4096\ttall\t1062')).toEqual([{ pixels: '4096 x tall', rate: '1062 fps' }]);
  });

  test('1.062 is thousands where the table writes commas for decimals, and a decimal where it writes points', () => {
    expect(rows('Pixels\tfps\n4096x2304\t1.062\n2048x1152\t2079,5')[0]!.rate).toBe('1062 fps');
    expect(rows('Pixels\tfps\n4096x2304\t1.062\n2048x1152\t2079.5')[0]!.rate).toBe('1.062 fps');
    expect(rows('Pixels;fps\n4096x2304;1.062\n2048x1152;2.079')[0]!.rate).toBe('1062 fps');
  });

  test('the typed form is told where reading chose between two meanings, and only there', () => {
    const { typed } = readPasted('Pixels\tfps\n4096x2304\t1,062\n2048x1152\t2079 fps', undefined);
    expect(typed).toEqual([{ rate: '1,062' }, {}]);
  });
});

test('nothing pasted is an empty table', () => {
  for (const text of ['', ' \n\t\n', '\u00a0']) expect(readPasted(text, 'rate').rows).toEqual([]);
});

test('quotes and line ends within a cell are kept in it', () => {
  expect(rows('Title\tPixels\n"Full, ""open"""\t4096x2304')[0]!.title).toBe('Full, "open"');
});

test.each([
  ['12,5', '.', '12.5'],
  ['12.5', ',', '12.5'],
  ['1,234,567', '.', '1234567'],
  ['1,234.5', ',', '1234.5'],
  ['1.2.3', '.', undefined],
  ['12,34,567', '.', undefined],
  ['1e3', '.', undefined],
  ['', '.', undefined],
] as const)('%s with %s for decimals in the table is %s', (text, mark, number) => {
  expect(plainNumber(text, mark)).toBe(number);
});

test.each([
  ['Max. frame rate', 'rate'],
  ['FPS @ 12 bit', 'rate'],
  ['Frames/s', 'rate'],
  ['Image size', 'pixels'],
  ['Resolution (width × height)', 'pixels'],
  ['Horizontal resolution', 'width'],
  ['Rows', 'height'],
  ['W', 'width'],
  ['H', 'height'],
  ['Bit depth', 'bits'],
  ['Bits/pixel', 'bits'],
  ['Binning', 'binning'],
  ['Mode', 'title'],
  ['Pixel pitch', undefined],
  ['Data rate', undefined],
  ['Min fps', undefined],
  ['Depth of field', undefined],
  ['', undefined],
] as const)('the heading “%s” means %s', (heading, column) => {
  expect(columnOfHeading(heading)).toBe(column);
});

test.each([
  ['4096 x 2304\t1062', true],
  ['1062\n2079', true],
  ['1062\n', false],
  ['Full;4096 x 2304', true],
  ['Full, at 12 bits', false],
  ['1,062', false],
])('%j is a block: %s', (text, is) => {
  expect(isBlock(text)).toBe(is);
});

test('rows go where they were pasted only where their columns may stand there', () => {
  expect(readPasted('1062\n2079', 'rate').isLaid).toBe(true);
  expect(readPasted('4096 x 2304\t1062', 'bits').isLaid).toBe(false);
  expect(readPasted('fps\n1062', 'rate').isLaid).toBe(false);
});
