import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { REGULAR_WIDTHS } from '../../src/plots/glyph-widths.ts';
import { readFace } from '../../src/plots/true-type.ts';

const FILES = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf'].map((name) =>
  readFileSync(fileURLToPath(import.meta.resolve(`@expo-google-fonts/source-sans-3/${name}`))),
);
const [regular] = FILES.map(readFace);
const CHARACTERS = [...new Set(Object.values(REGULAR_WIDTHS).join(''))];

describe('plots/true-type', () => {
  test.each(FILES.map((file) => [file] as const))('every character that plots measure has an outline in the face', (file) => {
    const face = readFace(file);
    expect(CHARACTERS.filter((character) => face.outline(character) === undefined)).toEqual([]);
  });

  test('advances are those by which plots measure', () => {
    for (const [width, characters] of Object.entries(REGULAR_WIDTHS)) {
      for (const character of characters) expect(regular!.outline(character)!.advance).toBe(Number(width));
    }
  });

  test('a blank has no path; a character without a glyph has no outline', () => {
    expect(regular!.outline(' ')).toEqual({ advance: 200, path: '' });
    expect(regular!.outline('\u{1F9EA}')).toBeUndefined();
  });

  test('a path is relative and closed', () => {
    for (const character of CHARACTERS) expect(regular!.outline(character)!.path).toMatch(/^(?:m[-\d. lq]+z)*$/);
  });

  test('a file that is no font is refused', () => {
    expect(() => readFace(Buffer.from('no font at all, but long enough'))).toThrow(RangeError);
  });
});
