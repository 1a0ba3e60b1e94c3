/** A picture: its title, what it shows, and small at its foot of what, when and where to read more. */
import { FONT } from '../drawing/marks.ts';
import { plainColours, resolvePalette } from '../drawing/palette.ts';
import { sizeOf } from '../drawing/svg.ts';
import { cut, textWidth } from '../drawing/text-width.ts';
import { FOOT_LINE, type Format, INNER_WIDTH, SMALL_SIZE, TITLE_LINE, TITLE_SIZE, titleLines, WIDTH } from './format.ts';
import { type TextLook, tenths, text } from './lines-of-text.ts';
import { edgesOf, type Look } from './looks.ts';

/** What stands at the foot. */
export interface Foot {
  /** "Larch 2 (invented), 22 March 2026". */
  readonly of: string;
  /** "bench.example/notes/a-clock-it-cannot-keep/"; '' where nobody knows where the site will stand. */
  readonly address: string;
}

export interface Picture {
  /** '' for none. */
  readonly title: string;
  /** An SVG with its size, colours as variables, texts by their size. */
  readonly body: string;
  readonly foot: Foot;
}

/** Least distance of the two parts of the foot, px. */
const APART = 16;
/** Edges of letters: on paper so that a line behind stays apart, without paper so that they can be read on anything. */
const EDGE_ON_PAPER = 3;
const EDGE_ALONE = 2.5;

/** The whole picture as an SVG that stands alone. */
export function compose({ title, body, foot }: Picture, format: Format, { palette, paper }: Look): string {
  const lines = title === '' ? [] : titleLines(title);
  const footed = footLines(foot);
  const top = format.y + lines.length * TITLE_LINE;
  const bottom = format.height - format.y - footed.length * FOOT_LINE;
  const [, height] = sizeOf(body);
  const scale = scaleIn(body, bottom - top);
  const at = `translate(${format.x},${tenths(top + (bottom - top - scale * height) / 2)})${scale < 1 ? ` scale(${scale})` : ''}`;
  const edged = (svg: string) => svg.replaceAll('<text ', `<text ${edge(paper ? EDGE_ON_PAPER : EDGE_ALONE)} `);
  const group = (svg: string) => `<g transform="${at}">${svg.replace(/^<svg\b[^>]*>/, '').replace(/<\/svg>$/, '')}</g>`;
  const inside = [
    ...(paper ? [`<rect width="${WIDTH}" height="${format.height}" fill="var(--plot-paper)"/>`] : []),
    ...(paper ? [] : [group(edgesOf(body))]),
    ...lines.map((line, i) =>
      text(line, format.x, format.y + (i + 0.76) * TITLE_LINE, { size: TITLE_SIZE, weight: 600, fill: 'var(--plot-ink)' }),
    ),
    group(body),
    ...footed.flatMap((line, i) => footLine(line, format.height - format.y - (footed.length - 1 - i) * FOOT_LINE - 4, format)),
  ].map(edged);
  const open = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${format.height}" viewBox="0 0 ${WIDTH} ${format.height}" font-family="${FONT}">`;
  return resolvePalette(plainColours(`${open}${inside.join('')}</svg>`), palette);
}

/** 1 where a body fits into a height; less where it has to be made smaller, its type with it. */
export function scaleIn(body: string, height: number): number {
  return Math.min(1, height / sizeOf(body)[1], INNER_WIDTH / sizeOf(body)[0]);
}

interface FootLine {
  readonly left: string;
  readonly right: string;
}

/** One line where both parts fit, else two. */
function footLines({ of, address }: Foot): FootLine[] {
  const long = textWidth(of, SMALL_SIZE) + APART + textWidth(address, SMALL_SIZE);
  if (of === '' && address === '') return [];
  if (long <= INNER_WIDTH) return [{ left: of, right: address }];
  return [of, address].map((part) => ({ left: cut(part, SMALL_SIZE, INNER_WIDTH), right: '' }));
}

function footLine({ left, right }: FootLine, y: number, { x }: Format): string[] {
  const look: TextLook = { size: SMALL_SIZE, weight: 400, fill: 'var(--plot-soft)' };
  return [
    ...(left === '' ? [] : [text(left, x, y, look)]),
    ...(right === '' ? [] : [text(right, WIDTH - x, y, { ...look, end: true })]),
  ];
}

function edge(width: number): string {
  return `paint-order="stroke" stroke="var(--plot-paper)" stroke-width="${width}" stroke-linejoin="round"`;
}
