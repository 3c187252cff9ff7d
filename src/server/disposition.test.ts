import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { disposition, savedName } from './disposition.ts';

describe('the name under which a file is saved', () => {
  test.each([
    ['../../etc/passwd', '-..-etc-passwd'],
    ['.hidden', 'hidden'],
    ['C:\\a.txt', 'C--a.txt'],
    ['a\r\nset-cookie: x', 'a--set-cookie- x'],
    ['invoice\u202egnp.exe', 'invoice-gnp.exe'],
    ['...', 'file'],
    ['', 'file'],
    ['Zoë.png', 'Zoë.png'],
  ])('%j is saved as %j', (name, saved) => {
    expect(savedName(name)).toBe(saved);
  });

  test('the header is one line of plain characters whatever the name, and the name can be read back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (name) => {
        const header = disposition('attachment', name);
        expect(header).toMatch(/^attachment; filename="[ !#-$&(-~]*"; filename\*=UTF-8''[A-Za-z0-9%._~!$&+-]+$/);
        expect(decodeURIComponent(header.split("UTF-8''")[1]!)).toBe(savedName(name));
      }),
    );
  });
});
