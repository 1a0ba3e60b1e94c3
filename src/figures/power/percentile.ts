/** Percentiles of the power under load. */
import { absent, isReason, noPhase, noReadings } from '../absent.ts';
import { fromOf, gapsOf } from '../average.ts';
import { measuredPercentile } from '../percentile-figure.ts';
import { present } from '../present.ts';
import { readingsOf } from '../readings.ts';
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
    address,
    errorsAt: (value) => meter.errorsAt(value, rows),
    from: fromOf(soak, meter.channels, readings),
    of: { ...meterWords(meter), phase: 'load', ...gapsOf(readings) },
  });
  if (isReason(found)) return [address, absent(name, found)];
  const of = meterRange(soak, meter, found.quantity.value, rows);
  return [address, present(name, soak, found, { of, inferred: meter.inferred, interval: found.interval })];
}
