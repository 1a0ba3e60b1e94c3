/** What is true of a simulated bench, figure by figure, and how often the intervals hold it. */
import { compare } from '../../src/figures/comparison/compare.ts';
import { alone } from '../../src/figures/comparison/compared.ts';
import { type Asked, count, emptyTally, type Tally } from './asked.ts';
import { type Bench, benchOf, scoreTruth, speedupTruth } from './bench.ts';
import { heldAt } from './holds.ts';
import type { Errors } from './plan.ts';

interface BenchTruth extends Asked {
  /** Address of the figure that is asked; in the run `r1`, or in the comparison with `r0`. */
  readonly address: (bench: Bench) => string;
  readonly of: (bench: Bench) => number;
}

const ratio = ({ clocks }: Bench) => clocks[1]! / clocks[0]!;
const law = ({ tests }: Bench, id: string) => tests.find((test) => test.id === id)!.law;
/** Geometric mean over the tests. */
const speedup = (bench: Bench) =>
  Math.exp(bench.tests.reduce((sum, test) => sum + Math.log(speedupTruth(test.law, ratio(bench))), 0) / bench.tests.length);

export const BENCH_TRUTHS: Readonly<Record<string, BenchTruth>> = {
  score: {
    words: 'mean that the repeats of a test scatter about',
    kind: 'mean or fit',
    address: () => 'score.a',
    of: (bench) => scoreTruth(law(bench, 'a'), ratio(bench)),
  },
  energy_per_task: {
    words: 'true mean power of the run times the length of a repeat, had the workload not wandered',
    kind: 'mean or fit',
    address: () => 'energy_per_task.a',
    of: ({ powers, duration }) => powers[1]! * duration,
  },
  score_power: {
    words: 'true mean power of the run, had the workload not wandered',
    kind: 'mean or fit',
    address: () => 'score_power.a',
    of: ({ powers }) => powers[1]!,
  },
  score_clock: {
    words: 'true clock of the run, which a log rounds to its step',
    kind: 'mean or fit',
    address: () => 'score_clock.a',
    of: ({ clocks }) => clocks[1]!,
  },
  speedup: {
    words: 'geometric mean over three tests of the ratios of true mean scores',
    kind: 'mean or fit',
    address: () => 'speedup.r1',
    of: speedup,
  },
  clock_ratio: {
    words: 'ratio of the true clocks, which a log rounds to its step',
    kind: 'mean or fit',
    address: () => 'clock_ratio.r1',
    of: ratio,
  },
  scaling_efficiency: {
    words: 'true speedup over the ratio of the true clocks',
    kind: 'mean or fit',
    address: () => 'scaling_efficiency.r1',
    of: (bench) => speedup(bench) / ratio(bench),
  },
  gain_per_clock: {
    words: 'true speedup less 1 over the ratio of the true clocks less 1',
    kind: 'mean or fit',
    address: () => 'gain_per_clock.r1',
    of: (bench) => (speedup(bench) - 1) / (ratio(bench) - 1),
  },
  scaling_exponent: {
    words: 'exponent of the power law by which a test was made to grow: over four to six settings, or of one pair',
    kind: 'mean or fit',
    address: ({ clocks }) => (clocks.length >= 4 ? 'scaling_exponent.a' : 'scaling_exponent.r1.a'),
    of: (bench) => {
      const made = law(bench, 'a');
      return 'exponent' in made ? made.exponent : Number.NaN;
    },
  },
  clock_independent_share: {
    words: "share of a test's time at the reference's clock that was made not to shrink with the clock",
    kind: 'mean or fit',
    address: () => 'clock_independent_share.c',
    of: (bench) => {
      const made = law(bench, 'c');
      return 'constant' in made ? made.constant : Number.NaN;
    },
  },
  performance_per_watt: {
    words: 'true speedup over the ratio of the true mean powers',
    kind: 'mean or fit',
    address: () => 'performance_per_watt.r1',
    of: (bench) => (speedup(bench) * bench.powers[0]!) / bench.powers[1]!,
  },
};

/** Counts over one bench for each seed. */
export function tallyBenches(seeds: readonly number[], errors: Errors): Tally {
  const tally = emptyTally(Object.keys(BENCH_TRUTHS));
  for (const seed of seeds) {
    const bench = benchOf(seed, errors);
    const [reference, ...others] = bench.runs;
    const figures = new Map([
      ...others[0]!.figures,
      ...compare({ id: 'bench', reference: alone(reference!), others: others.map(alone) }),
    ]);
    for (const [name, { address, of }] of Object.entries(BENCH_TRUTHS))
      count(tally, name, heldAt(figures, address(bench), of(bench)));
  }
  return tally;
}
