/** From what of the log each figure was made, as stretches of the trace that its page shows. */
import { isPresent } from '../../figures/figure.ts';
import type { Along } from '../../plots/drawing/drawn.ts';
import { shownFigure } from '../contents/figure-text.ts';
import type { ComputedRun } from '../contents/site-contents.ts';
import type { Evidence, TraceWindow } from '../models/run.ts';
import type { PagePlot, RunModel } from '../results.ts';

/** A single row is shown this wide, px. */
const LEAST = 3;
/** As many stretches as the style sheet has rules for. */
const MOST_WINDOWS = 24;

/** One entry a figure of the log; those made from the same rows share a stretch. None where the page has no trace. */
export function evidenceOf({ derived, summary }: ComputedRun, plots: readonly PagePlot[]): Pick<RunModel, 'evidence' | 'windows'> {
  const along = plots.find(({ id }) => id === 'trace')?.along;
  if (along === undefined) return { evidence: [], windows: [] };
  const keys: string[] = [];
  const windows: TraceWindow[] = [];
  const evidence = [...derived.figures].flatMap(([address, figure]): Evidence[] => {
    const rows = summary.windows[address];
    if (!isPresent(figure) || rows === undefined) return [];
    const key = rows.join(' ');
    if (!keys.includes(key)) {
      if (keys.length === MOST_WINDOWS) return [];
      keys.push(key);
      windows.push(windowOf(rows, along));
    }
    return [{ figure: shownFigure(address, figure), window: keys.indexOf(key) }];
  });
  return { evidence, windows };
}

function windowOf([from, to]: readonly [number, number], along: Along): TraceWindow {
  const share = (second: number) => {
    const value = (second - along.zero) / along.seconds;
    return Math.min(Math.max((value - along.from) / (along.to - along.from), 0), 1);
  };
  const at = ([left, width]: readonly [number, number]) =>
    [tenth(left + share(from) * width), tenth(Math.max((share(to) - share(from)) * width, LEAST))] as const;
  return { wide: at(along.wide), narrow: at(along.narrow) };
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
