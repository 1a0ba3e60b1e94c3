/** Means over short equal spans, for lines whose readings scatter: drawn heavy over the readings themselves. */
import type { Segment } from './segments.ts';

/** Spans that people know, s. */
const SPANS = [1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 43_200, 86_400];
/** About how many means a line is drawn with. */
const COUNT = 160;
/** Readings scatter when their range in a span is, at the median, more than this share of the axis … */
const SCATTER = 0.012;
/** … and a span holds at least this many of them. */
const LEAST = 4;

/** The span of the means, s, for a time axis of that length in s. */
export function spanOfMeans(length: number): number {
  return SPANS.find((span) => span >= length / COUNT) ?? SPANS.at(-1)!;
}

export interface Mean {
  readonly x: number;
  readonly y: number;
  /** Position of its segment. */
  readonly segment: number;
}

/** Means over spans, and how far the readings in them scatter. */
export interface SpanMeans {
  readonly means: readonly Mean[];
  /** Median range of the readings within a span. */
  readonly scatter: number;
}

/**
 * Means of time and reading in spans of `width` (unit of x) counted from x = 0, so that none straddles the start of the
 * load; or null where a span holds too few readings for a mean.
 */
export function spanMeans(x: Float64Array, y: Float64Array, parts: readonly Segment[], width: number): SpanMeans | null {
  const bins = parts.flatMap((part, segment) => binsOf(x, y, part, width, segment));
  if (median(bins.map(({ count }) => count)) < LEAST) return null;
  return {
    means: bins.map(({ sumX, sumY, count, segment }) => ({ x: sumX / count, y: sumY / count, segment })),
    scatter: median(bins.map(({ low, high }) => high - low)),
  };
}

/** Whether readings scatter enough, beside a value axis of that length, for their means to be drawn. */
export function scatters({ scatter }: Pick<SpanMeans, 'scatter'>, axis: number): boolean {
  return scatter >= SCATTER * axis;
}

/** The same means; or null where the readings do not scatter by more than a share of `axis`, the length of the value axis. */
export function scatterMeans(
  x: Float64Array,
  y: Float64Array,
  parts: readonly Segment[],
  width: number,
  axis: number,
): readonly Mean[] | null {
  const found = spanMeans(x, y, parts, width);
  return found && scatters(found, axis) ? found.means : null;
}

interface Bin {
  readonly segment: number;
  readonly index: number;
  count: number;
  sumX: number;
  sumY: number;
  low: number;
  high: number;
}

function binsOf(x: Float64Array, y: Float64Array, { start, end }: Segment, width: number, segment: number): Bin[] {
  const bins: Bin[] = [];
  for (let i = start; i < end; i += 1) {
    const index = Math.floor(x[i]! / width);
    const value = y[i]!;
    let bin = bins.at(-1);
    if (bin?.index !== index) {
      bin = { segment, index, count: 0, sumX: 0, sumY: 0, low: value, high: value };
      bins.push(bin);
    }
    bin.count += 1;
    bin.sumX += x[i]!;
    bin.sumY += value;
    bin.low = Math.min(bin.low, value);
    bin.high = Math.max(bin.high, value);
  }
  return withoutStump(bins);
}

/** The last span of a stretch may hold a reading or two, whose mean would scatter like them: it is added to the one before. */
function withoutStump(bins: Bin[]): Bin[] {
  const last = bins.at(-1);
  const before = bins.at(-2);
  if (!last || !before || last.count * 2 >= before.count) return bins;
  before.count += last.count;
  before.sumX += last.sumX;
  before.sumY += last.sumY;
  before.low = Math.min(before.low, last.low);
  before.high = Math.max(before.high, last.high);
  return bins.slice(0, -1);
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1] ?? 0;
}
