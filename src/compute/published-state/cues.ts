/** What a script has on screen, and which of its cues need a new still: a plot that is drawn from other data is another picture. */
import { plotsOn } from '../../words/script/on-screen.ts';
import type { Plan } from '../../words/script/plan.ts';
import { clockTime } from '../../words/script/timeline.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';

/** A cue with the plots that it shows. */
export interface ShownCue {
  /** When it is due: "1:05". */
  readonly at: string;
  readonly line: number;
  readonly column: number;
  /** `of` is the key of the note or script that draws it: `notes/<slug>`. */
  readonly plots: readonly { readonly of: string; readonly id: string; readonly title: string }[];
}

/** A plot that has to be drawn anew for the video. */
export interface NewStill extends Omit<ShownCue, 'plots'> {
  readonly title: string;
}

interface Drawn {
  /** The key of the note or script. */
  readonly of: string;
  readonly plots: readonly (PlotResult | null)[];
}

/** The cues of a planned script that show plots; `note` is the one that it speaks for. */
export function shownCues({ blocks }: Plan, script: Drawn, note: Drawn | undefined): ShownCue[] {
  return blocks.flatMap(({ block, from }) => {
    if (block.kind !== 'cue') return [];
    const { own, others } = plotsOn(block, script.plots, note?.plots ?? []);
    const by = (of: string) => (plot: PlotResult) => ({ of, id: plot.id, title: plot.title });
    const plots = [...own.map(by(script.of)), ...others.map(by(note?.of ?? ''))];
    return plots.length === 0 ? [] : [{ at: clockTime(from), line: block.line, column: block.column, plots }];
  });
}

/** Of some cues the plots that are drawn otherwise; `redrawn` are their ids, by the key of what draws them. */
export function newStills(cues: readonly ShownCue[], redrawn: ReadonlyMap<string, ReadonlySet<string>>): NewStill[] {
  return cues.flatMap(({ plots, ...cue }) =>
    plots.filter(({ of, id }) => redrawn.get(of)?.has(id)).map(({ title }) => ({ ...cue, title })),
  );
}

/** A line for each, for the terminal. */
export function stillLines(file: string, stills: readonly NewStill[]): string[] {
  return stills.map(({ line, column, at, title }) => `${file}:${line}:${column}: at ${at}, “${title}”`);
}
