/** What the simulated device really did, for tests that ask whether an interval covers the truth. */
import type { Instruments } from './instruments.ts';
import type { Options, PhaseTruth, Truth } from './options.ts';
import { balance } from './steady.ts';

/** The true state of the device at one instant; `power` is that of die and board, W. */
export interface Moment {
  readonly elapsed: number;
  readonly die: number;
  readonly board: number;
  readonly room: number;
  readonly clock: number;
  readonly throttled: boolean;
  readonly power: number;
  readonly loaded: boolean;
}

/** Length of the end of a phase, s. */
const END_S = 300;

/** Sums the moments of a run up, and adds where its load would have settled. */
export function truthOf(options: Options, moments: readonly Moment[], instruments: Instruments): Truth {
  const { idle, load } = options.schedule;
  const { specimen, setting } = options;
  const idling = moments.filter((m) => m.elapsed < idle);
  const loading = moments.filter((m) => m.elapsed >= idle && m.elapsed < idle + load);
  const under = overPhase(loading);
  const operation = { clock: setting.clock, voltageOffset: setting.voltageOffset, activity: 1 };
  const { timeConstants, ...steady } = balance(specimen, operation, specimen.power.boardLoad, under.room);
  const throttled = loading.filter((m) => m.throttled);
  return {
    steady,
    timeConstants,
    idle: overPhase(idling),
    load: under,
    firstThrottle: throttled[0] ? throttled[0].elapsed - idle : null,
    throttledShare: throttled.length / loading.length,
    instruments,
  };
}

function overPhase(moments: readonly Moment[]): PhaseTruth {
  const [first, second] = moments;
  const last = moments.at(-1);
  if (!first || !second || !last) throw new RangeError('a phase needs two moments at least');
  const end = moments.filter((m) => m.elapsed > last.elapsed - END_S);
  const power = mean(moments, 'power');
  return {
    power,
    clock: mean(moments, 'clock'),
    room: mean(moments, 'room'),
    energy: power * moments.length * (second.elapsed - first.elapsed),
    peakDie: moments.reduce((peak, m) => Math.max(peak, m.die), Number.NEGATIVE_INFINITY),
    end: {
      die: mean(end, 'die'),
      board: mean(end, 'board'),
      room: mean(end, 'room'),
      clock: mean(end, 'clock'),
      power: mean(end, 'power'),
    },
  };
}

function mean(moments: readonly Moment[], of: 'die' | 'board' | 'room' | 'clock' | 'power'): number {
  return moments.reduce((sum, m) => sum + m[of], 0) / moments.length;
}
