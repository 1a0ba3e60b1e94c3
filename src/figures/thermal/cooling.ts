/** How quickly the device cools down after the load. */
import { quantile } from '../../statistics/quantile.ts';
import { absent, isReason, type Reason } from '../absent.ts';
import { duration } from '../in-words.ts';
import { COOL_DOWN } from '../phases.ts';
import type { Meter } from '../power/meters.ts';
import { readingsOf } from '../readings.ts';
import { movingMean } from '../smooth.ts';
import { addressOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { loadSeries } from './load-series.ts';
import { responseOf } from './response.ts';
import { constantAt, mainOf } from './response-figures.ts';
import type { Heated } from './thermal.ts';

const NAME = 'cooling_time_constant';

/** s, of the main part of the response to the end of the load. */
export function coolingTimeConstant({ soak, channel, index, meter }: Pick<Heated, 'soak' | 'channel' | 'index' | 'meter'>): Entry {
  const series = loadSeries(soak, channel, COOL_DOWN);
  if (isReason(series)) return [addressOf(NAME, channel, index), absent(NAME, series)];
  const worked = isReason(meter) ? null : workedOn(soak, meter);
  const response = worked ?? responseOf(soak, series, index, 0, 'cooling');
  return constantAt({ soak, channel, index, series, response }, NAME, mainOf);
}

/** Means over this many seconds are compared with their median … */
const MEAN_OVER = 60;
/** … and the device did not rest where they lie off by more than this share of what the end of the load took away. */
const REST_SHARE = 0.1;

/** Why the device did not rest while it cooled, told from its power; null where it did, or where too little is logged. */
function workedOn(soak: Soak, { name, values }: Meter): Reason | null {
  const [load, rest] = [phaseOf(soak, 'load'), phaseOf(soak, COOL_DOWN)];
  if (!load || !rest) return null;
  const [before, after] = [readingsOf(soak.log, values, rowsOf(load)), readingsOf(soak.log, values, rowsOf(rest))];
  if (before.y.length < 2 || after.y.length < 4) return null;
  const smooth = movingMean(after.t, after.y, MEAN_OVER);
  const median = quantile(smooth, 0.5);
  const fallen = quantile(before.y, 0.5) - median;
  const from = after.t.findIndex((t) => t >= rest.from + MEAN_OVER / 2);
  const off = smooth.findIndex((value, i) => i >= from && Math.abs(value - median) > REST_SHARE * Math.abs(fallen));
  if (off < 0) return null;
  const why = `The power (channel ${name}) did not rest after the load: it had changed ${duration(after.t[off]! - rest.from)} into the cool-down.`;
  return { absent: 'load-changed', why };
}
