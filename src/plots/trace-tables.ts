/** The drawn readings as a table to read and as CSV to take away. */

import { csv } from './csv.ts';
import type { Drawn } from './drawn.ts';
import { drawLine } from './drawn-line.ts';
import type { Point } from './marks.ts';
import { nearestIndex } from './panel.ts';
import { WIDE } from './size.ts';
import { timeScale } from './ticks.ts';
import type { Line, Trace } from './trace.ts';
import { fixed, withUnit } from './wording.ts';

/** About how many rows the short table has. */
const ROWS = 16;

/** Every drawn point: run, channel, time, value, unit, and whether it is a reading or a mean. Breaks of the line are not rows. */
export function traceCsv(trace: Trace): string {
  const { from, to, time } = trace.alignment;
  const head = ['run', 'channel', `time_${time.unit}`, 'value', 'unit', 'drawn_as'];
  const rows = trace.panels.flatMap((panel) =>
    panel.lines.flatMap((line) => {
      const { faint, strong } = drawLine(line, timeScale(from, to, WIDE.timeTicks), WIDE.width);
      const told = (points: readonly Point[], as: string) =>
        points.flatMap(({ x, y }) => (y === null ? [] : [[line.alias, line.channel, x, y, panel.unit, as]]));
      return line.over ? [...told(faint, 'reading'), ...told(strong, `mean of ${trace.meanSpan} s`)] : told(strong, 'reading');
    }),
  );
  return csv([head, ...rows]);
}

/** A reading of every line at round times: the one nearest, if it lies within half a row of it. */
export function traceTable(trace: Trace): Drawn['table'] {
  const { ticks, decimals } = timeScale(trace.alignment.from, trace.alignment.to, ROWS);
  const all = trace.panels.flatMap((panel) => panel.lines.map((line) => ({ line, panel })));
  const half = ticks.length > 1 ? (ticks[1]! - ticks[0]!) / 2 : Number.POSITIVE_INFINITY;
  return {
    caption: `Readings nearest to each time (${trace.alignment.time.unit} since ${trace.alignment.atLoad ? 'load start' : 'the first row'})`,
    head: [
      `Time (${trace.alignment.time.unit})`,
      ...all.map(({ line, panel }) => withUnit(columnName(line, panel.heading, trace), panel.unit)),
    ],
    rows: ticks.map((tick) => [fixed(tick, decimals), ...all.map(({ line }) => cellAt(line, tick, half))]),
  };
}

function columnName(line: Line, heading: string, trace: Trace): string {
  const what = trace.panels.length > 1 ? `${heading.toLowerCase()}, ${line.label}` : line.label;
  return what === '' ? line.channel : what;
}

function cellAt(line: Line, time: number, half: number): string {
  const i = nearestIndex(line.x, time);
  return Math.abs(line.x[i]! - time) > half ? '' : fixed(line.y[i]!, line.decimals);
}
