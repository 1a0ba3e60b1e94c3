/** What is true of a simulated run, figure by figure: in words, and as a number. */

import { quantise } from '../simulator/noise.ts';
import type { Moment } from '../simulator/truth.ts';
import { type Asked, TWIN } from './asked.ts';
import type { Known } from './soak.ts';

export interface TruthOf extends Asked {
  /** The truth for the die or the board, in the figure's unit; null where there is none. */
  readonly of: (known: Known, part: 'die' | 'board') => number | null;
}

type Number_ = (moment: Moment) => number;

const during = (moments: readonly Moment[], from: number, to: number) =>
  moments.filter(({ elapsed }) => elapsed >= from && elapsed < to);

function mean(moments: readonly Moment[], of: Number_): number {
  return moments.reduce((sum, moment) => sum + of(moment), 0) / moments.length;
}

const idle = (moments: readonly Moment[], { options }: Known) => during(moments, 0, options.schedule.idle);
const load = (moments: readonly Moment[], { options: { schedule } }: Known) =>
  during(moments, schedule.idle, schedule.idle + schedule.load);

/** Length of the window of the default criterion, s, and what may change in it, K. */
const WINDOW = 900;
const MOST = 1;

const lastWindow = (known: Known) => {
  const { schedule } = known.options;
  const end = schedule.idle + schedule.load;
  return during(known.expected, end - WINDOW, end);
};

const power: Number_ = (moment) => moment.power;
const current = (known: Known): Number_ => {
  const { voltage, resistance } = known.options.supply;
  return (moment) => (voltage - Math.sqrt(voltage ** 2 - 4 * resistance * moment.power)) / (2 * resistance);
};
const rise = (known: Known, part: 'die' | 'board') => mean(lastWindow(known), (moment) => moment[part] - moment.room);

/** First time of the load from which every window of the noise-free course changes by 1 K at most; found from the end backwards. */
function settles(known: Known, part: 'die' | 'board'): number | null {
  const course = load(known.expected, known);
  const value: Number_ = known.ambientMeasured ? (moment) => moment[part] - moment.room : (moment) => moment[part];
  const values = course.map(value);
  const width = Math.round(WINDOW / (course[1]!.elapsed - course[0]!.elapsed));
  let first = values.length - width;
  while (first > 0 && range(values, first - 1, width) <= MOST) first--;
  return first < values.length - width ? course[first]!.elapsed - course[0]!.elapsed : null;
}

function range(values: readonly number[], from: number, width: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = from; i <= from + width && i < values.length; i++) {
    low = Math.min(low, values[i]!);
    high = Math.max(high, values[i]!);
  }
  return high - low;
}

const timeWhere = (known: Known, holds: (moment: Moment) => boolean) => load(known.moments, known).filter(holds).length / 2;

/** Where nothing throttled there is nothing to miss: such runs don't count. */
const throttled =
  (of: TruthOf['of']): TruthOf['of'] =>
  (known, part) =>
    known.truth.firstThrottle === null ? null : of(known, part);

export const TRUTHS: Readonly<Record<string, TruthOf>> = {
  idle_temperature: {
    words: `mean temperature of the idle phase${TWIN}`,
    kind: 'mean or fit',
    of: (known, part) => mean(idle(known.expected, known), (moment) => moment[part]),
  },
  peak_temperature: {
    words: 'highest temperature that the part reached under load, between readings too',
    kind: 'extreme',
    of: (known, part) => load(known.moments, known).reduce((most, moment) => Math.max(most, moment[part]), -273),
  },
  steady_temperature: {
    words: `mean temperature of the last 15 min of the load${TWIN}`,
    kind: 'mean or fit',
    of: (known, part) => mean(lastWindow(known), (moment) => moment[part]),
  },
  temperature_rise: {
    words: `mean temperature less mean ambient of the last 15 min of the load${TWIN}`,
    kind: 'mean or fit',
    of: rise,
  },
  time_to_steady_state: {
    words: `time at which the criterion begins to hold${TWIN}`,
    kind: 'time or count',
    of: settles,
  },
  time_constant: {
    // The die rises by P₁R₁ with the fast one and by some twice as much with the slow one, the board with the slow one nearly alone.
    words: 'time constant of the main part: the slower one of two thermal masses at their steady state, leakage included',
    kind: 'mean or fit',
    of: ({ truth }) => (truth.firstThrottle === null ? truth.timeConstants[1] : null),
  },
  asymptote_temperature: {
    words: 'temperature at which heat and cooling balance, at the mean ambient of the load',
    kind: 'mean or fit',
    of: ({ truth }, part) => (truth.firstThrottle === null ? truth.steady[part] : null),
  },
  throttle_headroom: {
    words: 'limit less the highest temperature that the part reached under load',
    kind: 'extreme',
    of: (known, part) => known.throttleAt - TRUTHS.peak_temperature!.of(known, part)!,
  },
  held_at_limit: {
    words: 'time under load in which the sensor without its scatter would have read the limit less 1 K (or one step), or more',
    kind: 'time or count',
    of: (known, part) => {
      const { die, probe } = known.truth.instruments;
      const sensor = part === 'die' ? die : probe;
      const least = known.throttleAt - Math.max(1, sensor.step) - 1e-9;
      return timeWhere(known, (moment) => quantise(moment[part] + sensor.offset, sensor.step) >= least);
    },
  },
  ambient_ceiling: {
    // The ceiling is that of the fitted end, not of the last window: a load of 45 min ends a little below it.
    words: 'limit less the rise at which heat and cooling balance, over the mean ambient of the load',
    kind: 'mean or fit',
    of: ({ truth, throttleAt }, part) =>
      truth.firstThrottle === null ? throttleAt - (truth.steady[part] - truth.load.room) : null,
  },
  rise_per_watt: {
    words: `true rise over true power of the last 15 min of the load${TWIN}`,
    kind: 'mean or fit',
    of: (known, part) => rise(known, part) / mean(lastWindow(known), power),
  },
  mean_clock: {
    words: `in runs that throttled: mean clock of the load phase${TWIN}`,
    kind: 'mean or fit',
    of: throttled((known) => mean(load(known.expected, known), (moment) => moment.clock)),
  },
  lowest_clock: {
    words: 'in runs that throttled: lowest clock of the load phase, between readings too',
    kind: 'extreme',
    of: throttled((known) =>
      load(known.moments, known).reduce((least, moment) => Math.min(least, moment.clock), Number.POSITIVE_INFINITY),
    ),
  },
  time_below_setting: {
    words: 'in runs that throttled: time under load with the clock below its setting, between readings too',
    kind: 'time or count',
    of: throttled((known) => timeWhere(known, ({ clock }) => clock < known.options.setting.clock * 0.989)),
  },
  throttle_events: {
    words: 'in runs that throttled: number of times that the governor began to throttle, between readings too',
    kind: 'time or count',
    of: throttled((known) => onsets(load(known.moments, known)).length),
  },
  time_to_throttle: {
    words: 'time at which the governor first stepped the clock down',
    kind: 'time or count',
    of: ({ truth }) => truth.firstThrottle,
  },
  sustained_ratio: {
    words: `in runs that throttled: mean clock of the last ten minutes over that of the first two${TWIN}`,
    kind: 'mean or fit',
    of: throttled((known) => {
      const { idle: start, load: length } = known.options.schedule;
      const clock = (from: number, to: number) => mean(during(known.expected, from, to), (moment) => moment.clock);
      return clock(start + length - 600, start + length) / clock(start, start + 120);
    }),
  },
  idle_current: {
    words: `mean current of the idle phase${TWIN}`,
    kind: 'mean or fit',
    of: (known) => mean(idle(known.expected, known), current(known)),
  },
  load_current: {
    words: `mean current of the load phase${TWIN}`,
    kind: 'mean or fit',
    of: (known) => mean(load(known.expected, known), current(known)),
  },
  idle_power: {
    words: `mean power of the idle phase${TWIN}`,
    kind: 'mean or fit',
    of: (known) => mean(idle(known.expected, known), power),
  },
  load_power: {
    words: `mean power of the load phase${TWIN}`,
    kind: 'mean or fit',
    of: (known) => mean(load(known.expected, known), power),
  },
  peak_power: {
    words: 'highest power that the device took under load, between readings too',
    kind: 'extreme',
    of: (known) => load(known.moments, known).reduce((most, moment) => Math.max(most, moment.power), 0),
  },
  energy: {
    words: 'energy that the device took from the first row to the last, as it was, between readings too',
    kind: 'mean or fit',
    of: (known) => during(known.moments, 0, known.end).reduce((sum, moment) => sum + moment.power / 2, 0),
  },
};

function onsets(moments: readonly Moment[]): readonly Moment[] {
  return moments.filter(({ throttled }, k) => throttled && !moments[k - 1]?.throttled);
}
