/** Steady temperature, and the time that it took. */
import { absent, isReason, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, meanOf } from '../average.ts';
import { figureOf, present } from '../present.ts';
import { addressOf, type Entry } from '../soak.ts';
import { quantityOf, samplingPart } from '../sources.ts';
import { ambientChannel } from './ambient.ts';
import { climbingPast } from './end.ts';
import { heldWords, isSettled, settledWords, type Unsettled } from './settle.ts';
import { stillWords } from './still.ts';
import type { Course } from './thermal.ts';

/** Mean over the last window of the load, given that the criterion held to its end; else why it did not. */
export function steadyMean(course: Course): Measured | Reason {
  const { soak, channel, index, settling } = course;
  if (!isSettled(settling)) return settling.reason;
  return meanOf(soak, channel, settling.rows, addressOf('steady_temperature', channel, index), {
    words: 'the last window of the load',
  });
}

export function steadyTemperature(course: Course): Entry {
  const { soak, channel, index, settling } = course;
  const address = addressOf('steady_temperature', channel, index);
  if (isSettled(settling))
    return [
      address,
      figureOf('steady_temperature', soak, steadyMean(course), { of: { ...settledWords(settling), ...stillWords(course) } }),
    ];
  const bound = ambientChannel(soak) ? null : climbingPast(course, 'temperature');
  return [address, absent('steady_temperature', { ...settling.reason, ...(bound ? { bound } : {}) })];
}

export function timeToSteadyState(course: Course): Entry {
  const { soak, channel, index, settling, series, stopped } = course;
  const name = 'time_to_steady_state';
  const address = addressOf(name, channel, index);
  if (!isSettled(settling)) return [address, absent(name, timeReason(settling))];
  if (stopped) return [address, absent(name, stopped)];
  const { opening } = settling;
  if (isReason(opening)) return [address, absent(name, opening)];
  const sampling = samplingPart(soak.context, address, opening.u, null);
  const measured: Measured = {
    quantity: quantityOf(opening.value, 's', [sampling], { stated: true, step: 0 }),
    from: fromOf(soak, columnsOf(course), series.readings),
    of: {
      channel: channel.name,
      criterion: settling.criterion.name,
      ...(settling.byFit ? { read_off: 'the fitted response, since the readings leave it open' } : {}),
      ...heldWords(settling),
      ...gapsOf(series.readings),
    },
  };
  return [address, present(name, soak, measured, { interval: opening.interval })];
}

function timeReason({ reason, notBefore }: Unsettled): Reason {
  return notBefore === null ? reason : { ...reason, bound: { relation: '>', value: notBefore, unit: 's' } };
}

/** The channel's column, and the ambient's where that was taken off. */
export function columnsOf({ soak, channel }: Pick<Course, 'soak' | 'channel'>): readonly { readonly column: string }[] {
  const ambient = ambientChannel(soak);
  return ambient ? [channel, ambient] : [channel];
}
