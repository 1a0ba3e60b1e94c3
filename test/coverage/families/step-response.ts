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
/** A part that is over in seconds is so many times quicker. */
const QUICKER = 20;
/** A load of so many time constants shows that the second part is the slower one, even beside one that is over in seconds. */
const LONG = 12;
/** Rows of a load, however long it is. */
const ROWS = 600;

interface Made {
  /** K: of the slower part. */
  readonly second: number;
  /** How many times slower it is. */
  readonly ratio: number;
  /** K: of a part that is over in seconds: a twentieth of the main time constant. */
  readonly quick?: number;
  /** Length of the load in time constants of the main part. */
  readonly load: number;
}

function simulate({ second, ratio, load, quick = 0 }: Made, { setting, noise: chance, run }: Trial) {
  const length = load * TAU;
  const row = length / ROWS;
  const next = wandering(chance, NOISE, MEMORY, row);
  const start = START + STEP * setting.uniform();
  const rise = (t: number, height: number, tau: number) => height * (1 - Math.exp(-t / tau));
  const course = (t: number) => start + rise(t, quick, TAU / QUICKER) + rise(t, RISE, TAU) + rise(t, second, ratio * TAU);
  const values = (t: number) => quantise(course(t) + next(), STEP);
  const room = { value: START, unit: '°C', parts: [] };
  const end = start + quick + RISE + second;
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
    ...(quick > 0 && load < LONG
      ? []
      : second > 0
        ? [answer('second_time_constant', ratio * TAU), answer('second_amplitude', second)]
        : [
            {
              asked: 'second_time_constant',
              figure: figures.get('second_time_constant'),
              truth: null,
              absent: /one time constant|too little of its step|cannot be told from a boost/,
            },
          ]),
  ];
}

const ROOM =
  'The interval has room for a slower part that the scatter may hide, and for what a step response leaves out of a real device; this device has none.';

function cell(second: number, ratio: number, load: number, more: Partial<Cell> = {}): Cell {
  return cellOf({ second, ratio, load }, more);
}

/** Three parts, of which the readings bear two at the most: which of them the second one is, only a long load tells. */
function three(quick: number, second: number, ratio: number, load: number): Cell {
  return cellOf({ quick, second, ratio, load });
}

function cellOf(made: Made, more: Partial<Cell> = {}): Cell {
  const { quick, second, ratio, load } = made;
  const part = second === 0 ? 'no second part' : `${second} K of ${ratio} times slower`;
  return {
    name: `${quick ? `${quick} K of ${QUICKER} times quicker and ` : ''}${part}, a load of ${load} time constants`,
    simulate: (trial) => simulate(made, trial),
    why: ROOM,
    ...more,
  };
}

export const FAMILY: Family = {
  title: 'Step responses with a slower part',
  words: `A device rises by ${RISE} K with a time constant of ${TAU} s, and by 2 K to 10 K more with one that is 2 to 24 times longer; in some of them by some kelvin more within seconds. The sensor has steps of ${STEP} K and noise of ${NOISE} K with a memory of ${MEMORY} s. A slower part may be too small or too slow to be seen.`,
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
    three(6, 8, 5, 4),
    three(6, 8, 5, 12),
    three(2, 10, 4, 12),
    three(6, 5, 24, 6),
  ],
};
