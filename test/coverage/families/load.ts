/** The mean of a load that warms its device, and its energy: a course beside the noise; a load that a governor cuts back. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import type { Cell, Family, Trial } from '../family.ts';
import { knownHalfWidth, type Noise, noiseOf } from '../noise.ts';

/** W; its scatter; and K, °C of the room and of the climb. */
const POWER = 8;
const DEVIATION = 0.1;
const [ROOM, CLIMB] = [22, 40];
/** Length of the load, s. */
const LOAD = 3600;

interface Made {
  readonly every: number;
  readonly noise: Noise;
  /** Of leakage, in standard deviations of the noise: how much more power the warm device takes. */
  readonly leakage: number;
  /** Time constant of the device, s. */
  readonly settles: number;
  /** The governor cuts the power to this share after so many seconds. */
  readonly cut?: { readonly after: number; readonly to: number };
}

function simulate({ every: step, noise, leakage, settles, cut }: Made, { noise: chance, run }: Trial) {
  const t = every(step, LOAD);
  const next = noiseOf(noise, t.length, chance);
  const warm = (s: number) => 1 - Math.exp(-s / settles);
  const share = (s: number) => (cut && s >= cut.after ? cut.to : 1);
  const course = (s: number) => share(s) * (POWER + leakage * DEVIATION * warm(s));
  const log = logOf(t, {
    soc: { quantity: 'temperature', values: (s) => ROOM + CLIMB * warm(s) + 0.05 * chance.normal() },
    core: { quantity: 'clock', values: (s) => 2e9 * share(s), shows: 'delivered' },
    input: { quantity: 'power', values: (s) => course(s) + DEVIATION * next() },
  });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] }));
  const truth = meanOf(course);
  const known = DEVIATION * knownHalfWidth(noise, t.length);
  return [
    { asked: 'load_power', figure: figures.get('load_power'), truth, known },
    { asked: 'energy.load', figure: figures.get('energy.load'), truth: truth * LOAD, known: known * LOAD },
  ];
}

/** Mean of the course over the load, by a rule far finer than any log. */
function meanOf(course: (s: number) => number): number {
  const n = 20 * LOAD;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += course(((i + 0.5) * LOAD) / n);
  return sum / n;
}

function cell(name: string, made: Made, more: Partial<Cell> = {}): Cell {
  return { name, pairs: true, simulate: (trial) => simulate(made, trial), ...more };
}

const WHITE = { memory: 0 };
const CUT = 'Where the load changed the course takes four parameters, and the interval is made for few independent readings.';

export const FAMILY: Family = {
  title: 'The mean of a load, as it went',
  words:
    'A load of an hour at 8 W, whose readings scatter by 0.1 W, white or with a memory given as a share of the load. Its device warms exponentially, and takes more power when it is warm. In some cells a governor cuts clock and power back. The truths are the mean of the power without noise, and that times an hour.',
  trials: 60,
  quick: 30,
  cells: [
    ...[225, 60, 10].flatMap((step) => [
      cell(`one reading in ${step} s, no leakage, white noise`, { every: step, noise: WHITE, leakage: 0, settles: 300 }),
      cell(
        `one reading in ${step} s, leakage of 5 deviations, white noise`,
        { every: step, noise: WHITE, leakage: 5, settles: 300 },
        { quick: step === 60 },
      ),
    ]),
    ...[60, 30, 15].map((share) =>
      cell(`one reading in 4 s, leakage of 3 deviations, memory 1/${share}`, {
        every: 4,
        noise: { memory: 1 / share },
        leakage: 3,
        settles: 300,
      }),
    ),
    cell('one reading in 4 s, leakage of 5 deviations that settles in 900 s, memory 1/30', {
      every: 4,
      noise: { memory: 1 / 30 },
      leakage: 5,
      settles: 900,
    }),
    ...[600, 1800].flatMap((after) =>
      [0, 60].map((share) =>
        cell(
          `one reading in 4 s, cut to 80 % after ${after} s, ${share === 0 ? 'white noise' : `memory 1/${share}`}`,
          { every: 4, noise: { memory: share === 0 ? 0 : 1 / share }, leakage: 3, settles: 300, cut: { after, to: 0.8 } },
          { why: CUT },
        ),
      ),
    ),
  ],
};
