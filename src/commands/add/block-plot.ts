/** A channel as one line of block characters. */

const BLOCKS = '▁▂▃▄▅▆▇█';

/**
 * Means over equal stretches of time, from the lowest to the highest block; a blank where a stretch has no reading.
 * @param times - never falling, same length as `values`.
 */
export function blockPlot(times: Float64Array, values: Float64Array, width: number): string {
  const first = times[0] ?? 0;
  const span = (times[times.length - 1] ?? 0) - first;
  const sums = new Float64Array(width);
  const counts = new Float64Array(width);
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    const at = span > 0 ? Math.min(width - 1, Math.floor(((times[row]! - first) / span) * width)) : 0;
    sums[at] = sums[at]! + value;
    counts[at] = counts[at]! + 1;
  }
  const means = Array.from(sums, (sum, at) => (counts[at]! > 0 ? sum / counts[at]! : Number.NaN));
  const known = means.filter((mean) => !Number.isNaN(mean));
  const low = Math.min(...known);
  const range = Math.max(...known) - low;
  return means.map((mean) => blockOf(mean, low, range)).join('');
}

function blockOf(mean: number, low: number, range: number): string {
  if (Number.isNaN(mean)) return ' ';
  const level = range > 0 ? Math.round(((mean - low) / range) * (BLOCKS.length - 1)) : 0;
  return BLOCKS[level]!;
}
