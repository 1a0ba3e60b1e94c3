/** All thermal figures of a run, channel by channel. */
import type { Channel } from '../../intake/log.ts';
import { absent, isReason, noChannel, noPhase, noReadings, type Reason } from '../absent.ts';
import { meanOf } from '../average.ts';
import { extremeOf } from '../extreme.ts';
import type { Meter } from '../power/meters.ts';
import { figureOf, ofChannel } from '../present.ts';
import { addressOf, channelsOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { endTemperature } from './end.ts';
import { ambientCeiling, heldAtLimit, throttleHeadroom } from './limit.ts';
import { type LoadSeries, loadSeries } from './load-series.ts';
import { type Response, responseOf } from './response.ts';
import { asymptoteTemperature, timeConstant } from './response-figures.ts';
import { risePerWatt, temperatureRise } from './rise.ts';
import { isSettled, type Settled, settle, type Unsettled } from './settle.ts';
import { steadyTemperature, timeToSteadyState } from './steady.ts';

/** One temperature channel with what is known of its course under load. */
export interface Course {
  readonly soak: Soak;
  readonly channel: Channel;
  readonly index: number;
  readonly series: LoadSeries;
  readonly settling: Settled | Unsettled;
  readonly response: Response | Reason;
}

export const THERMAL_NAMES = [
  'idle_temperature',
  'peak_temperature',
  'steady_temperature',
  'end_temperature',
  'temperature_rise',
  'time_to_steady_state',
  'time_constant',
  'asymptote_temperature',
  'throttle_headroom',
  'held_at_limit',
  'ambient_ceiling',
  'rise_per_watt',
] as const;

/** `changed`: why the load does not count as constant, or null. `meter`: the primary power, or why there is none. */
export function thermalFigures(soak: Soak, meter: Meter | Reason, changed: Reason | null): Entry[] {
  const channels = channelsOf(soak.log, 'temperature');
  if (channels.length === 0) return THERMAL_NAMES.map((name) => [name, absent(name, noChannel('temperature'))]);
  return channels.flatMap((channel, index) =>
    ofChannel(channel, [
      idleTemperature(soak, channel, index),
      ...peakFigures(soak, channel, index),
      heldAtLimit(soak, channel, index),
      ...courseFigures(soak, channel, index, meter, changed),
    ]),
  );
}

function idleTemperature(soak: Soak, channel: Channel, index: number): Entry {
  const address = addressOf('idle_temperature', channel, index);
  const phase = phaseOf(soak, 'idle');
  if (!phase) return [address, absent('idle_temperature', noPhase(soak, 'idle'))];
  const mean = meanOf(soak, channel, rowsOf(phase), address) ?? noReadings(channel.name, 'the idle phase');
  return [address, figureOf('idle_temperature', soak, mean, { of: { phase: 'idle' } })];
}

/** Peak temperature and what it leaves to the limit. */
function peakFigures(soak: Soak, channel: Channel, index: number): Entry[] {
  const address = addressOf('peak_temperature', channel, index);
  const peak = extremeOf(soak, channel, 'highest', address);
  const interval = !isReason(peak) && peak.interval ? { interval: peak.interval } : {};
  return [
    [address, figureOf('peak_temperature', soak, peak, { of: { phase: 'load' }, ...interval })],
    throttleHeadroom(soak, channel, index, peak),
  ];
}

const COURSE_NAMES = THERMAL_NAMES.filter((name) => !/^(idle|peak|throttle|held)_/.test(name));

/** Without a change of the load that shows: a governor may have worked from its first seconds to its last. */
const HELD: Reason = {
  absent: 'load-changed',
  why: 'The governor held the temperature at its limit, so that neither its course nor its end is that of a constant load.',
};

function courseFigures(soak: Soak, channel: Channel, index: number, meter: Meter | Reason, changed: Reason | null): Entry[] {
  const series = loadSeries(soak, channel);
  if (isReason(series)) return COURSE_NAMES.map((name) => [addressOf(name, channel, index), absent(name, series)]);
  const fitted = changed ?? responseOf(soak, series, index);
  const settling = settle(soak, series, () => fitted);
  const governed = changed ?? (isSettled(settling) && settling.held ? HELD : null);
  const course: Course = { soak, channel, index, series, settling, response: governed ?? fitted };
  return [
    steadyTemperature(course),
    endTemperature(course),
    timeToSteadyState(course),
    temperatureRise(course),
    risePerWatt(course, meter),
    ambientCeiling(course, governed),
    timeConstant(course),
    asymptoteTemperature(course),
  ];
}
