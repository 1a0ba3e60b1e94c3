/** Drawn lines as CSV. */
import { csv } from '../csv.ts';
import type { Point } from '../marks.ts';

export interface CsvLine {
  readonly run: string;
  readonly channel: string;
  readonly unit: string;
  /** What the points are: a reading, a mean, a fit. */
  readonly as: string;
  readonly points: readonly Pick<Point, 'x' | 'y'>[];
}

/** One row a point: run, channel, time, value, unit, and what it is. */
export function lineCsv(time: string, lines: readonly CsvLine[]): string {
  const head = ['run', 'channel', `time_${time}`, 'value', 'unit', 'drawn_as'];
  const rows = lines.flatMap(({ run, channel, unit, as, points }) => points.map(({ x, y }) => [run, channel, x, y, unit, as]));
  return csv([head, ...rows]);
}
