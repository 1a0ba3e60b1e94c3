/** A picture of an SVG for feeds, video and slides. */
import { fileURLToPath } from 'node:url';
import { Resvg, type ResvgRenderOptions, renderAsync } from '@resvg/resvg-js';

const FONTS = [
  '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
].map((name) => fileURLToPath(import.meta.resolve(name)));

const FONT = {
  loadSystemFonts: false,
  fontFiles: FONTS,
  defaultFontFamily: 'Source Sans 3',
  sansSerifFamily: 'Source Sans 3',
} satisfies ResvgRenderOptions['font'];

/** Pixels of the picture for one of the drawing. */
export const PNG_SCALE = 1.5;

/**
 * Rasters an SVG without variables to a PNG, in base64, at one and a half its size: 1140 px for a wide drawing. The fonts
 * come with the project and no other is looked for, so that the bytes are the same on every machine; the work is done off
 * the main thread.
 */
export async function png(svg: string): Promise<string> {
  const image = await renderAsync(svg, { font: FONT, fitTo: { mode: 'zoom', value: PNG_SCALE } });
  return image.asPng().toString('base64');
}

/** The same as bytes, `width` px wide. */
export async function pngOfWidth(svg: string, width: number): Promise<Uint8Array> {
  return (await renderAsync(svg, { font: FONT, fitTo: { mode: 'width', value: width } })).asPng();
}

/** An SVG whose letters are outlines, so that it looks the same where nobody has the font. It states the size of a picture `width` px wide. */
export function outlined(svg: string, width: number): string {
  const drawn = new Resvg(svg, { font: FONT });
  const height = Math.round((width * drawn.height) / drawn.width);
  return drawn.toString().replace(/^<svg width="[^"]*" height="[^"]*"/, `<svg width="${width}" height="${height}"`);
}
