import { describe, expect, test } from 'vitest';
import { accepted, iesText, ldtText, madeBytes, MADE_FILES, refused, told } from '../../../../test/photometry/files.ts';
import { photometryKind, readPhotometry } from './read.ts';
import { MOST_BYTES, MOST_LINES } from './text.ts';

describe('which format a file is of', () => {
  test.each(MADE_FILES)('%s is known by its content', (name) => {
    expect(photometryKind(madeBytes(name))).toBe(name.slice(-3));
  });

  test.each<readonly [string, string, 'ies' | 'ldt' | undefined]>([
    ['an IES file without a version line', iesText({ version: '' }), 'ies'],
    ['an IES file without a TILT line', iesText({ tilt: [] }), 'ies'],
    ['an IES file after blank lines', `\n\n${iesText()}`, 'ies'],
    [
      'a EULUMDAT file of a company whose name begins like a version line',
      ldtText({ items: { 1: 'IES Lighting' } }),
      'ldt',
    ],
    ['a EULUMDAT file without a company', ldtText({ items: { 1: '' } }), 'ldt'],
    ['a table of numbers', '1 2 3\n4 5 6\n', undefined],
    ['a web page', '<!doctype html>\n<title>Lamp</title>\n', undefined],
    ['nothing', '', undefined],
    ['zero bytes', 'IESNA91\0', undefined],
  ])('%s', (_, text, kind) => {
    expect(photometryKind(text)).toBe(kind);
  });

  test('what is neither is refused with what to give instead', () => {
    expect(refused(readPhotometry('<html>'))).toMatchObject({
      code: 'photometry.unknown-format',
      line: 0,
      mend: expect.stringContaining('lux at a distance') as string,
    });
  });
});

describe('bytes', () => {
  const text = iesText({ labels: ['[LUMINAIRE] Scheinwerfer groß 🔦 €'] });
  const utf16 = (isLittle: boolean): Uint8Array => {
    const bytes = [...(isLittle ? [0xff, 0xfe] : [0xfe, 0xff])];
    for (let i = 0; i < text.length; i += 1) {
      const code = text.charCodeAt(i);
      bytes.push(...(isLittle ? [code & 255, code >> 8] : [code >> 8, code & 255]));
    }
    return Uint8Array.from(bytes);
  };

  test.each<readonly [string, Uint8Array]>([
    ['UTF-8', new TextEncoder().encode(text)],
    ['UTF-8 with its mark', new TextEncoder().encode(`\ufeff${text}`)],
    ['UTF-16, small end first', utf16(true)],
    ['UTF-16, big end first', utf16(false)],
  ])('%s is read letter by letter', (_, bytes) => {
    const lamp = accepted(readPhotometry(bytes));
    expect(lamp.labels).toEqual([{ keyword: 'LUMINAIRE', text: 'Scheinwerfer groß 🔦 €' }]);
    expect(told(lamp)).toEqual([]);
  });

  test.each<readonly [string, readonly number[]]>([
    ['a lone second byte', [0x80]],
    ['a character cut short', [0xc3]],
    ['a character longer than it need be', [0xc0, 0xaf]],
    ['half of a pair', [0xed, 0xa0, 0x80]],
    ['a character past the last', [0xf5, 0x80, 0x80, 0x80]],
  ])('%s is no UTF-8, and the file is read as Western', (_, odd) => {
    const plain = new TextEncoder().encode(iesText({ labels: ['[OTHER] x', '[LAMP] y'] }));
    const at = iesText().indexOf('\n') + '[OTHER] x'.length;
    const bytes = Uint8Array.from([...plain.slice(0, at), ...odd, ...plain.slice(at)]);
    expect(told(accepted(readPhotometry(bytes)))).toEqual(['western-bytes']);
  });

  test('the Western page has its own signs from 0x80 to 0x9F', () => {
    const bytes = Uint8Array.from(iesText({ labels: ['[OTHER] 5 ~'] }), (c) => (c === '~' ? 0x80 : c.charCodeAt(0)));
    expect(accepted(readPhotometry(bytes)).labels).toEqual([{ keyword: 'OTHER', text: '5 €' }]);
  });
});

describe('size', () => {
  test('a file over the limit of bytes, or of lines, is refused at once', () => {
    const long = `${iesText()}${' '.repeat(MOST_BYTES)}`;
    expect(refused(readPhotometry(long)).code).toBe('photometry.too-long');
    expect(refused(readPhotometry(`${iesText()}${'\n'.repeat(MOST_LINES)}`)).code).toBe('photometry.too-long');
  });

  test('a file of the most values is read', () => {
    const gammas_deg = Array.from({ length: 1000 }, (_, i) => (i * 90) / 999);
    const planes_deg = Array.from({ length: 1000 }, (_, i) => (i * 360) / 999);
    const lamp = accepted(readPhotometry(iesText({ gammas_deg, planes_deg, light: () => 7 })));
    expect(lamp.intensities_cd).toHaveLength(1e6);
    expect(lamp.flux_lm).toBeCloseTo(14 * Math.PI, 6);
  });

  test('a long label is cut, and told; too many labels before the numbers are refused', () => {
    const long = accepted(readPhotometry(iesText({ labels: [`[OTHER] ${'x'.repeat(5000)}`] })));
    expect(long.labels[0]!.text.length).toBeLessThanOrEqual(1000);
    expect(told(long)).toEqual(['long-label']);
    expect(refused(readPhotometry(iesText({ labels: Array<string>(1500).fill('[OTHER] x') }))).code).toBe(
      'photometry.not-ies',
    );
  });
});
