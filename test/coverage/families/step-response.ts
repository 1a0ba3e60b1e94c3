/** Step responses with a second, slower part, seen and unseen. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import type { Cell, Family, Trial } from '../family.ts';

/** K, s: of the main part. */
const RISE = 35;
const TAU = 300;
const START = 22;
/** K: the sensor, and its noise with a memory of 10 s. */
const STEP = 0.1;
const NOISE = 0.1;
const MEMORY = 10;
/** Rows of a load, however long it is. */
const ROWS = 600;

interface Made {
  /** K: of the slower part. */
  readonly second: number;
  /** How many times slower it is. */
  readonly ratio: number;
  /** Length of the load in time constants of the main part. */
  readonly load: number;
}

function simulate({ second, ratio, load }: Made, { setting, noise: chance, run }: Trial) {
  const length = load * TAU;
  const row = length / ROWS;
  const next = wandering(chance, NOISE, MEMORY, row);
  const start = START + STEP * setting.uniform();
  const course = (t: number) => start + RISE * (1 - Math.exp(-t / TAU)) + second * (1 - Math.exp(-t / (ratio * TAU)));
  const values = (t: number) => quantise(course(t) + next(), STEP);
  const room = { value: START, unit: '°C', parts: [] };
  const end = start + RISE + second;
  const limit = { value: end + 3, unit: '°C', parts: [] };
  const log = logOf(every(row, length - row), { soc: { quantity: 'temperature', values, step: STEP } });
  const device = { id: 'larch', throttleAt: { soc: limit } };
  const { figures } = derive(log, contextOf({ run, device, ambient: room, phases: [phase('load', 0, length)] }));
  const answer = (asked: string, truth: number) => ({ asked, figure: figures.get(asked), truth });
  return [
    answer('time_constant', TAU),
    answer('response_amplitude', RISE),
    answer('asymptote_temperature', end),
    answer('ambient_ceiling', START + 3),
    ...(second > 0
      ? [answer('second_time_constant', ratio * TAU), answer('second_amplitude', second)]
      : [
          {
            asked: 'second_time_constant',
            figure: figures.get('second_time_constant'),
            truth: null,
            absent: /one time constant|too little of the step|cannot be told from a boost/,
          },
        ]),
  ];
}

const ROOM =
  'The interval has room for a slower part that the scatter may hide, and for what a step response leaves out of a real device; this device has none.';

function cell(second: number, ratio: number, load: number, more: Partial<Cell> = {}): Cell {
  const part = second === 0 ? 'no second part' : `${second} K of ${ratio} times slower`;
  return {
    name: `${part}, a load of ${load} time constants`,
    simulate: (trial) => simulate({ second, ratio, load }, trial),
    why: ROOM,
    ...more,
  };
}

export const FAMILY: Family = {
  title: 'Step responses with a slower part',
  words: `A device rises by ${RISE} K with a time constant of ${TAU} s, and by 2 K to 10 K more with one that is 2 to 24 times longer. The sensor has steps of ${STEP} K and noise of ${NOISE} K with a memory of ${MEMORY} s. A slower part may be too small or too slow to be seen.`,
  trials: 100,
  quick: 4,
  cells: [
    ...[3, 6, 12, 20].map((load) => cell(0, 1, load, { quick: load === 6 })),
    cell(5, 2, 12),
    cell(10, 2, 6),
    cell(5, 4, 12),
    cell(10, 4, 6),
    cell(2, 4, 6),
    cell(5, 8, 12, { quick: true }),
    cell(10, 8, 20),
    cell(10, 8, 3),
    cell(5, 24, 12),
    cell(5, 24, 6),
    cell(10, 24, 20),
    cell(10, 24, 4),
    cell(2, 24, 12),
  ],
};
