import { describe, expect, test } from 'vitest';
import {
  accepted,
  every,
  iesText,
  madeBytes,
  madePhotometry,
  refused,
  told,
  type IesParts,
} from '../../../../test/photometry/files.ts';
import { intensityTowards_cd, peakOf } from './intensity.ts';
import { readIes } from './ies.ts';
import { largestDimension_m } from './photometry.ts';

const read = (parts: IesParts = {}) => accepted(readIes(iesText(parts)));
const refusal = (parts: IesParts = {}) => refused(readIes(iesText(parts)));
/** The file with one piece of text put in place of another. */
const damaged = (from: string, to: string, parts: IesParts = {}) => {
  const text = iesText(parts);
  if (!text.includes(from)) throw new Error(`"${from}" is not in the file`);
  return readIes(text.replace(from, to));
};

describe('versions', () => {
  test('1986: no version line, free labels; both factors multiply; one negative dimension is a disc in feet', () => {
    const lamp = madePhotometry('plain-1986.ies');
    expect(lamp).toMatchObject({
      version: 'LM-63-1986',
      symmetry: 'rotational',
      ratedFlux_lm: 3200,
      inputPower_W: 150,
      opening: { shape: 'disc', width_m: 0.1524, length_m: 0.1524, height_m: 0 },
    });
    expect(peakOf(lamp).intensity_cd).toBe(500);
    expect(lamp.labels.map(({ text }) => text)).toEqual([
      'MADE LAMP ONE',
      'An even 500 cd below the horizon, from a formula',
      'Report 12345',
    ]);
    expect(told(lamp)).toEqual(['ballast-lamp-factor']);
  });

  test('1991: keywords go on under MORE; a tilt table is kept and not applied', () => {
    const lamp = madePhotometry('table-1991.ies');
    expect(lamp.version).toBe('LM-63-1991');
    expect(lamp.labels).toContainEqual({ keyword: 'LUMINAIRE', text: 'An even lamp\nwith a tilt table' });
    expect(lamp.tilt).toEqual({
      lampPosition: 'vertical',
      angles_deg: Float64Array.of(0, 45, 90),
      factors: Float64Array.of(1, 0.95, 0.9),
    });
    expect(peakOf(lamp).intensity_cd).toBe(500);
    expect(told(lamp)).toEqual(['tilt-kept']);
  });

  test('1995: commas part values', () => {
    const lamp = madePhotometry('quarter-1995.ies');
    expect(lamp).toMatchObject({ version: 'LM-63-1995', symmetry: 'quadrants', ratedFlux_lm: undefined, notices: [] });
    expect(lamp.opening).toEqual({ shape: 'rectangle', width_m: 0.6, length_m: 0.3, height_m: 0 });
  });

  test('2002: a second factor that is not 1 is reserved, and does not multiply', () => {
    const lamp = read({ factors: '1 0.5 100' });
    expect(peakOf(lamp).intensity_cd).toBe(1000);
    expect(told(lamp)).toEqual(['reserved-factor']);
  });

  test('2019: the second factor says how the file was made, and does not multiply; own keywords are kept', () => {
    const lamp = madePhotometry('generated-2019.ies');
    expect(lamp).toMatchObject({ version: 'LM-63-2019', notices: [], opening: { shape: 'sphere' } });
    expect(peakOf(lamp).intensity_cd).toBe(100);
    expect(lamp.labels).toContainEqual({ keyword: '_SHOP', text: 'shelf 4' });
    expect(lamp.labels).toContainEqual({ keyword: 'FILEGENINFO', text: 'computed' });
  });

  test.each(['', 'IESNA91', 'IESNA:LM-63-1995'])('the second factor multiplies in "%s"', (version) => {
    expect(peakOf(read({ version, labels: ['lamp'], factors: '1 0.5 100' })).intensity_cd).toBe(500);
  });

  test('candela, multiplier and ballast factor multiply; lumens and lamps do not', () => {
    expect(peakOf(read({ lamps: '4 2500 2.5', factors: '0.9 1 100' })).intensity_cd).toBeCloseTo(2250, 9);
  });

  test.each([
    ['IESNA95', 'LM-63-1995'],
    ['IESNA:LM-63-1991', 'LM-63-1991'],
    ['iesna:lm-63-2002', 'LM-63-2002'],
    ['IES:LM-63-02', 'LM-63-2002'],
    ['IESNA LM-63-2019', 'LM-63-2019'],
  ])('%s is read as %s, and told', (version, as) => {
    const lamp = read({ version });
    expect(lamp.version).toBe(as);
    expect(told(lamp)).toEqual(['loose-version']);
  });

  test('a version that is not known is refused, as its factors are not', () => {
    expect(refusal({ version: 'IES:LM-63-2031' })).toMatchObject({ code: 'photometry.unknown-version', line: 1 });
  });

  test('keywords without a version line are read by the rules of 1986, and told', () => {
    const lamp = read({ version: '' });
    expect(lamp.version).toBe('LM-63-1986');
    expect(told(lamp)).toEqual(['no-version']);
  });
});

describe('openings', () => {
  const opening = (version: string, sizes: string) =>
    read({ version, labels: ['lamp'], opening: `2 ${sizes}` }).opening.shape;
  test.each([
    ['IESNA91', '-0.3 0 0', 'disc'],
    ['IESNA91', '-0.3 0 0.1', 'vertical-cylinder'],
    ['IESNA91', '-0.3 0.5 0', 'ellipse'],
    ['IESNA91', '-0.3 0.5 0.2', 'ellipsoid'],
    ['IESNA:LM-63-1995', '-0.3 0 -0.3', 'sphere'],
    ['IESNA:LM-63-1995', '0 0.6 -0.1', 'horizontal-cylinder'],
    ['IESNA:LM-63-1995', '-0.3 0.5 0.2', 'vertical-cylinder'],
    ['IESNA:LM-63-2002', '-0.3 -0.3 0', 'disc'],
    ['IESNA:LM-63-2002', '-0.3 -0.5 0', 'ellipse'],
    ['IESNA:LM-63-2002', '-0.3 -0.3 0.4', 'vertical-cylinder'],
    ['IESNA:LM-63-2002', '-0.3 -0.3 -0.3', 'sphere'],
    ['IESNA:LM-63-2002', '-0.3 -0.3 -0.4', 'ellipsoid'],
    ['IESNA:LM-63-2002', '-0.1 0.6 -0.1', 'horizontal-cylinder'],
    ['IESNA:LM-63-2002', '-0.3 0 -0.3', 'vertical-disc'],
    ['IESNA:LM-63-2002', '0.3 0.6 0.1', 'box'],
    ['IESNA:LM-63-2002', '0 0 0', 'point'],
  ])('%s: %s is a %s', (version, sizes, shape) => {
    expect(opening(version, sizes)).toBe(shape);
  });

  test('a code of an older version in a newer file is read by the older rule, and told', () => {
    const lamp = read({ opening: '1 -1 0 0' });
    expect(lamp.opening).toEqual({ shape: 'disc', width_m: 0.3048, length_m: 0.3048, height_m: 0 });
    expect(told(lamp)).toEqual(['opening-code']);
  });

  test('dimensions that follow no rule still give a size', () => {
    const lamp = read({ opening: '2 0.4 0 0' });
    expect(lamp.opening.shape).toBe('unlisted');
    expect(largestDimension_m(lamp.opening)).toBe(0.4);
    expect(told(lamp)).toEqual(['opening-code']);
  });
});

describe('TILT', () => {
  test.each([
    ['TILT = NONE', ['tilt-line']],
    ['tilt=none', ['tilt-line']],
    ['TILT=', ['tilt-line']],
    ['TILT=LAMP7.TLT', ['tilt-file']],
  ])('%s is read as no change, and told', (line, codes) => {
    const lamp = read({ tilt: [line] });
    expect(lamp.tilt).toBeUndefined();
    expect(told(lamp)).toEqual(codes);
  });

  test.each(['TILT=../../etc/passwd', 'TILT=/etc/passwd', 'TILT=C:\\LAMPS\\A.TLT'])('%s is refused', (line) => {
    expect(refusal({ tilt: [line] })).toMatchObject({ code: 'photometry.tilt-path', line: 4, where: 'line 4' });
  });

  test('a missing TILT line is made up for by the first line of ten numbers', () => {
    const lamp = read({ tilt: [], labels: ['[TEST] 1', '[LAMP] 2'] });
    expect(lamp.flux_lm).toBeCloseTo(2000 * Math.PI, 6);
    expect(told(lamp)).toEqual(['no-tilt-line']);
  });

  test('a TILT table that is cut short is refused', () => {
    expect(refusal({ tilt: ['TILT=INCLUDE', '1', '3', '0 45', '1 1 1'] }).code).toMatch(/^photometry\./);
  });
});

describe('types', () => {
  test('B is brought to C planes: cos V · cos H comes out as cos γ', () => {
    const lamp = madePhotometry('flood-b-2002.ies');
    expect(told(lamp)).toEqual(['type-b']);
    for (const gamma_deg of [0, 5, 20, 45, 85]) {
      const cosine = 1000 * Math.cos((gamma_deg * Math.PI) / 180);
      // Exact in the principal planes, and as near as 5° steps of the file are elsewhere.
      for (const plane_deg of [0, 90, 180, 270])
        expect(intensityTowards_cd(lamp, { plane_deg, gamma_deg })).toBeCloseTo(cosine, 3);
      for (const plane_deg of [30, 45, 200])
        expect(Math.abs(intensityTowards_cd(lamp, { plane_deg, gamma_deg }) - cosine)).toBeLessThan(3);
    }
  });

  const flood: IesParts = { type: 2, gammas_deg: every(10, -90, 90), planes_deg: every(10, -90, 90) };

  test('B keeps up and down, left and right apart: V is up in C90, H to the side in C0', () => {
    const lamp = read({ ...flood, light: ({ plane_deg, gamma_deg }) => 1000 + 2 * gamma_deg + plane_deg });
    expect(intensityTowards_cd(lamp, { plane_deg: 90, gamma_deg: 30 })).toBeCloseTo(1060, 9);
    expect(intensityTowards_cd(lamp, { plane_deg: 270, gamma_deg: 30 })).toBeCloseTo(940, 9);
    expect(intensityTowards_cd(lamp, { plane_deg: 0, gamma_deg: 30 })).toBeCloseTo(1030, 9);
    expect(intensityTowards_cd(lamp, { plane_deg: 180, gamma_deg: 30 })).toBeCloseTo(970, 9);
  });

  test('B with one side listed has both sides alike', () => {
    const lamp = read({ ...flood, planes_deg: every(10, 0, 90), light: ({ plane_deg }) => 100 + plane_deg });
    for (const plane_deg of [0, 180])
      expect(intensityTowards_cd(lamp, { plane_deg, gamma_deg: 40 })).toBeCloseTo(140, 9);
  });

  test('B that measured only the beam is dark beyond it, and told', () => {
    const lamp = read({ ...flood, gammas_deg: every(5, -20, 20), planes_deg: every(5, -30, 30) });
    expect(told(lamp)).toEqual(['type-b', 'gamma-ends-early']);
    const at = (plane_deg: number, gamma_deg: number) => intensityTowards_cd(lamp, { plane_deg, gamma_deg });
    expect([at(0, 30), at(90, 20), at(0, 32), at(90, 22)]).toEqual([1000, 1000, 0, 0]);
  });

  test('B that lists half of a beam is refused', () => {
    expect(refusal({ ...flood, gammas_deg: every(10, 0, 90) }).code).toBe('photometry.axis-missing');
    expect(refusal({ ...flood, planes_deg: every(10, 10, 90) }).code).toBe('photometry.plane-range');
    expect(refusal({ ...flood, planes_deg: [0] }).code).toBe('photometry.plane-range');
  });

  test('A is refused, by its code and by its angles below the horizon where 1986 had one code for both', () => {
    expect(refusal({ type: 3 })).toMatchObject({ code: 'photometry.type-a', line: 5 });
    expect(refusal({ version: '', labels: ['x'], gammas_deg: every(10, -90, 90) }).code).toBe('photometry.type-a');
    expect(refusal({ gammas_deg: every(10, -90, 90) }).code).toBe('photometry.angle-out-of-range');
  });
});

describe('planes and vertical angles', () => {
  test.each([
    [every(15, 0, 90), 'quadrants'],
    [every(15, 0, 180), 'about-c0'],
    [every(15, 90, 270), 'about-c90'],
    [every(15, 0, 360), 'none'],
    [[0], 'rotational'],
  ])('planes %j are read as %s', (planes_deg, symmetry) => {
    expect(read({ planes_deg })).toMatchObject({ symmetry, notices: [] });
  });

  test('a turn that leaves out 360° is closed, and told', () => {
    const lamp = read({ planes_deg: every(15, 0, 345) });
    expect(lamp.planes_deg.at(-1)).toBe(360);
    expect(told(lamp)).toEqual(['turn-not-closed']);
  });

  test('a plane at 360° that is not the plane at 0° gives way to it, and is told', () => {
    const lamp = read({
      planes_deg: [0, 120, 240, 360],
      light: ({ plane_deg, gamma_deg }) => (plane_deg === 360 && gamma_deg > 0 ? 500 : 1000),
    });
    expect(intensityTowards_cd(lamp, { plane_deg: 359.999, gamma_deg: 20 })).toBeCloseTo(1000, 3);
    expect(told(lamp)).toEqual(['seam']);
  });

  test.each([[[0, 45]], [[0, 90, 135]], [[90, 180]], [[0, 120, 200]], [[10, 350]]])(
    'planes %j are refused, as no symmetry is theirs',
    (planes_deg) => {
      expect(refusal({ planes_deg })).toMatchObject({ code: 'photometry.plane-range', line: 8 });
    },
  );

  test('one plane elsewhere than at 0° is taken all round, and told', () => {
    expect(told(read({ planes_deg: [90] }))).toEqual(['one-plane']);
  });

  test('vertical angles may be 0–90, 90–180 or 0–180', () => {
    for (const gammas_deg of [every(5, 0, 90), every(5, 90, 180), every(5, 0, 180)])
      expect(read({ gammas_deg }).notices).toEqual([]);
  });

  test('vertical angles that stop early are told, those that leave out the axis refused', () => {
    expect(told(read({ gammas_deg: every(5, 0, 60) }))).toEqual(['gamma-ends-early']);
    expect(refusal({ gammas_deg: every(5, 10, 90) })).toMatchObject({ code: 'photometry.axis-missing', line: 7 });
  });
});

describe('damage seen in real files', () => {
  test.each<readonly [string, () => ReturnType<typeof readIes>, readonly string[]]>([
    ['tabs', () => readIes(iesText().replaceAll(' ', '\t')), []],
    ['CR alone', () => readIes(iesText().replaceAll('\n', '\r')), []],
    ['a byte order mark', () => readIes(`\ufeff${iesText()}`), []],
    ['an end-of-file mark of old systems', () => readIes(`${iesText()}\u001a`), []],
    ['blank lines at the end', () => readIes(`${iesText()}\n  \n\n`), []],
    [
      'a stray line among the keywords',
      () => readIes(iesText({ labels: ['[TEST] 1', 'made in the shop'] })),
      ['stray-labels'],
    ],
    ['text after the values', () => readIes(`${iesText()}end of file`), ['trailing-text']],
    ['the first record over several lines', () => damaged('1 -1 1 19 1 1 2 0 0 0', '1\n-1\n1\n19 1\n1 2\n0 0 0'), []],
    ['an exponent', () => damaged('1000 1000', '1e3 1.0E+03'), []],
    ['no watts', () => damaged('1 1 100', '1 1 0'), ['no-power']],
    ['whole numbers with decimals', () => damaged('19 1 1 2', '19.0 1.0 1.00 2.0'), []],
    ['minus zero', () => damaged('1000\n', '-0.0\n'), []],
  ])('%s is read', (_, attempt, codes) => {
    const lamp = accepted(attempt());
    expect(told(lamp)).toEqual(codes);
    expect(peakOf(lamp).intensity_cd).toBe(1000);
  });

  test('commas for decimal points are read so where the counts come out, and told', () => {
    const text = iesText({ planes_deg: [0, 90], light: () => 1234.5, factors: '0.95 1 80.5' }).replaceAll('.', ',');
    const lamp = accepted(readIes(text));
    expect(peakOf(lamp).intensity_cd).toBeCloseTo(1234.5 * 0.95, 9);
    expect(lamp.inputPower_W).toBe(80.5);
    expect(told(lamp)).toEqual(['decimal-commas']);
  });

  test('bytes of the Western page are read, and told', () => {
    const bytes = Uint8Array.from(iesText({ labels: ['[LUMINAIRE] Projecteur ~t~'] }), (c) => c.charCodeAt(0)).map(
      (b) => (b === 0x7e ? 0xe9 : b),
    );
    const lamp = accepted(readIes(bytes));
    expect(lamp.labels).toEqual([{ keyword: 'LUMINAIRE', text: 'Projecteur été' }]);
    expect(told(lamp)).toEqual(['western-bytes']);
  });

  test('more light than the lamps are stated to give is told', () => {
    expect(told(read({ lamps: '2 1000 1' }))).toEqual(['over-rated']);
    expect(told(read({ lamps: '0 0 1' }))).toEqual(['no-rated-flux']);
  });

  test('planes that disagree on the axis they share are told', () => {
    expect(told(read({ planes_deg: [0, 90], light: ({ plane_deg }) => 1000 + plane_deg }))).toEqual(['axis-differs']);
  });

  test.each<readonly [string, () => ReturnType<typeof readIes>, string, number]>([
    ['nothing', () => readIes(''), 'empty', 0],
    ['a missing plane', () => readIes(iesText({ planes_deg: [0, 90, 180] }).replace(/[^\n]*\n$/, '')), 'too-short', 10],
    ['a missing value', () => damaged('1000\n', '\n'), 'too-short', 9],
    ['a value too many', () => damaged('1000\n', '1000 1000\n'), 'too-many-numbers', 9],
    ['a second lamp', () => readIes(iesText() + iesText()), 'two-lamps', 10],
    ['a star for a value', () => damaged('1000 1000', '1000 *****'), 'not-a-number', 9],
    ['NaN', () => damaged('1000 1000', '1000 NaN'), 'not-a-number', 9],
    ['Infinity', () => damaged('1000 1000', '1000 Infinity'), 'not-a-number', 9],
    ['a number past all reason', () => damaged('1000 1000', '1000 1e300'), 'not-a-number', 9],
    ['a hexadecimal', () => damaged('1000 1000', '1000 0x10'), 'not-a-number', 9],
    ['a negative candela', () => damaged('1000 1000', '1000 -3'), 'negative-intensity', 9],
    ['angles that go back', () => damaged('10 15', '15 10'), 'angles-not-ascending', 7],
    ['an angle twice', () => damaged('10 15', '10 10'), 'angles-not-ascending', 7],
    ['all zero', () => readIes(iesText({ light: () => 0 })), 'no-light', 0],
    ['a lamp beyond any', () => readIes(iesText({ light: () => 1e11, lamps: '1 -1 1000' })), 'too-bright', 0],
    ['a count of a half', () => damaged('19 1 1', '19.5 1 1'), 'bad-count', 5],
    ['a single vertical angle', () => readIes(iesText({ gammas_deg: [0] })), 'bad-count', 5],
    ['counts beyond reason', () => readIes(iesText({ counts: '900000 900000' })), 'too-many-values', 5],
    ['a unit that is none', () => readIes(iesText({ opening: '3 0 0 0' })), 'bad-count', 5],
    ['a multiplier of 0', () => readIes(iesText({ lamps: '1 1000 0' })), 'bad-multiplier', 5],
    ['a ballast factor of 0', () => readIes(iesText({ factors: '0 1 100' })), 'bad-multiplier', 6],
    ['no numbers at all', () => readIes('IESNA91\n[TEST] 1\n[LAMP] two'), 'not-ies', 1],
    ['only the head', () => readIes('IESNA91\n[TEST] 1\nTILT=NONE'), 'too-short', 4],
    ['zero bytes', () => readIes('IESNA91\0TILT=NONE'), 'not-text', 0],
  ])('%s is refused by line, with what to do', (_, attempt, code, line) => {
    const { code: found, what, mend, line: at } = refused(attempt());
    expect({ code: found, line: at }).toEqual({ code: `photometry.${code}`, line });
    expect(what).toMatch(/\S/);
    expect(mend).toMatch(/^[A-Z].*\.$/);
  });
});

test('bytes and text of a file are read alike', () => {
  const bytes = madeBytes('cos10-10000cd-crlf.ies');
  expect(readIes(String.fromCharCode(...bytes))).toEqual(readIes(bytes));
});
