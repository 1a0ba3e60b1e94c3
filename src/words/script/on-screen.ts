/** What is on screen while something is said: of which runs the numbers speak, and which runs the pictures show. */
import { figuresOf } from '../../figures/catalogue.ts';
import type { LedgerEntry } from '../written.ts';
import type { CueBlock, ScriptText } from './script.ts';

/** What a script needs to know of a plot: its id and the aliases of its runs; none where it draws no single runs. */
export interface KnownPlot {
  readonly id: string;
  readonly runs: readonly { readonly alias: string; readonly run: string }[];
}

export interface ScreenFault {
  readonly cue: CueBlock;
  readonly rule: 'unknown-picture' | 'off-screen';
  readonly found: string;
  readonly expected: string;
}

/**
 * Holds each cue against what is said from it to the next: a picture that there is none of, and runs that the numbers speak of and none of
 * the pictures shows. `own` are the plots of the script in its order, `others` those of the note that it speaks for. Of a comparison no
 * picture need be seen: what it says follows from runs that are.
 */
export function screenFaults(
  script: ScriptText,
  entries: readonly LedgerEntry[],
  own: readonly KnownPlot[],
  others: readonly KnownPlot[],
): ScreenFault[] {
  const cues = script.flatMap((block, index) => (block.kind === 'cue' ? [{ cue: block, index }] : []));
  return cues.flatMap(({ cue, index }, at) => {
    const named = cue.shows.map((id) => ({ id, plot: plotNamed(id, [...own, ...others]) }));
    const unknown = named.filter(({ plot }) => plot === undefined).map(({ id }) => unknownPicture(cue, id, [...own, ...others]));
    const shown = [...picturesIn(cue, own), ...named.flatMap(({ plot }) => (plot ? [plot] : []))].flatMap(({ runs }) => runs);
    const until = cues[at + 1]?.index ?? script.length;
    return [...unknown, ...offScreen(cue, shown, saidRuns(script.slice(index + 1, until), entries))];
  });
}

/** The plot of an id, or the only one whose id begins with a shorter name: `trace` for `trace-soc-rated-fast`. */
export function plotNamed<T extends { readonly id: string }>(name: string, plots: readonly T[]): T | undefined {
  // An address within the page is `plot-` and the id; plots of notes are known by their addresses.
  const bare = (id: string) => id.replace(/^plot-/, '');
  const whole = plots.find(({ id }) => id === name || bare(id) === bare(name));
  const fitting = plots.filter(({ id }) => bare(id).startsWith(`${bare(name)}-`));
  return whole ?? (new Set(fitting.map(({ id }) => id)).size === 1 ? fitting[0] : undefined);
}

/** The plots that stand in a cue. */
function picturesIn<T>({ html }: CueBlock, own: readonly (T | null)[]): T[] {
  return html.flatMap((piece) => (typeof piece === 'object' && 'plot' in piece ? (own[piece.plot] ?? []) : []));
}

/** The plots that a cue shows, each once: those of the script, in it or named by it, and those of the note that it names. `own` are in the order of the script. */
export function plotsOn<T extends { readonly id: string }>(
  cue: CueBlock,
  own: readonly (T | null)[],
  others: readonly (T | null)[],
): { readonly own: readonly T[]; readonly others: readonly T[] } {
  const [mine, theirs] = [own, others].map((plots) => plots.filter((plot) => plot !== null)) as [T[], T[]];
  const named = cue.shows.flatMap((name) => plotNamed(name, [...mine, ...theirs]) ?? []);
  const ofOwn = [...picturesIn(cue, own), ...named.filter((plot) => mine.includes(plot))];
  return { own: [...new Set(ofOwn)], others: [...new Set(named.filter((plot) => !mine.includes(plot)))] };
}

function unknownPicture(cue: CueBlock, id: string, known: readonly KnownPlot[]): ScreenFault {
  const ids = [...new Set(known.map((plot) => `\`${plot.id}\``))];
  const expected =
    ids.length === 0
      ? 'a plot of the script or of its note, and there are none'
      : `a plot of the script or of its note: ${ids.join(', ')}`;
  return { cue, rule: 'unknown-picture', found: `a cue that shows \`${id}\``, expected };
}

interface Said {
  readonly alias: string;
  readonly run: string;
}

/** The runs of which numbers are said, each once. */
function saidRuns(blocks: ScriptText, entries: readonly LedgerEntry[]): Said[] {
  const said = blocks.flatMap(({ kind, said }) => (kind === 'said' ? said : []));
  const held = said.flatMap((piece) => (typeof piece === 'string' ? [] : (entries[piece.held - 1]?.held ?? [])));
  const measured = held.filter(({ figure }) => figure !== undefined && !isCompared(figure));
  return [...new Map(measured.map(({ alias, subject }) => [subject, { alias, run: subject }])).values()];
}

const COMPARED: ReadonlySet<string> = new Set(figuresOf('comparison'));

/** Whether a figure is of a comparison. */
function isCompared(figure: string): boolean {
  return COMPARED.has(figure);
}

function offScreen(cue: CueBlock, shown: readonly Said[], said: readonly Said[]): ScreenFault[] {
  const missing = said.filter(({ run }) => !shown.some((each) => each.run === run));
  // Comparisons are no runs, and a picture of none (a photograph, a table) shows none of them.
  const runs = shown.length === 0 ? [] : missing;
  if (runs.length === 0) return [];
  const names = (all: readonly Said[]) => [...new Set(all.map(({ alias }) => alias))].join(', ');
  return [
    {
      cue,
      rule: 'off-screen',
      found: `numbers of ${names(runs)} are said while the screen shows ${names(shown)}`,
      expected: 'a picture that shows the runs that are spoken of, or another cue before they are',
    },
  ];
}
