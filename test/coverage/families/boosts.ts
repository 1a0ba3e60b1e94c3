/** Boosts at the beginning of a load, seen in the power or in the temperature alone. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import type { Cell, Family, Trial } from '../family.ts';

/** K, s. */
const RISE = 40;
const TAU = 300;
const START = 22;
const LOAD = 3600;
const ROW = 4;
const STEP = 0.1;
/** W under the load that lasts. */
const POWER = 8;

interface Made {
  /** The power of the boost over that of the load, and how long it lasts, s. */
  readonly times: number;
  readonly seconds: number;
  /** Whether the power is logged. */
  readonly meter: boolean;
}

/** Linear heat flow: the response to the load, and that to what the boost adds, which then goes again. */
function simulate({ times, seconds, meter }: Made, { setting, noise, run }: Trial) {
  const start = START + STEP * setting.uniform();
  const part = (t: number) => (t <= 0 ? 0 : 1 - Math.exp(-t / TAU));
  const course = (t: number) => start + RISE * (part(t) + (times - 1) * (part(t) - part(t - seconds)));
  const next = wandering(noise, 0.1, 10, ROW);
  const power = (t: number) => POWER * (t < seconds ? times : 1) + 0.05 * noise.normal();
  const log = logOf(every(ROW, LOAD - ROW), {
    soc: { quantity: 'temperature', values: (t) => quantise(course(t) + next(), STEP), step: STEP },
    ...(meter ? { input: { quantity: 'power', values: power } as const } : {}),
  });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] }));
  // A power that is logged shows a boost of two minutes or more as a load that changed.
  const must = meter && seconds >= 120 ? { absent: /^The power .* above its median from .* of the load/ } : {};
  const answer = (asked: string, truth: number) => ({ asked, figure: figures.get(asked), truth, ...must });
  return [answer('time_constant', TAU), answer('asymptote_temperature', start + RISE)];
}

const ROOMY =
  'The interval has room for a slower part that the scatter may hide, and for what a step response leaves out of a real device; this device has none.';

function cell(made: Made, more: Partial<Cell> = {}): Cell {
  const { times, seconds, meter } = made;
  const boost = times === 1 ? 'no boost' : `a boost to ${times} times for ${seconds} s`;
  return {
    name: `${boost}, ${meter ? 'power logged' : 'temperature alone'}`,
    simulate: (trial) => simulate(made, trial),
    why: ROOMY,
    ...more,
  };
}

export const FAMILY: Family = {
  title: 'Boosts at the beginning of a load',
  words: `A device rises by ${RISE} K with a time constant of ${TAU} s under a load of an hour, which begins with a boost of 10 s to 300 s; the sensor has steps of ${STEP} K and noise of 0.1 K with a memory of 10 s. The truths are those of the load that lasts.`,
  trials: 100,
  quick: 5,
  cells: [
    cell({ times: 1, seconds: 0, meter: false }, { quick: true }),
    ...[10, 30, 60, 120, 300].map((seconds) => cell({ times: 1.5, seconds, meter: false }, { quick: seconds === 60 })),
    ...[30, 120].map((seconds) => cell({ times: 1.2, seconds, meter: false })),
    ...[30, 300].map((seconds) => cell({ times: 2, seconds, meter: false })),
    ...[30, 120, 300].map((seconds) => cell({ times: 1.5, seconds, meter: true })),
  ],
};
