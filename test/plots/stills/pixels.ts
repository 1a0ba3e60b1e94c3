/** Pictures of the tests as pixels. */
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';

const FONTS = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf'].map((name) =>
  fileURLToPath(import.meta.resolve(`@expo-google-fonts/source-sans-3/${name}`)),
);

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, alpha of each, row by row. */
  readonly rgba: Uint8Array;
}

/** An SVG rastered `width` px wide; without fonts where `fonts` is false. */
export function pixelsOf(svg: string, width: number, fonts = true): Pixels {
  const image = new Resvg(svg, {
    font: {
      loadSystemFonts: false,
      fontFiles: fonts ? FONTS : [],
      defaultFontFamily: 'Source Sans 3',
      sansSerifFamily: 'Source Sans 3',
    },
    fitTo: { mode: 'width', value: width },
  }).render();
  return { width: image.width, height: image.height, rgba: image.pixels };
}

/** How many pixels differ, of those that `counts` names by their index. */
export function differing(one: Pixels, other: Pixels, counts: (index: number) => boolean = () => true): number {
  let count = 0;
  for (let i = 0; i < one.width * one.height; i += 1) {
    if (!counts(i)) continue;
    if ([0, 1, 2, 3].some((c) => one.rgba[4 * i + c] !== other.rgba[4 * i + c])) count += 1;
  }
  return count;
}
