/** Texts of an SVG as outlines of their letters, for a rasteriser that is slow with fonts. */
import type { Face } from './true-type.ts';

export interface Faces {
  readonly regular: Face;
  readonly semibold: Face;
}

const TEXT = /<text([^>]*)>(.*?)<\/text>/g;
const LINE = /<tspan([^>]*)>(.*?)<\/tspan>/g;

/** Replaces each text by one path; a text with a character that the face lacks stays as it is. Kerning is left out. */
export function outlineTexts(svg: string, faces: Faces): string {
  return svg.replace(TEXT, (text: string, attributes: string, content: string) => {
    const face = attributeOf(attributes, 'font-weight') === '600' ? faces.semibold : faces.regular;
    const size = Number.parseFloat(attributeOf(attributes, 'font-size') ?? '16');
    const scale = size / face.em;
    const paths = linesOf(attributes, content).map((line) => linePath(line, attributeOf(attributes, 'text-anchor'), scale, face));
    if (paths.includes(null)) return text;
    const kept = attributes.replace(/ (?:font-[a-z]+|text-anchor|transform|x|y)="[^"]*"/g, '');
    const place = attributeOf(attributes, 'transform') ?? '';
    return `<path${kept} transform="${place}scale(${scale},${-scale})" d="${paths.join('')}"/>`;
  });
}

interface TextLine {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Lines of a text, each at its x and y or, by dy, below the one before. */
function linesOf(attributes: string, content: string): TextLine[] {
  const numberOf = (of: string, name: string) => Number(attributeOf(of, name) ?? Number.NaN);
  const [left, top] = [numberOf(attributes, 'x') || 0, numberOf(attributes, 'y') || 0];
  if (!content.includes('<')) return [{ x: left, y: top, text: unescaped(content) }];
  let y = top;
  return [...content.matchAll(LINE)].map(([, own, text]) => {
    const [x, at] = [numberOf(own!, 'x'), numberOf(own!, 'y')];
    y = Number.isNaN(at) ? y + (numberOf(own!, 'dy') || 0) : at;
    return { x: Number.isNaN(x) ? left : x, y, text: unescaped(text!) };
  });
}

/** Path data in font units; null where a glyph is missing. */
function linePath({ x, y, text }: TextLine, anchor: string | undefined, scale: number, face: Face): string | null {
  const outlines = [...text].map(face.outline);
  const length = outlines.reduce((sum, outline) => sum + (outline?.advance ?? 0), 0);
  const share = anchor === 'end' ? 1 : anchor === 'middle' ? 0.5 : 0;
  let pen = Math.round(x / scale - share * length);
  const base = Math.round(-y / scale);
  const parts: string[] = [];
  for (const outline of outlines) {
    if (outline === undefined) return null;
    if (outline.path !== '') parts.push(`M${pen} ${base}${outline.path}`);
    pen += outline.advance;
  }
  return parts.join('');
}

function attributeOf(attributes: string, name: string): string | undefined {
  return new RegExp(` ${name}="([^"]*)"`).exec(attributes)?.[1];
}

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function unescaped(text: string): string {
  return text.replace(/&(?:#(\d+)|([a-z]+));/g, (whole, code: string | undefined, name: string | undefined) =>
    code === undefined ? (NAMED[name!] ?? whole) : String.fromCodePoint(Number(code)),
  );
}
