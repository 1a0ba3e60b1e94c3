/** All thermal figures of a run, channel by channel. */
import type { Channel } from '../../intake/log.ts';
import { absent, isReason, noChannel, noPhase, type Reason } from '../absent.ts';
import { meanOf, overPhase } from '../average.ts';
import type { THERMAL } from '../catalogue/thermal.ts';
import { type FigureName, figuresOf } from '../catalogue.ts';
import { extremeOf } from '../extreme.ts';
import { isPresent } from '../figure.ts';
import { loadIsLogged } from '../load-changed.ts';
import type { Meter } from '../power/meters.ts';
import { figureOf, ofChannel } from '../present.ts';
import { addressOf, channelsOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { coolingTimeConstant } from './cooling.ts';
import { endTemperature } from './end.ts';
import { lastingNoise } from './lasting-noise.ts';
import { ambientCeiling, heldAtLimit, throttleHeadroom } from './limit.ts';
import type { LoadFit } from './load-fits.ts';
import type { LoadSeries } from './load-series.ts';
import { sensorNoise } from './noise.ts';
import { powerClimb } from './power-climb.ts';
import type { Response } from './response.ts';
import {
  amplitudePerWatt,
  asymptoteTemperature,
  responseAmplitude,
  secondAmplitude,
  secondAmplitudePerWatt,
  secondTimeConstant,
  timeConstant,
} from './response-figures.ts';
import { risePerWatt, temperatureRise } from './rise.ts';
import { isSettled, type Settled, settle, type Unsettled } from './settle.ts';
import { steadyTemperature, timeToSteadyState } from './steady.ts';
import { stoppedReason } from './stopped.ts';

/** One temperature channel with what is known of its course under load. */
export interface Course {
  readonly soak: Soak;
  readonly channel: Channel;
  readonly index: number;
  readonly series: LoadSeries;
  readonly settling: Settled | Unsettled;
  readonly response: Response | Reason;
  /** Why the course says nothing of how the device would settle, though nothing else shows a change of the load; null where it does. */
  readonly stopped: Reason | null;
  /** Whether a channel shows what the load was: its power, or a delivered clock. */
  readonly loadSeen: boolean;
  /** Why the end is not told, where the power still climbed with the temperature; null where it did not. */
  readonly climbing: () => Reason | null;
}

/** One temperature channel with all that its figures are made from. */
export interface Heated {
  readonly soak: Soak;
  readonly channel: Channel;
  readonly index: number;
  readonly peak: ReturnType<typeof extremeOf>;
  /** Of the load phase, or why it cannot be followed. */
  readonly course: Course | Reason;
  /** The primary power, or why there is none. */
  readonly meter: Meter | Reason;
}

/** What makes each thermal figure: one of the catalogue that is left out here does not compile. */
const FIGURES: Readonly<Record<keyof typeof THERMAL, (heated: Heated) => Entry>> = {
  idle_temperature: ({ soak, channel, index }) => idleTemperature(soak, channel, index),
  peak_temperature: peakTemperature,
  throttle_headroom: ({ soak, channel, index, peak }) => throttleHeadroom(soak, channel, index, peak),
  held_at_limit: ({ soak, channel, index }) => heldAtLimit(soak, channel, index),
  steady_temperature: ofCourse('steady_temperature', steadyTemperature),
  end_temperature: ofCourse('end_temperature', endTemperature),
  time_to_steady_state: ofCourse('time_to_steady_state', timeToSteadyState),
  temperature_rise: ofCourse('temperature_rise', temperatureRise),
  rise_per_watt: ofCourse('rise_per_watt', (course, { meter }) => risePerWatt(course, meter)),
  ambient_ceiling: ofCourse('ambient_ceiling', ambientCeiling),
  time_constant: ofCourse('time_constant', timeConstant),
  second_time_constant: ofCourse('second_time_constant', secondTimeConstant),
  response_amplitude: ofCourse('response_amplitude', responseAmplitude),
  second_amplitude: ofCourse('second_amplitude', secondAmplitude),
  amplitude_per_watt: ofCourse('amplitude_per_watt', (course, { meter }) => amplitudePerWatt(course, meter)),
  second_amplitude_per_watt: ofCourse('second_amplitude_per_watt', (course, { meter }) => secondAmplitudePerWatt(course, meter)),
  cooling_time_constant: coolingTimeConstant,
  sensor_noise: ({ soak, channel, index }) => sensorNoise(soak, channel, index),
  asymptote_temperature: ofCourse('asymptote_temperature', asymptoteTemperature),
};

/** `changed`: why the load does not count as constant, or null. `meter`: the primary power, or why there is none. `fits`: as `loadFits`. */
export function thermalFigures(soak: Soak, meter: Meter | Reason, changed: Reason | null, fits: readonly LoadFit[]): Entry[] {
  const channels = channelsOf(soak.log, 'temperature');
  if (channels.length === 0) return figuresOf('thermal').map((name) => [name, absent(name, noChannel('temperature'))]);
  return channels.flatMap((channel, index) => {
    const course = courseOf(soak, channel, index, fits[index]!, meter, changed);
    const peak = extremeOf(soak, channel, 'highest', addressOf('peak_temperature', channel, index), lastingNoise(course));
    const heated: Heated = { soak, channel, index, peak, course, meter };
    return ofChannel(
      channel,
      Object.values(FIGURES).map((figure) => figure(heated)),
    );
  });
}

/** A figure of the course under load: absent where the course is. */
function ofCourse(name: FigureName, figure: (course: Course, heated: Heated) => Entry): (heated: Heated) => Entry {
  return (heated) => {
    const { course, channel, index } = heated;
    if (isReason(course)) return [addressOf(name, channel, index), absent(name, course)];
    const [address, made] = figure(course, heated);
    return [address, course.loadSeen || !isPresent(made) ? made : { ...made, of: { ...made.of, load: 'not observed' } }];
  };
}

function idleTemperature(soak: Soak, channel: Channel, index: number): Entry {
  const address = addressOf('idle_temperature', channel, index);
  const phase = phaseOf(soak, 'idle');
  if (!phase) return [address, absent('idle_temperature', noPhase(soak, 'idle'))];
  const mean = meanOf(soak, channel, rowsOf(phase), address, overPhase(phase));
  return [address, figureOf('idle_temperature', soak, mean, { of: { phase: 'idle' } })];
}

function peakTemperature({ soak, channel, index, peak }: Heated): Entry {
  const interval = !isReason(peak) && peak.interval ? { interval: peak.interval } : {};
  const address = addressOf('peak_temperature', channel, index);
  return [address, figureOf('peak_temperature', soak, peak, { of: { phase: 'load' }, ...interval })];
}

/** The governor worked from the first seconds of the load to its last, so that no stop shows. */
const HELD: Reason = {
  absent: 'load-changed',
  why: 'The governor held the temperature at its limit, so that neither its course nor its end is that of a constant load.',
};

function courseOf(
  soak: Soak,
  channel: Channel,
  index: number,
  { series, response: respond }: LoadFit,
  meter: Meter | Reason,
  changed: Reason | null,
): Course | Reason {
  if (isReason(series)) return series;
  const stopped = changed ? null : stoppedReason(soak, series);
  const primary = isReason(meter) ? null : meter;
  const fitted = changed ?? stopped ?? respond();
  const settling = settle(soak, series, () => fitted);
  const response = changed ?? stopped ?? (isSettled(settling) && settling.held ? HELD : fitted);
  const loadSeen = loadIsLogged(soak, primary);
  const climbing = () => (primary ? powerClimb(soak, series, primary) : null);
  return { soak, channel, index, series, settling, response, stopped, loadSeen, climbing };
}
