/** Percentiles of the clock under load. */
import type { Channel } from '../../intake/log.ts';
import { absent, isReason, noPhase, noReadings } from '../absent.ts';
import { fromOf, gapsOf, placeOf } from '../average.ts';
import type { FigureName } from '../catalogue.ts';
import { measuredPercentile } from '../percentile-figure.ts';
import { present } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { addressOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { errorsOf, stepOf } from '../sources.ts';

/** Hz: the clock that was not exceeded in a share of the time of the load. */
export function clockPercentile(soak: Soak, channel: Channel, index: number, name: FigureName, share: number): Entry {
  const address = addressOf(name, channel, index);
  const phase = phaseOf(soak, 'load');
  if (!phase) return [address, absent(name, noPhase(soak, 'load'))];
  const readings = readingsOf(soak.log, channel.values, rowsOf(phase));
  if (readings.y.length < 2) return [address, absent(name, noReadings(channel.name, 'the load phase'))];
  const found = measuredPercentile(soak, {
    readings,
    share,
    unit: channel.unit,
    step: stepOf(soak.context, channel),
    address,
    errorsAt: (value) => errorsOf(soak.context, channel, value),
    from: fromOf(soak, [channel], readings),
    of: { ...placeOf(channel), phase: 'load', ...gapsOf(readings) },
  });
  return [address, isReason(found) ? absent(name, found) : present(name, soak, found, { interval: found.interval })];
}
