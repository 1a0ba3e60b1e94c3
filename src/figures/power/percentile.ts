/** Percentiles of the power under load. */
import { absent, isReason, noPhase, noReadings } from '../absent.ts';
import { fromOf, gapsOf } from '../average.ts';
import { freshReadings } from '../held.ts';
import { measuredPercentile } from '../percentile-figure.ts';
import { present } from '../present.ts';
import { type Readings, readingsOf } from '../readings.ts';
import { scatterOf } from '../scatter.ts';
import { addressOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { type Meter, meterRange, meterWords } from './meters.ts';

const SHARE = 0.95;

/** W: the power that was not exceeded in 95 % of the time of the load. */
export function powerPercentile(soak: Soak, meter: Meter, index: number): Entry {
  const name = 'power_percentile_95';
  const address = addressOf(name, meter, index);
  const phase = phaseOf(soak, 'load');
  if (!phase) return [address, absent(name, noPhase(soak, 'load'))];
  const rows = rowsOf(phase);
  const readings = readingsOf(soak.log, meter.values, rows);
  if (readings.y.length < 2) return [address, absent(name, noReadings(meter.name, 'the load phase'))];
  const found = measuredPercentile(soak, {
    readings,
    share: SHARE,
    unit: 'W',
    step: meter.grain,
    noiseAtMost: idleNoise(soak, meter, readings),
    address,
    errorsAt: (value) => meter.errorsAt(value, rows),
    from: fromOf(soak, meter.channels, readings),
    of: { ...meterWords(meter), phase: 'load', ...gapsOf(readings) },
  });
  if (isReason(found)) return [address, absent(name, found)];
  const of = meterRange(soak, meter, found.quantity.value, rows);
  return [address, present(name, soak, found, { of, inferred: meter.inferred, interval: found.interval })];
}

/** Fewer readings say too little of a scatter. */
const FEWEST = 30;

/**
 * W: what the noise of a reading under load is at most, as the idle phase tells: its readings scatter by the noise of the meter and more, and a
 * meter's noise grows no faster than its reading. Without limit where there is no such phase, or no power in it.
 */
function idleNoise(soak: Soak, meter: Meter, load: Readings): number {
  const idle = phaseOf(soak, 'idle');
  if (!idle) return Number.POSITIVE_INFINITY;
  const { y } = freshReadings(readingsOf(soak.log, meter.values, rowsOf(idle)), meter.grain);
  const level = meanOf(y);
  if (y.length < FEWEST || !(level > meter.grain)) return Number.POSITIVE_INFINITY;
  const scatter = Math.max(scatterOf(y).deviation, meter.grain / Math.sqrt(12));
  return scatter * Math.max(1, meanOf(load.y) / level);
}

function meanOf(y: Float64Array): number {
  return y.reduce((sum, value) => sum + value, 0) / y.length;
}
