import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { REGULAR_WIDTHS } from '../../../src/plots/drawing/glyph-widths.ts';
import { cut, textWidth, wrap } from '../../../src/plots/drawing/text-width.ts';

const FONT = '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf';

/** Advance widths by code point, thousandths of an em, read from the tables head, hhea, hmtx and cmap (format 4) of ISO/IEC 14496-22. */
function advances(): (code: number) => number {
  const bytes = readFileSync(fileURLToPath(import.meta.resolve(FONT)));
  const tables = new Map(
    Array.from({ length: bytes.readUInt16BE(4) }, (_, i) => {
      const at = 12 + 16 * i;
      return [bytes.toString('latin1', at, at + 4), bytes.readUInt32BE(at + 8)];
    }),
  );
  const perEm = bytes.readUInt16BE(tables.get('head')! + 18);
  const metrics = bytes.readUInt16BE(tables.get('hhea')! + 34);
  const cmap = tables.get('cmap')!;
  const offsets = Array.from({ length: bytes.readUInt16BE(cmap + 2) }, (_, i) => cmap + bytes.readUInt32BE(cmap + 8 + 8 * i));
  const map = offsets.find((at) => bytes.readUInt16BE(at) === 4)!;
  const twice = bytes.readUInt16BE(map + 6);
  const glyph = (code: number) => {
    for (let i = 0; i < twice; i += 2) {
      if (code > bytes.readUInt16BE(map + 14 + i)) continue;
      const start = bytes.readUInt16BE(map + 16 + twice + i);
      if (code < start) return 0;
      const range = map + 16 + 3 * twice + i;
      const offset = bytes.readUInt16BE(range);
      const delta = bytes.readInt16BE(map + 16 + 2 * twice + i);
      const found = offset === 0 ? code : bytes.readUInt16BE(range + offset + 2 * (code - start));
      return found === 0 ? 0 : (found + delta) & 0xffff;
    }
    return 0;
  };
  return (code) => (bytes.readUInt16BE(tables.get('hmtx')! + 4 * Math.min(glyph(code), metrics - 1)) * 1000) / perEm;
}

describe('plots/drawing/text-width', () => {
  test('the table holds the widths of the font itself', () => {
    const widthOf = advances();
    const wrong = Object.entries(REGULAR_WIDTHS).flatMap(([width, characters]) =>
      [...characters].filter((character) => Math.round(widthOf(character.codePointAt(0)!)) !== Number(width)),
    );
    expect(wrong).toEqual([]);
  });

  test('the table holds what plots write: figures, letters, units, minus, tau', () => {
    const known = Object.values(REGULAR_WIDTHS).join('');
    for (const character of '0123456789−–±°µΩτ×%·…(),.:;=/ abcXYZäéñ\u00a0') expect(known).toContain(character);
  });

  test('widths add up and grow with size; an unknown character counts as one em', () => {
    expect(textWidth('00', 10)).toBeCloseTo(9.94, 10);
    expect(textWidth('0', 20)).toBeCloseTo(9.94, 10);
    expect(textWidth('木', 14)).toBe(14);
    expect(textWidth('load', 14, 'semibold')).toBeGreaterThan(textWidth('load', 14));
  });

  test('wraps at blanks, and leaves a word that is too long whole', () => {
    expect(wrap('fast run of the second specimen', 14, 80)).toEqual(['fast run of', 'the second', 'specimen']);
    expect(wrap('undividable', 14, 10)).toEqual(['undividable']);
    expect(wrap('', 14, 10)).toEqual([]);
  });

  test('cuts with an ellipsis to the width asked for', () => {
    expect(cut('fast', 14, 100)).toBe('fast');
    const short = cut('a rather long name of a run', 14, 80);
    expect(short).toMatch(/…$/);
    expect(textWidth(short, 14)).toBeLessThanOrEqual(80);
  });
});
