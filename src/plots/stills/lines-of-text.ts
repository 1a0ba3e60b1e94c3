/** Texts as drawings: what cards, tables and captions are made of. */
import { escaped } from '../drawing/svg.ts';

export interface TextLook {
  readonly size: number;
  readonly weight: 400 | 600;
  readonly fill: string;
  /** True: the text ends at x. */
  readonly end?: boolean;
}

/** A line of text; `y` is its baseline. */
export function text(words: string, x: number, y: number, { size, weight, fill, end = false }: TextLook): string {
  const anchor = end ? ' text-anchor="end"' : '';
  const bold = weight === 400 ? '' : ` font-weight="${weight}"`;
  return `<text x="${tenths(x)}" y="${tenths(y)}"${anchor} font-size="${size}px"${bold} fill="${fill}">${escaped(words)}</text>`;
}

/** A rule across. */
export function across(x: number, x2: number, y: number, stroke: string, width = 1): string {
  return `<line x1="${tenths(x)}" x2="${tenths(x2)}" y1="${tenths(y)}" y2="${tenths(y)}" stroke="${stroke}" stroke-width="${width}"/>`;
}

/** A drawing of a size. */
export function drawing(width: number, height: number, parts: readonly string[]): string {
  const [w, h] = [Math.ceil(width), Math.ceil(height)];
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}">${parts.join('')}</svg>`;
}

/** Rounded to a tenth of a pixel. */
export function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
