/** The level of a phase: few readings, noise with a memory, sensors that read in steps. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise } from '../../simulator/noise.ts';
import type { Cell, Family, Trial } from '../family.ts';
import { knownHalfWidth, type Noise, noiseOf } from '../noise.ts';

/** W, and its scatter. */
const LEVEL = 2;
const DEVIATION = 0.2;

interface Made {
  readonly n: number;
  readonly noise: Noise;
  /** Step of the meter in standard deviations of the noise; 0 for none. */
  readonly step?: number;
}

/** The level lies anywhere between two steps, the same in both runs of a pair. */
function simulate({ n, noise, step = 0 }: Made, { setting, noise: chance, run }: Trial) {
  const size = step * DEVIATION;
  const truth = LEVEL + size * setting.uniform();
  const next = noiseOf(noise, n, chance);
  const power = Array.from({ length: n }, () => quantise(truth + DEVIATION * next(), size));
  const log = logOf(every(1, n - 1), { input: { quantity: 'power', values: power, ...(step > 0 ? { step: size } : {}) } });
  const { figures } = derive(log, contextOf({ run, phases: [phase('idle', 0, n - 1)] }));
  const known = DEVIATION * knownHalfWidth(noise, n);
  const lasted = n - 1;
  return [
    { asked: 'idle_power', figure: figures.get('idle_power'), truth, known },
    { asked: 'energy.idle', figure: figures.get('energy.idle'), truth: truth * lasted, known: known * lasted },
  ];
}

function cell(name: string, made: Made, more: Partial<Cell> = {}): Cell {
  return { name, pairs: true, simulate: (trial) => simulate(made, trial), ...more };
}

const WHITE = { memory: 0 };
const SLOW =
  'Noise with a memory of a tenth of the stretch is the slowest that the readings can tell; the interval holds a little less often.';
const BEYOND =
  'Noise with a memory longer than a tenth of the stretch cannot be told from the level itself: no log of that length can know. It shows as spread between runs.';
const WIDEST = 'The widest of three estimates is taken, which holds quick noise alone a little more often than need be.';
const STEPS =
  'Readings that scatter less than 0.6 of their step leave open where between two steps the level lies: the interval then reaches over the step.';

export const FAMILY: Family = {
  title: 'The level of a phase',
  words:
    'An idle phase of about 2 W, whose readings scatter by 0.2 W: few of them, or many with a memory (a correlation time, given as a share of the phase), also beside noise without one, or read in steps. The truth is the level, and the level times the length of the phase.',
  trials: 400,
  quick: 60,
  cells: [
    ...[3, 5, 8, 12, 16, 20, 32, 60, 100, 300, 3600].map((n) =>
      cell(
        `${n} readings, white noise`,
        { n, noise: WHITE },
        { quick: n === 5 || n === 16 || n === 100, ...(n >= 60 ? { why: WIDEST } : {}) },
      ),
    ),
    ...[100, 50, 30, 20, 15].map((share) =>
      cell(`3600 readings, memory 1/${share}`, { n: 3600, noise: { memory: 1 / share } }, { quick: share === 15 }),
    ),
    ...[20, 60, 300, 3600].map((n) => cell(`${n} readings, memory 1/10`, { n, noise: { memory: 1 / 10 } }, { why: SLOW })),
    ...[60, 15].map((share) =>
      cell(`3600 readings, white noise and 0.3 of it with memory 1/${share}`, {
        n: 3600,
        noise: { memory: 1 / share, white: 1 / 0.3 },
      }),
    ),
    ...[8, 32, 300].flatMap((n) =>
      [20, 5, 2, 1].map((step) =>
        cell(`${n} readings, white noise of 1/${step} step`, { n, noise: WHITE, step }, step > 1 ? { why: STEPS } : {}),
      ),
    ),
    ...[5, 2].map((share) => cell(`300 readings, memory 1/${share}`, { n: 300, noise: { memory: 1 / share } }, { beyond: BEYOND })),
  ],
};
