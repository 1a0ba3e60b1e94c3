/** The level of a phase: few readings, and noise with a memory. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { wandering } from '../../simulator/noise.ts';
import type { Cell, Family, Trial } from '../family.ts';

/** W, and its scatter. */
const LEVEL = 2;
const DEVIATION = 0.2;

/** Noise as a share of readings: `memory` is its correlation time as a share of the stretch, 0 for white noise. */
interface Noise {
  readonly n: number;
  readonly memory: number;
}

function simulate({ n, memory }: Noise, { noise, run }: Trial) {
  const next = memory === 0 ? () => DEVIATION * noise.normal() : wandering(noise, DEVIATION, memory * n, 1);
  const power = Array.from({ length: n }, () => LEVEL + next());
  const log = logOf(every(1, n - 1), { input: { quantity: 'power', values: power } });
  const { figures } = derive(log, contextOf({ run, phases: [phase('idle', 0, n)] }));
  return [{ asked: 'idle_power', figure: figures.get('idle_power'), truth: LEVEL, known: 1.96 * knownError({ n, memory }) }];
}

/** Standard deviation of the mean of n readings of a first-order autoregressive series (G. E. P. Box and G. M. Jenkins; from memory). */
function knownError({ n, memory }: Noise): number {
  if (memory === 0) return DEVIATION / Math.sqrt(n);
  const keep = Math.exp(-1 / (memory * n));
  const factor = (1 + keep) / (1 - keep) - (2 * keep * (1 - keep ** n)) / (n * (1 - keep) ** 2);
  return DEVIATION * Math.sqrt(factor / n);
}

function cell(name: string, made: Noise, more: Partial<Cell> = {}): Cell {
  return { name, pairs: true, simulate: (trial) => simulate(made, trial), ...more };
}

export const FAMILY: Family = {
  title: 'The level of a phase',
  words:
    'Readings of an idle phase of 2 W scatter about it by 0.2 W. The truth is 2 W. Few readings are independent; many have a memory, given as a share of the phase.',
  trials: 1000,
  quick: 100,
  cells: [
    ...[60, 100, 300, 3600].map((n) => cell(`${n} readings, white noise`, { n, memory: 0 }, { quick: n === 100 || n === 300 })),
  ],
};
