import { describe, expect, it } from 'vitest';
import { decode } from '../../../src/intake/sheet/decode.ts';
import { bytes, fixture } from '../declare.ts';

describe('intake/sheet/decode', () => {
  it('names the encoding by its evidence', () => {
    expect(decode(bytes('a,b\n')).encoding).toBe('ASCII');
    expect(decode(bytes('a,°C\n')).encoding).toBe('UTF-8 (every byte fits)');
    expect(decode(bytes('\uFEFFa,b\n'))).toMatchObject({ text: 'a,b\n', encoding: 'UTF-8 (byte-order mark)' });
    expect(decode(fixture('utf16-mark.csv')).encoding).toBe('UTF-16LE (byte-order mark)');
    expect(decode(fixture('utf16be-bare.csv')).encoding).toBe('UTF-16BE (pattern of NUL bytes)');
    expect(decode(fixture('wide-cp1252-footer.csv'))).toMatchObject({
      encoding: expect.stringMatching(/^Windows-1252/),
      oddLines: [],
    });
  });

  it('reads the same text from either byte order', () => {
    expect(decode(fixture('utf16be-bare.csv')).text).toBe(decode(fixture('utf16-mark.csv')).text.replace('\uFEFF', ''));
    expect(decode(fixture('utf16be-bare.csv')).text).toMatch(/^t_s,soc \(°C\)\n0,50\.5\n/);
  });

  it('keeps both encodings of a mixed file readable and names the lines', () => {
    const decoded = decode(fixture('two-encodings.csv'));
    expect(decoded.text.split('\n').slice(1, 4)).toEqual(['0,50,60 °C limit', '1,51,über', '2,52,near 60 °C']);
    expect(decoded).toMatchObject({ encoding: 'UTF-8, with lines in Windows-1252', oddLines: [4] });
  });

  it('cuts the NUL bytes at the end and counts them', () => {
    const decoded = decode(fixture('nul-tail.csv'));
    expect(decoded.nulTail).toBe(700);
    expect(decoded.text.endsWith('8,5')).toBe(true);
  });

  it('unifies CR LF, CR CR LF and lone CR', () => {
    expect(decode(bytes('a\r\nb\r\r\nc\n')).text).toBe('a\nb\nc\n');
    expect(decode(bytes('a\rb\r')).text).toBe('a\nb\n');
  });

  it('reads nothing from nothing', () => {
    expect(decode(new Uint8Array(0))).toMatchObject({ text: '', encoding: 'ASCII', nulTail: 0, oddLines: [] });
    expect(decode(new Uint8Array(9)).text).toBe('');
  });
});
