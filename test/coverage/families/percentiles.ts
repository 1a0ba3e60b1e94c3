/** Percentiles of clock and power, the noise of a sensor, and the efficiency of an adapter. */
import { derive } from '../../../src/figures/derive.ts';
import { normalQuantile } from '../../../src/statistics/normal-quantile.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { wandering } from '../../simulator/noise.ts';
import type { Cell, Family, Trial } from '../family.ts';

const CLOCK = 2.4e9;
const POWER = 10;
const INPUT = 12;
/** Of a clock and of a power, as a share; of a temperature, K. */
const SPREAD = 0.02;
const NOISE = 0.2;

const ASKED = [
  ['clock_percentile_1', 0.01, CLOCK],
  ['clock_percentile_5', 0.05, CLOCK],
  ['median_clock', 0.5, CLOCK],
  ['power_percentile_95', 0.95, POWER],
] as const;

/** Correlation time in readings, 0 for white noise. */
interface Readings {
  readonly n: number;
  readonly memory: number;
}

/** W, Hz, K: noise of the sensors of a constant load. */
const METER = 0.1;
const COUNTER = 3e6;

function simulate({ n, memory }: Readings, { noise, run }: Trial) {
  const series = () => (memory === 0 ? () => noise.normal() : wandering(noise, 1, memory, 1));
  const [clock, load, taken] = [series(), series(), series()];
  const power = Array.from({ length: n }, () => POWER * (1 + SPREAD * load()));
  const log = logOf(every(1, n - 1), {
    soc: { quantity: 'temperature', values: () => 60 + NOISE * noise.normal() },
    core: { quantity: 'clock', values: () => CLOCK * (1 + SPREAD * clock()) },
    input: { quantity: 'power', values: power, at: 'board input' },
    wall: { quantity: 'power', values: (_, row) => (INPUT / POWER) * power[row]! + 0.05 * taken(), at: 'wall' },
  });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, n)] }));
  const white = 1.96 / Math.sqrt(n);
  return [
    ...ASKED.map(([asked, p, level]) => {
      const z = normalQuantile(p);
      const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
      const known = ((white * Math.sqrt(p * (1 - p))) / density) * SPREAD * level;
      return { asked, figure: figures.get(asked), truth: level * (1 + SPREAD * z), known };
    }),
    { asked: 'sensor_noise', figure: figures.get('sensor_noise'), truth: NOISE, known: white * NOISE * Math.sqrt(35 / 36) },
    {
      asked: 'adapter_efficiency',
      figure: figures.get('adapter_efficiency'),
      truth: POWER / INPUT,
      known: (white * 0.05 * POWER) / INPUT ** 2,
    },
  ];
}

/** Nothing scatters but the sensors; each row is written `times` times, or each reading held for so many rows. */
function simulateConstant(
  { rows, times, sameInstant }: { rows: number; times: number; sameInstant: boolean },
  { noise, run }: Trial,
) {
  const drawn = (level: number, deviation: number) => {
    const each = Array.from({ length: rows }, () => level + deviation * noise.normal());
    return Array.from({ length: rows * times }, (_, row) => each[Math.floor(row / times)]!);
  };
  const instants = Array.from({ length: rows * times }, (_, row) => (sameInstant ? times * Math.floor(row / times) : row));
  const log = logOf(instants, {
    soc: { quantity: 'temperature', values: drawn(60, NOISE) },
    core: { quantity: 'clock', values: drawn(CLOCK, COUNTER) },
    input: { quantity: 'power', values: drawn(POWER, METER), at: 'board input' },
  });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, rows * times)] }));
  return [
    ...ASKED.map(([asked, , level]) => ({ asked, figure: figures.get(asked), truth: level })),
    { asked: 'sensor_noise', figure: figures.get('sensor_noise'), truth: NOISE },
  ];
}

function constantCell(name: string, times: number, sameInstant: boolean, more: Partial<Cell> = {}): Cell {
  return { name, simulate: (trial) => simulateConstant({ rows: 600, times, sameInstant }, trial), why: ALL_NOISE, ...more };
}

function cell(name: string, made: Readings, more: Partial<Cell> = {}): Cell {
  return { name, simulate: (trial) => simulate(made, trial), ...more };
}

const ORDERED =
  'An interval between order statistics holds 95 % or more, since ranks are whole numbers; and a difference of a few effective readings moves an end by a whole one. Towards the median it has room for readings that scatter by noise alone; here the load does.';
const ALL_NOISE =
  'The interval reaches from where noise alone may have put the reading to where the load alone may be: here all is noise, so that the truth lies near one end of it, and beyond that in 2 % to 3 % of trials.';

export const FAMILY: Family = {
  title: 'Percentiles, noise of a sensor, efficiency of an adapter',
  words:
    'Readings of a load of constant level scatter about it by 2 % (a clock, a power), 0.2 K (a temperature) and 0.05 W (the power at the wall, beside what the load takes). The truths are those of the distributions. In the last cells the load is constant, and what scatters is noise of the sensors, 3 MHz and 0.1 W: the truths are its levels, also where each row is written twice, or each reading is held for two rows.',
  trials: 50,
  quick: 20,
  cells: [
    cell('600 readings, white noise', { n: 600, memory: 0 }, { quick: true, why: ORDERED }),
    cell('3600 readings, white noise', { n: 3600, memory: 0 }, { why: ORDERED }),
    cell('1800 readings, correlation time of 2 readings', { n: 1800, memory: 2 }, { why: ORDERED }),
    constantCell('600 readings of a constant load', 1, false, { quick: true }),
    constantCell('600 readings of a constant load, each row written twice', 2, true),
    constantCell('600 readings of a constant load, each held for two rows', 2, false),
  ],
};
