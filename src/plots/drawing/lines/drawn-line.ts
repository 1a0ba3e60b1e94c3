/** A line as it is drawn: thinned readings, and means over them where they scatter. */
import type { Point } from '../marks.ts';
import type { Scale } from '../ticks.ts';
import type { Mean } from './means.ts';
import type { Segment } from './segments.ts';
import { thin } from './thin.ts';

/** What a line is drawn from. */
export interface LineData {
  /** Style, from 0. */
  readonly k: number;
  /** Time in the unit of the axis. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly segments: readonly Segment[];
  /** What is drawn heavy over the readings: their means, or a fit; null where the readings themselves are the line. */
  readonly over: readonly Mean[] | null;
}

export interface DrawnLine {
  /** Thin and pale: the readings, where they scatter. */
  readonly faint: readonly Point[];
  /** The line itself: means, or readings that do not scatter. */
  readonly strong: readonly Point[];
}

/** Columns are two pixels wide: finer ones cannot be told apart in a line of 1.5 px. */
const COLUMN = 2;

/** Thins a line to columns of two pixels of a data area `width` px wide. */
export function drawLine(line: LineData, x: Scale, width: number): DrawnLine {
  const grid = { from: x.from, to: x.to, columns: Math.max(1, Math.round(width / COLUMN)) };
  const readings = line.segments.flatMap(({ start, end }, s) =>
    thin(line.x, line.y, grid, start, end).map((i) => ({ x: line.x[i]!, y: line.y[i]!, k: line.k, s })),
  );
  if (!line.over) return { faint: [], strong: readings };
  return { faint: readings, strong: line.over.map((mean) => ({ x: mean.x, y: mean.y, k: line.k, s: mean.segment })) };
}
