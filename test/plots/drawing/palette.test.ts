import { describe, expect, test } from 'vitest';
import {
  DARK,
  DASHES,
  declarations,
  inkOf,
  LIGHT,
  MOST_LINES,
  ofRun,
  ownerOf,
  type Palette,
  plainColours,
  resolvePalette,
  SHAPES,
  variables,
} from '../../../src/plots/drawing/palette.ts';
import { contrast, linear, type Rgb } from '../../contrast.ts';

/** Machado, Oliveira & Fernandes, IEEE TVCG 15(6), 2009, matrices of severity 1.0, for linear RGB. */
const SIGHT: Readonly<Record<string, readonly number[]>> = {
  normal: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

function seen(m: readonly number[], [r, g, b]: Rgb): Rgb {
  const at = (i: number) => Math.min(1, Math.max(0, m[i]! * r + m[i + 1]! * g + m[i + 2]! * b));
  return [at(0), at(3), at(6)];
}

/** OKLab of linear sRGB: B. Ottosson, "A perceptual color space for image processing", 2020 (from memory). */
function oklab([r, g, b]: Rgb): Rgb {
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

const distance = (a: Rgb, b: Rgb) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const PALETTES: readonly (readonly [string, Palette])[] = [
  ['light', LIGHT],
  ['dark', DARK],
];

describe('plots/drawing/palette', () => {
  test('the contrast of the test is that of WCAG: black on white is 21, #767676 on white just passes 4.5', () => {
    expect(contrast('#000000', '#ffffff')).toBe(21);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  // WCAG 2.2: 1.4.3 text 4.5:1 (labels wear the colour of their line), 1.4.11 graphical objects 3:1.
  test.each(PALETTES)('%s: everything that is read or traced stands out from the paper', (_, palette) => {
    for (const colour of [palette.ink, palette.soft, palette.limit, ...palette.runs]) {
      expect(contrast(colour, palette.paper), colour).toBeGreaterThanOrEqual(4.5);
    }
  });

  // 0.02 in OKLab is about one just noticeable difference; four of them for lines of different dash and marker.
  test.each(PALETTES)('%s: any two runs differ for normal, protan, deutan and tritan sight', (_, palette) => {
    for (const [sight, matrix] of Object.entries(SIGHT)) {
      const colours = palette.runs.map((hex) => oklab(seen(matrix, linear(hex))));
      colours.forEach((a, i) => {
        for (let j = i + 1; j < colours.length; j += 1)
          expect(distance(a, colours[j]!), `${sight} ${i} ${j}`).toBeGreaterThan(0.08);
      });
    }
  });

  test('every run has its own colour, dash and marker', () => {
    for (const each of [LIGHT.runs, DARK.runs, DASHES.map(String), SHAPES]) {
      expect(new Set(each).size).toBe(MOST_LINES);
      expect(each).toHaveLength(MOST_LINES);
    }
  });

  test('light and dark name the same variables', () => {
    expect([...variables(LIGHT).keys()]).toEqual([...variables(DARK).keys()]);
    expect([...variables(LIGHT).keys()]).toContain('--plot-6');
    expect(declarations(LIGHT)).toContain(`--plot-ink: ${LIGHT.ink};`);
  });

  test('variables are filled in, and one that is unknown is refused', () => {
    expect(resolvePalette('<path stroke="var(--plot-1)"/>', DARK)).toBe(`<path stroke="${DARK.runs[0]}"/>`);
    expect(() => resolvePalette('<path stroke="var(--plot-7)"/>', DARK)).toThrow('--plot-7');
  });
});

describe('whose a mark is', () => {
  test('is told by its colour, or beside it where a colour comes again or is nobody’s', () => {
    expect([inkOf(0), inkOf(5)].map(ownerOf)).toEqual([0, 5]);
    expect([inkOf(6), inkOf(11)].map(ownerOf)).toEqual([6, 11]);
    expect(ownerOf(`<line stroke="${ofRun('var(--plot-soft)', 3)}"/>`)).toBe(3);
    expect(ownerOf('<path stroke="var(--plot-soft)" fill="var(--plot-paper)"/>')).toBeNull();
  });

  test('is in no drawing of a page', () => {
    expect(plainColours(`${inkOf(7)} ${ofRun('var(--plot-ink)', 2)}`)).toBe('var(--plot-2) var(--plot-ink)');
  });
});
