/** What becomes of Vega's SVG: small, safe to inline beside others, labelled; and composed into a picture that stands alone. */
import { FONT } from './marks.ts';
import type { Palette } from './palette.ts';
import { plainColours, resolvePalette } from './palette.ts';
import { relativePath } from './relative-path.ts';
import { textWidth, wrap } from './text-width.ts';

const GEOMETRY = / (d|x|y|x1|x2|y1|y2|dx|dy|width|height|transform)="([^"]*)"/g;
const LONG_DECIMAL = /-?\d*\.\d{2,}(?:e-?\d+)?/g;
const FAMILY = ` font-family="${FONT}"`;

/**
 * Makes an SVG fit to stand in a page: ids prefixed, coordinates rounded to 0.1 px, what is not seen dropped, the
 * whole labelled as one image.
 */
export function inline(svg: string, prefix: string, title: string): string {
  return labelled(prefixed(held(shortened(tidied(plainColours(svg)))), prefix), title);
}

/** Makes an SVG fit to stand in a still: coordinates rounded, what is not seen dropped. Its colours still say whose each mark is. */
export function bare(svg: string): string {
  return shortened(tidied(svg));
}

const PATH = / d="([^"]*)"/g;

/** Lines as steps from point to point: half the bytes. */
function shortened(svg: string): string {
  return svg.replace(PATH, (_, d: string) => ` d="${relativePath(d)}"`);
}

const TEXT = /<text\b([^>]*?) font-size="([\d.]+)px"([^>]*)>((?:[^<]|<\/?tspan\b[^>]*>)*)<\/text>/g;
const LINE = /<tspan\b([^>]*)>([^<]*)<\/tspan>/g;
const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

/** Each line of text is as wide as it was planned, whichever font the reader's browser has: none leaves the drawing, none runs into another. */
function held(svg: string): string {
  return svg.replace(TEXT, (_, before: string, size: string, after: string, inner: string) => {
    const own = inner.includes('<tspan') ? '' : widthOf(inner, Number(size));
    const lines = inner.replace(
      LINE,
      (_line, look: string, text: string) => `<tspan${look}${widthOf(text, Number(size))}>${text}</tspan>`,
    );
    return `<text${before} font-size="${size}px"${after}${own}>${lines}</text>`;
  });
}

/** The attributes that hold a line of text to its width; none for a single character, which nothing would be gained by. */
function widthOf(text: string, size: number): string {
  const plain = text.replace(/&(amp|lt|gt|quot);/g, (_, name: string) => ENTITIES[name]!);
  const width = rounded(String(textWidth(plain, size)));
  return plain.trim().length < 2 ? '' : ` textLength="${width}" lengthAdjust="spacingAndGlyphs"`;
}

/** Rounds coordinates and drops what is not seen: hidden shapes, Vega's own classes and roles, defaults. */
function tidied(svg: string): string {
  return svg
    .replace(/<path class="(?:background|foreground)" [^>]*\/>/g, '')
    .replace(/ (?:aria-hidden|aria-roledescription|role|class|pointer-events|xmlns:xlink|version)="[^"]*"/g, '')
    .replace(
      / (?:opacity="1"|stroke-width="1"|font-weight="normal"|stroke-dasharray="1,0"|text-anchor="start"|transform="translate\(0,0\)")/g,
      '',
    )
    .replaceAll(' xlink:href=', ' href=')
    .replaceAll(FAMILY, '')
    .replace(GEOMETRY, (_, name: string, value: string) => ` ${name}="${value.replace(LONG_DECIMAL, rounded)}"`);
}

function rounded(number: string): string {
  return String(Math.round(Number(number) * 10) / 10 + 0);
}

function prefixed(svg: string, prefix: string): string {
  return svg.replace(/\bid="/g, `id="${prefix}-`).replace(/url\(#/g, `url(#${prefix}-`);
}

function labelled(svg: string, title: string): string {
  return svg.replace(/^<svg\b/, `<svg role="img" aria-label="${escaped(title)}"${FAMILY}`);
}

/** Text as XML. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (character) => `&#${character.codePointAt(0)};`);
}

export interface Caption {
  readonly title: string;
  readonly method: string;
}

const MARGIN = 20;
/** Where a line passes below a text, the text has an edge of paper; in a page the style sheet gives it. */
const EDGE = 'paint-order="stroke" stroke="var(--plot-paper)" stroke-width="3" stroke-linejoin="round"';
const TITLE_SIZE = 18;
const METHOD_SIZE = 12;

/** A picture that stands alone: paper, title, drawing, how it was made; colours filled in. */
export function standalone(svg: string, caption: Caption, palette: Palette): string {
  const [width, height] = sizeOf(svg);
  const title = wrap(caption.title, TITLE_SIZE, width, 'semibold');
  const method = wrap(caption.method, METHOD_SIZE, width);
  const top = MARGIN + title.length * (TITLE_SIZE + 4) + 10;
  const whole = Math.ceil(top + height + 14 + method.length * (METHOD_SIZE + 4) + MARGIN);
  const inner = svg
    .replace(/^<svg\b[^>]*>/, `<g transform="translate(${MARGIN},${top})"${FAMILY}>`)
    .replace(/<\/svg>$/, '</g>')
    .replaceAll('<text ', `<text ${EDGE} `);
  const outer = width + 2 * MARGIN;
  return resolvePalette(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${outer}" height="${whole}" viewBox="0 0 ${outer} ${whole}" role="img" aria-label="${escaped(caption.title)}">` +
      `<rect width="${outer}" height="${whole}" fill="var(--plot-paper)"/>` +
      block(title, MARGIN, MARGIN + TITLE_SIZE * 0.8, TITLE_SIZE, 'var(--plot-ink)', '600') +
      inner +
      block(method, MARGIN, top + height + 14 + METHOD_SIZE, METHOD_SIZE, 'var(--plot-soft)', '400') +
      '</svg>',
    palette,
  );
}

function block(lines: readonly string[], x: number, y: number, size: number, fill: string, weight: string): string {
  const spans = lines.map((line, k) => `<tspan x="${x}" y="${y + k * (size + 4)}">${escaped(line)}</tspan>`).join('');
  return `<text font-family="${FONT}" font-size="${size}" font-weight="${weight}" fill="${fill}">${spans}</text>`;
}

/** Width and height that an SVG states, px. */
export function sizeOf(svg: string): [number, number] {
  const [, width, height] = /^<svg\b[^>]*? width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
  if (width === undefined || height === undefined) throw new Error('an SVG without a size');
  return [Number(width), Number(height)];
}
