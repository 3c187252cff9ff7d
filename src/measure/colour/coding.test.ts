import { describe, expect, test } from 'vitest';
import { codingOf } from '../transfer.ts';
import { signalsOf, type ColourMatrix } from './coding.ts';

/**
 * Bars of three quarters, ten bits in video levels, as the tables of SMPTE EG 1 and RP 219-2 have them and the source
 * prints them: brightness, Cb, Cr.
 */
const BARS: Readonly<Record<ColourMatrix, readonly (readonly [string, number, number, number])[]>> = {
  bt601: [['110', 646, 176, 567], ['011', 525, 625, 176], ['010', 450, 289, 231], ['101', 335, 735, 793], ['100', 260, 399, 848], ['001', 139, 848, 457], ['111', 721, 512, 512]],
  bt709: [['110', 674, 176, 543], ['011', 581, 589, 176], ['010', 534, 253, 207], ['101', 251, 771, 817], ['100', 204, 435, 848], ['001', 111, 848, 481], ['111', 721, 512, 512]],
  bt2020: [['110', 682, 176, 539], ['011', 548, 606, 176], ['010', 509, 270, 203], ['101', 276, 754, 821], ['100', 237, 418, 848], ['001', 103, 848, 485], ['111', 721, 512, 512]],
}; // prettier-ignore
/** Of whole bars, in twelve bits. */
const WHOLE_BARS: Readonly<Partial<Record<ColourMatrix, readonly (readonly [string, number, number, number])[]>>> = {
  bt709: [['011', 3015, 2459, 256], ['001', 509, 3840, 1884], ['110', 3507, 256, 2212], ['100', 1001, 1637, 3840]],
  bt2020: [['011', 2839, 2548, 256], ['001', 464, 3840, 1904], ['110', 3552, 256, 2192], ['100', 1177, 1548, 3840]],
}; // prettier-ignore

const bits = (name: string): readonly number[] => [...name].map(Number);

describe.each(['bt601', 'bt709', 'bt2020'] as const)('code values of bars by %s', (matrix) => {
  const into = new Float64Array(3);
  // A code is right to half of one, and a difference weighs twice (1 − Kb) of it in blue.
  const within = (code: number) => 1.6 * code;

  test.each(BARS[matrix])('agree with colour-bars, three quarters of %s', (name, first, second, third) => {
    signalsOf({ kind: 'ycbcr', matrix, range: 'video' }, codingOf('video', 10))(first, second, third, into);
    bits(name).forEach((of, i) => expect(Math.abs(into[i]! - 0.75 * of)).toBeLessThan(within(1 / 876)));
  });

  test.each(WHOLE_BARS[matrix] ?? [])(
    'agree with colour-bars, the whole of %s in twelve bits',
    (name, first, second, third) => {
      signalsOf({ kind: 'ycbcr', matrix, range: 'video' }, codingOf('video', 12))(first, second, third, into);
      bits(name).forEach((of, i) => expect(Math.abs(into[i]! - of)).toBeLessThan(within(1 / 3504)));
    },
  );
});

test.each([
  // Brightness and differences over the whole range: red of BT.709 is 0.2126 · 255 = 54, 128 − 0.1146 · 255 = 99, and 255.
  ['red over the whole range', { kind: 'ycbcr', matrix: 'bt709', range: 'full' }, [54, 99, 255], [1, 0, 0]],
  ['white over the whole range', { kind: 'ycbcr', matrix: 'bt601', range: 'full' }, [255, 128, 128], [1, 1, 1]],
  ['black over the whole range', { kind: 'ycbcr', matrix: 'bt2020', range: 'full' }, [0, 128, 128], [0, 0, 0]],
  ['red, green and blue themselves', { kind: 'rgb' }, [255, 51, 102], [1, 0.2, 0.4]],
] as const)('%s', (_, form, [first, second, third], expected) => {
  const into = new Float64Array(3);
  signalsOf(form, codingOf('full', 8))(first, second, third, into);
  expected.forEach((of, i) => expect(Math.abs(into[i]! - of)).toBeLessThan(1.2 / 255));
});
