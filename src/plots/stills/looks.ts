/** How a picture is coloured: on light paper, on dark, or on nothing, to be laid over footage. */
import { DARK, LIGHT, type Palette } from '../drawing/palette.ts';

export interface Look {
  readonly name: 'light' | 'dark' | 'transparent';
  readonly palette: Palette;
  /** Without paper every line and letter has an edge of it, since nobody knows what lies behind. */
  readonly paper: boolean;
}

export const LOOKS: readonly Look[] = [
  { name: 'light', palette: LIGHT, paper: true },
  { name: 'dark', palette: DARK, paper: true },
  { name: 'transparent', palette: { ...DARK, soft: '#d2cec6', grid: '#6f7278' }, paper: false },
];

const STROKED = /<(?:path|line)\b[^>]*\bstroke="var\(--plot-(?!grid)[^>]*\/>/g;
/** Width of the edge on each side of a line, px. */
const EDGE = 1;

/** The edges of a drawing's lines and signs, to lie below it: each line wider and in the colour of paper. */
export function edgesOf(svg: string): string {
  const open = /^<svg\b[^>]*>/.exec(svg)?.[0] ?? '';
  const inner = svg.slice(open.length).replace(/<text\b[^>]*>(?:[^<]|<\/?tspan\b[^>]*>)*<\/text>/g, '');
  const kept: string[] = [];
  const marked = inner.replace(STROKED, (element) => {
    kept.push(edge(element));
    return `\0${kept.length - 1}\0`;
  });
  const alone = marked.replace(/<(?:path|line|rect)\b[^>]*\/>/g, '').replace(/\0(\d+)\0/g, (_, at: string) => kept[Number(at)]!);
  return open + alone;
}

function edge(element: string): string {
  const width = Number(/stroke-width="([\d.]+)"/.exec(element)?.[1] ?? 1);
  return element
    .replace(/ (?:stroke-width|stroke-dasharray|stroke-opacity)="[^"]*"/g, '')
    .replace(/\bstroke="[^"]*"/, `stroke="var(--plot-paper)" stroke-width="${width + 2 * EDGE}" stroke-linecap="round"`);
}
