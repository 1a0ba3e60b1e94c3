/** The drawn readings as a table to read and as CSV to take away. */

import { runName } from '../data/figure-text.ts';
import type { Drawn } from '../drawing/drawn.ts';
import { cellAt, halfStep, TABLE_ROWS } from '../drawing/lines/at-times.ts';
import { drawLine } from '../drawing/lines/drawn-line.ts';
import { type CsvLine, lineCsv } from '../drawing/lines/line-csv.ts';
import { WIDE } from '../drawing/size.ts';
import { timeScale } from '../drawing/ticks.ts';
import { fixed, withUnit } from '../drawing/wording.ts';
import type { Line, Trace } from './panels.ts';

/** Every drawn point of all lines. */
export function traceCsv(trace: Trace): string {
  const { from, to, time } = trace.alignment;
  const scale = timeScale(from, to, WIDE.timeTicks);
  const told = trace.panels.flatMap((panel) =>
    panel.lines.flatMap((line): CsvLine[] => {
      const { faint, strong } = drawLine(line, scale, WIDE.width);
      const common = { run: runName(trace.runs[line.run]!), channel: line.channelLabel, unit: panel.unit };
      if (!line.over) return [{ ...common, as: 'reading', points: strong }];
      return [
        { ...common, as: 'reading', points: faint },
        { ...common, as: `mean of ${line.meanSpan} s`, points: strong },
      ];
    }),
  );
  return lineCsv(time.unit, told);
}

/** A reading of every line at round times: the one nearest, if it lies within half a row of it. */
export function traceTable(trace: Trace): Drawn['table'] {
  const { from, to, time, atLoad } = trace.alignment;
  const { ticks, decimals } = timeScale(from, to, TABLE_ROWS);
  const all = trace.panels.flatMap((panel) => panel.lines.map((line) => ({ line, panel })));
  const half = halfStep(ticks);
  return {
    caption: `Readings nearest to each time (${time.unit} since ${atLoad ? 'load start' : 'the first row'})`,
    head: [`Time (${time.unit})`, ...all.map(({ line, panel }) => withUnit(columnName(line, panel.heading, trace), panel.unit))],
    rows: ticks.map((tick) => [fixed(tick, decimals), ...all.map(({ line }) => cellAt(line, tick, half))]),
  };
}

function columnName(line: Line, heading: string, trace: Trace): string {
  return trace.panels.length > 1 ? `${heading.toLowerCase()}, ${line.label}` : line.label;
}
