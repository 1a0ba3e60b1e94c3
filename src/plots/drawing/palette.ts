/**
 * The colours of plots, as values of CSS variables, for light and dark paper. Marks name the variable alone; the page's
 * style sheet is made from this table, and downloads have it filled in.
 *
 * The six run colours were searched for so that each has a contrast of at least 4.5:1 with its paper (labels wear them:
 * WCAG 2.2, success criterion 1.4.3) and any two stay apart for normal, protan, deutan and tritan sight (simulated by
 * Machado, Oliveira & Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE
 * TVCG 15(6), 2009, severity 1; distance in OKLab). A test holds both. Dash and marker tell the runs apart as well.
 */

export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly grid: string;
  readonly limit: string;
  /** Run colours in order. */
  readonly runs: readonly [string, string, string, string, string, string];
}

export const LIGHT: Palette = {
  paper: '#fdfcf9',
  ink: '#1c1b19',
  soft: '#5b574f',
  grid: '#e2ded4',
  limit: '#b3001b',
  runs: ['#1f318b', '#922900', '#24807e', '#7c50bc', '#a56412', '#6d1538'],
};

export const DARK: Palette = {
  paper: '#16181a',
  ink: '#e9e6df',
  soft: '#a8a49b',
  grid: '#303337',
  limit: '#ff7d78',
  runs: ['#6f8df0', '#e8873a', '#8fe5da', '#c3adff', '#f0db72', '#c0727c'],
};

/** Most runs (or lines) that one plot can tell apart. */
export const MOST_LINES = 6;

/** Most looks of a run: beyond the colours, a colour comes again with another dash and another marker. */
export const MOST_STYLES = 2 * MOST_LINES;

/** Dash patterns by run, px; the first is solid. */
export const DASHES: readonly (readonly number[])[] = [
  [1, 0],
  [9, 3],
  [4, 3],
  [12, 3, 2, 3],
  [2, 3],
  [7, 2, 2, 2, 2, 2],
];

/** Vega's marker shapes by run. */
export const SHAPES = ['circle', 'square', 'triangle-up', 'diamond', 'triangle-down', 'cross'] as const;

/** Colour variable, dash and marker of a style, from 0. */
export function inkOf(k: number): string {
  const ink = `var(--plot-${(k % MOST_LINES) + 1})`;
  return k < MOST_LINES ? ink : ofRun(ink, k);
}

/** A colour that also says of which style its mark is, where the colour alone does not: pictures that show one run after the other need to know. */
export function ofRun(ink: string, k: number): string {
  return ink.replace(')', `, ${k})`);
}

const SAYS_WHOSE = /(var\(--[a-z0-9-]+), \d+\)/g;

/** An SVG whose colours say no more than colours. */
export function plainColours(svg: string): string {
  return svg.replace(SAYS_WHOSE, '$1)');
}

const OWNER = /var\(--plot-(?:(\d+)|[a-z]+)(?:, (\d+))?\)/g;

/** The style that an element of an SVG belongs to by its colours; null where it belongs to none. */
export function ownerOf(element: string): number | null {
  for (const [, colour, owner] of element.matchAll(OWNER)) {
    if (owner !== undefined) return Number(owner);
    if (colour !== undefined) return Number(colour) - 1;
  }
  return null;
}

export function dashOf(k: number): readonly number[] {
  return DASHES[turned(k)]!;
}

export function shapeOf(k: number): string {
  return SHAPES[turned(k)]!;
}

/** Half way round the patterns when the colours begin anew. */
function turned(k: number): number {
  return (k + Math.floor(k / MOST_LINES) * (MOST_LINES / 2)) % MOST_LINES;
}

/** The CSS variables of a palette: `--plot-ink`, …, `--plot-1` to `--plot-6`. */
export function variables(palette: Palette): ReadonlyMap<string, string> {
  const { runs, ...rest } = palette;
  const named = Object.entries(rest).map(([name, value]) => [`--plot-${name}`, value] as const);
  return new Map([...named, ...runs.map((value, index) => [`--plot-${index + 1}`, value] as const)]);
}

/** Declarations for a style sheet: `--plot-ink: #1c1b19;` one a line. */
export function declarations(palette: Palette): string {
  return [...variables(palette)].map(([name, value]) => `${name}: ${value};`).join('\n');
}

/** Fills in the variables of an SVG, for viewers that know no CSS. Throws on a variable that the palette lacks. */
export function resolvePalette(svg: string, palette: Palette): string {
  const values = variables(palette);
  return svg.replace(/var\((--[a-z0-9-]+)\)/g, (_, name: string) => {
    const value = values.get(name);
    if (value === undefined) throw new Error(`the palette has no ${name}`);
    return value;
  });
}
