/** Whether a temperature stopped climbing before its time, or swings to and fro: what a governor does at its limit, or a fan that steps in, or a load that falls. */
import type { Channel } from '../../intake/log.ts';
import { type RiseStop, riseStop } from '../../statistics/rise-stop.ts';
import { isReason, type Reason } from '../absent.ts';
import { throttlingOf } from '../clock/throttle.ts';
import { duration, plain } from '../in-words.ts';
import type { Soak } from '../soak.ts';
import { stepOf } from '../sources.ts';
import { limitOf, toleranceOf } from './at-limit.ts';
import { binsOf } from './bins.ts';
import type { LoadSeries } from './load-series.ts';
import { swingOf } from './swings.ts';

/** It must have stopped short by this much, K, or by so many steps of the sensor where those are coarser. */
const LEAST_SHORT = 1;
const LEAST_STEPS = 1.5;
/** A swing is a swing from so many K on, or from so many steps: one that drifts through the steps of its sensor seems to swing by one. */
const LEAST_SWING = 2;
const SWING_STEPS = 3;
/** A stop early in a long load is looked for in a part of the load too. */
const WINDOWS = [1, 1 / 4];

/** Why the response under load says nothing of a constant load, told from the temperature itself; null where it does. */
export function stoppedReason(soak: Soak, series: LoadSeries): Reason | null {
  const stop = stopOf(soak, series);
  if (stop) return stopReason(soak, series, stop);
  return atLimitUntold(soak, series) ?? swingReason(soak, series);
}

function swingReason(soak: Soak, { channel, readings }: LoadSeries): Reason | null {
  const swing = swingOf(readings);
  if (!swing || swing.height < Math.max(LEAST_SWING, SWING_STEPS * stepOf(soak.context, channel))) return null;
  const how = `swung by about ${plain(Number(swing.height.toPrecision(1)))} K every ${duration(Number(swing.period.toPrecision(2)))} or so until the load ended`;
  const why = `The channel ${channel.name} ${how}: it did not settle. A fan, a governor or a load that switches to and fro can do that, and this figure does not tell which.`;
  return { absent: 'load-changed', why };
}

function stopOf(soak: Soak, series: LoadSeries): RiseStop | null {
  const step = stepOf(soak.context, series.channel);
  const least = Math.max(LEAST_SHORT, LEAST_STEPS * step);
  for (const share of WINDOWS) {
    const { t, y } = binsOf(series, 0, share * series.lasted);
    const stop = riseStop(t, y, 0, step, least);
    if (stop) return stop;
  }
  return null;
}

/** Only with a second witness is it the governor: the stated limit. */
function stopReason(soak: Soak, series: LoadSeries, { at, beyond }: RiseStop): Reason {
  const { channel } = series;
  const level = levelAtEnd(soak, channel, series);
  const what = `${channel.name} stopped climbing at ${plain(level)} ${channel.unit} after about ${duration(at)}, ${plain(beyond)} K short of where it was going`;
  const limit = limitOf(soak, channel);
  const held = !isReason(limit) && Math.abs(level - limit.value) <= toleranceOf(soak, channel);
  const why = held
    ? `The channel ${what}, at the limit of ${plain(limit.value)} ${limit.unit}: the governor held it.`
    : `The channel ${what}: it stopped, it did not settle. A governor, a fan or a change of the load can do that, and this figure does not tell which.`;
  return { absent: 'load-changed', why };
}

/** At its limit without a stop that shows, and with nothing that shows whether the device throttled. */
function atLimitUntold(soak: Soak, series: LoadSeries): Reason | null {
  const limit = limitOf(soak, series.channel);
  if (isReason(limit)) return null;
  if (Math.abs(levelAtEnd(soak, series.channel, series) - limit.value) > toleranceOf(soak, series.channel)) return null;
  if (!isReason(throttlingOf(soak))) return null;
  const step = stepOf(soak.context, series.channel);
  const sensor = step > 0 ? ` on a sensor with steps of ${plain(step)} K` : '';
  return {
    absent: 'undecided',
    why: `The temperature ended at its limit of ${plain(limit.value)} ${limit.unit}. Whether the governor held it there or it settled there cannot be told${sensor}.`,
  };
}

/** Mean of the last tenth of the load, in the unit of the channel. */
function levelAtEnd({ log }: Soak, { values }: Channel, { phase }: LoadSeries): number {
  const from = phase.to - (phase.to - phase.from) / 10;
  const last = values
    .subarray(phase.fromRow, phase.toRow)
    .filter((value, i) => !Number.isNaN(value) && log.time.seconds[phase.fromRow + i]! >= from);
  return last.reduce((sum, value) => sum + value, 0) / last.length;
}
