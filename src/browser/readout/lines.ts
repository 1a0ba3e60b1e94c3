/** What a line reads at a moment or within a span. */
import type { Lines, ReadLine } from './read-lines.ts';

/** What tells lines apart: their runs, their channels, or both. */
export function lineNames(lines: Lines): string[] {
  const several = (of: 'run' | 'channel') => new Set(lines.map((line) => line[of])).size > 1;
  const [runs, channels] = [several('run'), several('channel')];
  return lines.map(({ run, channel }) =>
    [...(runs ? [run] : []), ...(channels || !runs ? [channel.replaceAll('_', ' ')] : [])].join(', '),
  );
}

/** The reading nearest to a moment, as the file has it; null where none lies within `reach`. */
export function nearest({ times, values }: ReadLine, at: number, reach: number): readonly [string] | null {
  let best = -1;
  for (let i = 0; i < times.length; i += 1) {
    if (best < 0 || Math.abs(times[i]! - at) < Math.abs(times[best]! - at)) best = i;
  }
  return best < 0 || Math.abs(times[best]! - at) > reach ? null : [values[best]!];
}

/** Lowest and highest reading within a span, as the file has them: a drawing keeps the extremes of what it leaves out. */
export function within({ times, values }: ReadLine, [from, to]: readonly [number, number]): readonly [string, string] | null {
  const inside = values.filter((_, i) => times[i]! >= from && times[i]! <= to);
  if (inside.length === 0) return null;
  const sorted = inside.toSorted((a, b) => Number(a) - Number(b));
  return [sorted[0]!, sorted.at(-1)!];
}
