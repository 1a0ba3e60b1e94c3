/** How much single readings of a temperature sensor scatter. */
import type { Channel } from '../../intake/log.ts';
import { chiSquareQuantile } from '../../statistics/chi-square-quantile.ts';
import { absent, noReadings } from '../absent.ts';
import { fromOf, gapsOf, placeOf } from '../average.ts';
import { freshReadings } from '../held.ts';
import { present } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { scatterOf } from '../scatter.ts';
import { addressOf, type Entry, phaseOf, type Rows, rowsOf, type Soak } from '../soak.ts';
import { quantityOf, samplingPart, stepOf } from '../sources.ts';

/** Fewer readings say too little of a scatter. */
const FEWEST = 30;
/** More would make the interval narrower than is worth telling; quantiles of χ² are known up to here. */
const MOST_DOF = 10_000;

/**
 * K: standard deviation of a single reading about the line through its two neighbours, in the idle phase, else in the last half of the
 * load, else in the whole log; a reading that was logged more than once counts once. Its square has 18(n − 2)/35 degrees of freedom where readings are independent: second differences have
 * variances of 6 and covariances of −4 and 1 times that of a reading.
 */
export function sensorNoise(soak: Soak, channel: Channel, index: number): Entry {
  const address = addressOf('sensor_noise', channel, index);
  const { rows, words } = quietest(soak);
  const step = stepOf(soak.context, channel);
  const readings = freshReadings(readingsOf(soak.log, channel.values, rows), step);
  if (readings.y.length < FEWEST)
    return [
      address,
      absent('sensor_noise', {
        ...noReadings(channel.name, words),
        why: `The channel ${channel.name} has fewer than ${FEWEST} readings in ${words}.`,
      }),
    ];
  const { deviation } = scatterOf(readings.y);
  if (deviation < step / 2) {
    const why = `Readings of ${channel.name} scatter by less than half of its step in ${words}: the step hides how much.`;
    return [address, absent('sensor_noise', { absent: 'out-of-range', why, bound: { relation: '<', value: step, unit: 'K' } })];
  }
  const dof = Math.min(MOST_DOF, Math.floor((18 * (readings.y.length - 2)) / 35));
  const end = (p: number) => deviation * Math.sqrt(dof / chiSquareQuantile(p, dof));
  const quantity = quantityOf(deviation, 'K', [samplingPart(soak.context, address, deviation / Math.sqrt(2 * dof), dof)], {
    stated: true,
    step: 0,
  });
  const measured = {
    quantity,
    from: fromOf(soak, [channel], readings),
    of: { ...placeOf(channel), over: words, ...gapsOf(readings) },
  };
  return [address, present('sensor_noise', soak, measured, { interval: [end(0.975), end(0.025)] })];
}

function quietest(soak: Soak): { readonly rows: Rows; readonly words: string } {
  const idle = phaseOf(soak, 'idle');
  if (idle && idle.toRow - idle.fromRow >= FEWEST) return { rows: rowsOf(idle), words: 'the idle phase' };
  const load = phaseOf(soak, 'load');
  if (!load) return { rows: { from: 0, to: soak.log.rows }, words: 'the whole log' };
  return { rows: { from: Math.ceil((load.fromRow + load.toRow) / 2), to: load.toRow }, words: 'the last half of the load' };
}
