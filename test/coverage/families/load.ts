/** The mean of a load whose power has a course: leakage that follows the temperature, a slow workload. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise } from '../../simulator/noise.ts';
import { energiesAgree } from '../agree.ts';
import type { Cell, Family, Trial } from '../family.ts';
import { knownHalfWidth, type Noise, noiseOf } from '../noise.ts';

/** W at the end, and scatter of a reading. */
const POWER = 8;
const DEVIATION = 0.1;
/** s. */
const LOAD = 3600;
const ROW = 6;
const TAU = 300;

interface Made {
  /** By how many standard deviations the power climbs with the temperature. */
  readonly climb: number;
  readonly noise: Noise;
  /** Whether a temperature is logged, whose fitted course tells how the power goes. */
  readonly thermometer: boolean;
}

function simulate({ climb, noise, thermometer }: Made, { setting, noise: chance, run }: Trial) {
  const times = every(ROW, LOAD - ROW);
  const next = noiseOf(noise, times.length, chance);
  const course = (t: number) => POWER - climb * DEVIATION * Math.exp(-t / TAU);
  const start = 22 + 0.1 * setting.uniform();
  const heat = (t: number) => quantise(start + 40 * (1 - Math.exp(-t / TAU)) + 0.1 * chance.normal(), 0.1);
  const log = logOf(times, {
    input: { quantity: 'power', values: times.map((t) => course(t) + DEVIATION * next()) },
    ...(thermometer ? { soc: { quantity: 'temperature', values: heat, step: 0.1 } as const } : {}),
  });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] }));
  const truth = POWER - (climb * DEVIATION * TAU * -Math.expm1(-LOAD / TAU)) / LOAD;
  const known = DEVIATION * knownHalfWidth(noise, times.length);
  return [
    { asked: 'load_power', figure: figures.get('load_power'), truth, known },
    { asked: 'energy.load', figure: figures.get('energy.load'), truth: truth * LOAD, known: known * LOAD },
    ...energiesAgree(figures, 'energy.load', 'load_power', LOAD),
  ];
}

function cell(name: string, made: Made, more: Partial<Cell> = {}): Cell {
  return { name, pairs: true, simulate: (trial) => simulate(made, trial), ...more };
}

const WHITE = { memory: 0 };
const UNKNOWN =
  'Without a temperature nothing tells a course of the power from slow noise: the climb counts as scatter, which makes the interval wide.';
const WIDEST = 'The widest of three estimates is taken, which holds quick noise alone a little more often than need be.';

export const FAMILY: Family = {
  title: 'Mean power of a load with a course',
  words: `A load of an hour whose power climbs to 8 W with the time constant of the device, 300 s, by none to five times its scatter of 0.1 W. It is read every ${ROW} s; noise is white or has a memory, given as a share of the load. The truth is the mean of the course.`,
  trials: 100,
  quick: 6,
  cells: [
    ...[0, 3, 5].flatMap((climb) => [
      cell(
        `climb of ${climb} standard deviations, white noise`,
        { climb, noise: WHITE, thermometer: true },
        { why: WIDEST, quick: climb === 5 },
      ),
      ...[60, 15].map((share) =>
        cell(`climb of ${climb} standard deviations, memory 1/${share}`, {
          climb,
          noise: { memory: 1 / share },
          thermometer: true,
        }),
      ),
    ]),
    cell(
      'climb of 5 standard deviations, white noise, no thermometer',
      { climb: 5, noise: WHITE, thermometer: false },
      { why: UNKNOWN, quick: true },
    ),
  ],
};
