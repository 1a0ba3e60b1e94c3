/** The ambient as a device feels it: behind a room that drifts, by its own time constant. */
import { exponentialRise } from '../../statistics/exponential-rise.ts';
import { riseStart } from '../../statistics/rise-start.ts';
import type { Soak } from '../soak.ts';
import { ambientChannel, lessAmbient } from './ambient.ts';
import { binsOf } from './bins.ts';
import { type LoadSeries, seriesOf } from './load-series.ts';

/** A chip's own part is over after this share of the load, mostly. */
const QUICK_SHARE = 1 / 20;
/** s: the device is taken to have settled to the room of the log's first minute. */
const FIRST = 60;

/**
 * The series over the ambient that the device feels: linear heat flow from a room that drifts reaches it as through a first-order filter with
 * the time constant of its main part. Without that a room that warms by 2 K in an hour makes a time constant of 500 s look shorter by a
 * tenth, or feigns a second part. Null where the ambient is not measured, or nothing can be fitted to tell how slow the device is.
 */
export function overFeltRoom(soak: Soak, series: LoadSeries): LoadSeries | null {
  const ambient = ambientChannel(soak);
  const timeConstant = ambient && roughConstant(series);
  if (!timeConstant || ambient.values.every(Number.isNaN)) return null;
  const values = lessAmbient(series.channel, felt(soak.log.time.seconds, ambient.values, timeConstant));
  return seriesOf(soak, series.channel, values, series.phase);
}

/** s: of one exponential through all but the beginning. Whether it is a tenth off moves what is taken off by a tenth. */
function roughConstant(series: LoadSeries): number | null {
  const { t, y } = binsOf(series, QUICK_SHARE * series.lasted, series.lasted);
  const near = y.length > 3 ? riseStart(t, y) : null;
  return (near && exponentialRise(t, y, [near])?.timeConstants[0]) ?? near;
}

/** The readings of a room through a first-order filter: between two readings it is where the line between them would bring it. */
function felt(seconds: Float64Array, room: Float64Array, timeConstant: number): Float64Array {
  const result = new Float64Array(room.length);
  let latest = firstLevel(seconds, room);
  let level = latest;
  for (let row = 0; row < room.length; row++) {
    const width = row > 0 ? seconds[row]! - seconds[row - 1]! : 0;
    const reading = Number.isNaN(room[row]!) ? latest : room[row]!;
    level += ((latest + reading) / 2 - level) * -Math.expm1(-width / timeConstant);
    result[row] = level;
    latest = reading;
  }
  return result;
}

/** Mean of the room's readings in the log's first minute, or its first reading after that. */
function firstLevel(seconds: Float64Array, room: Float64Array): number {
  let [sum, n] = [0, 0];
  for (let row = 0; row < room.length && (n === 0 || seconds[row]! - seconds[0]! < FIRST); row++) {
    if (Number.isNaN(room[row]!)) continue;
    sum += room[row]!;
    n++;
  }
  return sum / Math.max(1, n);
}
