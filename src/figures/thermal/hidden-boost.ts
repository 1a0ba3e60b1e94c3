/** What a boost that no channel shows may have taken off an amplitude: the temperature at the start of the load bounds it. */
import { mean } from '../../statistics/mean.ts';
import { readingsOf } from '../readings.ts';
import { scatterOf } from '../scatter.ts';
import { rowsOf, type Soak } from '../soak.ts';
import { stepOf } from '../sources.ts';
import type { Response } from './response.ts';

/** s before the load, over which the temperature that it began from is read. */
const BEFORE = 60;
/** A log that begins later than this share of a row after the load does not show where it began. */
const LATE = 0.5;
/** Ends of a 95 % interval, in standard uncertainties. */
const SIGMAS = 2;

/**
 * K, from and to: by how much the true amplitude of a part may lie off the fitted one. Linear heat flow forgets a boost at the beginning, but the
 * fit of what comes after, drawn back to the start, then begins above the temperature that the load began from. What lies between is missing from
 * the amplitudes of all parts together; a faster part may be the boost itself, and its amplitude belongs to the main one.
 * Null where no reading shows the start. Follows from the superposition of responses; no source.
 */
export function boostRoom(soak: Soak, response: Response, part: number): readonly [number, number] | null {
  const start = startOf(soak, response);
  if (!start) return null;
  const fitted =
    response.asymptote -
    response.terms.reduce((sum, { amplitude, timeConstant }) => sum + amplitude * Math.exp(-start.at / timeConstant), 0);
  const faster = part === response.main ? response.terms.slice(0, part).reduce((sum, { amplitude }) => sum + amplitude, 0) : 0;
  const missing = fitted - start.value;
  const ends = [missing - SIGMAS * start.u, missing + SIGMAS * start.u].flatMap((end) => [end, end + faster]);
  return [Math.min(0, ...ends), Math.max(0, ...ends)];
}

interface Start {
  /** s since the load began; 0 where it is read before it. */
  readonly at: number;
  /** As the fitted series: a rise over the ambient where that is measured. */
  readonly value: number;
  readonly u: number;
}

function startOf(soak: Soak, { series }: Response): Start | null {
  const { channel, phase, t, readings, step } = series;
  const resolution = stepOf(soak.context, channel) / Math.sqrt(12);
  const uOf = (count: number) => Math.hypot(scatterOf(readings.y).deviation / Math.sqrt(count), resolution);
  const before = readingsBefore(soak, series);
  if (before.length > 0) {
    const first = readingsOf(soak.log, channel.values, rowsOf(phase)).y[0]!;
    return { at: 0, value: mean(before) - (first - readings.y[0]!), u: uOf(before.length) };
  }
  return t[0]! > LATE * step ? null : { at: t[0]!, value: readings.y[0]!, u: uOf(1) };
}

function readingsBefore(soak: Soak, { channel, phase }: Response['series']): number[] {
  const { seconds } = soak.log.time;
  const found: number[] = [];
  for (let row = rowsOf(phase).from - 1; row >= 0 && seconds[row]! >= phase.from - BEFORE; row--) {
    const value = channel.values[row]!;
    if (!Number.isNaN(value)) found.push(value);
  }
  return found;
}
