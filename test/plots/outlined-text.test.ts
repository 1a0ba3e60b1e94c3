import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { REGULAR_WIDTHS } from '../../src/plots/glyph-widths.ts';
import { outlineTexts } from '../../src/plots/outlined-text.ts';
import { readFace } from '../../src/plots/true-type.ts';

const FILES = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf'].map((name) =>
  fileURLToPath(import.meta.resolve(`@expo-google-fonts/source-sans-3/${name}`)),
);
const [regular, semibold] = FILES.map((file) => readFace(readFileSync(file)));
const faces = { regular: regular!, semibold: semibold! };

function pixels(svg: string): Uint8Array {
  const font = { loadSystemFonts: false, fontFiles: FILES, defaultFontFamily: 'Source Sans 3' };
  return new Resvg(svg, { font }).render().pixels;
}

const picture = (text: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="300" height="60"><rect width="300" height="60" fill="#fdfcf9"/>${text}</svg>`;

/** Share of the ink by which the picture of outlines differs from the one that the rasteriser sets itself (resvg 0.34). */
function difference(text: string): number {
  const outlined = outlineTexts(picture(text), faces);
  expect(outlined).not.toContain('<text');
  const [ours, theirs] = [pixels(outlined), pixels(picture(text))];
  const ink = theirs.reduce((sum, value, i) => sum + Math.abs(value - theirs[i % 4]!), 0);
  expect(ink).toBeGreaterThan(1000);
  return ours.reduce((sum, value, i) => sum + Math.abs(value - theirs[i]!), 0) / ink;
}

const FAMILY = 'font-family="Source Sans 3" font-kerning="none" fill="#1c1b19"';

describe('plots/outlined-text', () => {
  // Characters one by one, as kerning and ligatures are left out here and not there.
  test('every character looks as the rasteriser sets it', () => {
    const visible = [...new Set(Object.values(REGULAR_WIDTHS).join(''))].filter((c) => !/[\s\u00ad&<]/.test(c));
    for (const weight of [400, 600]) {
      for (let from = 0; from < visible.length; from += 10) {
        const row = visible.slice(from, from + 10);
        const texts = row.map(
          (c, k) => `<text ${FAMILY} font-size="24" font-weight="${weight}" transform="translate(${4 + 29 * k},38)">${c}</text>`,
        );
        expect({ row, share: difference(texts.join('')) < 0.03 }).toEqual({ row, share: true });
      }
    }
  });

  test.each([
    ['end', '<text text-anchor="end" x="290" y="30" font-size="16px">100</text>'],
    ['middle', '<text text-anchor="middle" transform="translate(150,30)" font-size="16px">100</text>'],
    ['lines at places', '<text font-size="14"><tspan x="20" y="20">100</tspan><tspan x="40" y="45">0.5</tspan></text>'],
    ['lines below each other', '<text y="20" font-size="14"><tspan x="20">100</tspan><tspan x="20" dy="16">0.5</tspan></text>'],
    ['characters that XML names', '<text x="9" y="30" font-size="16">&lt;&amp;&#60;</text>'],
  ])('stands where the rasteriser sets it: %s', (_, text) => {
    expect(difference(text.replace('<text', `<text ${FAMILY}`))).toBeLessThan(0.03);
  });

  test('a text with a character that the face lacks stays a text', () => {
    const text = picture('<text x="4" y="30">\u{1F9EA}</text>');
    expect(outlineTexts(text, faces)).toBe(text);
  });
});
