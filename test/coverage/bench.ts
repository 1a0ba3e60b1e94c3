/** A bench where one specimen runs tests at several clocks, simulated: clocks, power and scores alone, with laws that are known. */
import type { ComparedRun } from '../../src/figures/comparison/compared.ts';
import { derive } from '../../src/figures/derive.ts';
import type { ScoredTest } from '../../src/figures/scores/score-table.ts';
import { contextOf, instrumentOf, logOf, phase } from '../figures/build.ts';
import { quantise, wandering } from '../simulator/noise.ts';
import { type Random, random } from '../simulator/random.ts';
import { type Errors, errorsOf } from './plan.ts';

/** How performance grows with the clock: as a power of it, or as a time a/f + b of which only the first term shrinks. */
export type Law = { readonly exponent: number } | { readonly constant: number };

export interface Bench {
  /** Hz, as they really were; the first is the reference's. */
  readonly clocks: readonly number[];
  /** W, mean, as it really was. */
  readonly powers: readonly number[];
  readonly tests: readonly { readonly id: string; readonly law: Law }[];
  /** s, of each repeat. */
  readonly duration: number;
  readonly runs: readonly ComparedRun[];
}

/** Of the power meter: share of the reading, W. Limits, or expanded uncertainties. */
const GAIN = 0.01;
const OFFSET = 0.02;
/** s between two repeats. */
const PAUSE = 5;
const DURATION = 30;
/** Seeds of benches with tests lie far from all others. */
const SEEDS = 3_000_000;

/** Performance at a clock as a multiple of that at the reference's clock. */
export function speedupTruth(law: Law, ratio: number): number {
  return 'exponent' in law ? ratio ** law.exponent : 1 / ((1 - law.constant) / ratio + law.constant);
}

/** Draws a bench with three to six settings and derives the figures of its runs. */
export function benchOf(seed: number, errors: Errors): Bench {
  const draw = random(SEEDS + seed);
  const between = (low: number, high: number) => low + (high - low) * draw.uniform();
  const off = errorsOf(draw, errors);
  const meter = { gain: off.within(GAIN), offset: off.within(OFFSET), noise: between(0.005, 0.02), step: 0.01 };
  const settings = 3 + Math.floor(draw.uniform() * 4);
  const clocks = Array.from({ length: settings }, (_, k) => 1.6e9 * (1 + 0.12 * k) * (1 + between(-0.01, 0.01)));
  const powers = clocks.map((clock) => 2.4 * (clock / 1.6e9) ** 2.2 * between(0.97, 1.03));
  const tests = [
    { id: 'a', law: { exponent: between(0.4, 1.1) } },
    { id: 'b', law: { exponent: between(0.4, 1.1) } },
    { id: 'c', law: { constant: between(0.1, 0.6) } },
  ];
  const repeats = [3, 5, 10][Math.floor(draw.uniform() * 3)]!;
  const scatter = between(0.002, 0.015);
  const wander = { share: between(0.002, 0.012), memory: between(3, 20) };
  const step = [1e6, 1e7, 2.5e7][Math.floor(draw.uniform() * 3)]!;
  const runs = clocks.map((clock, k) => {
    const made = { clock, power: powers[k]!, ratio: clock / clocks[0]!, meter, wander, step, repeats, scatter, tests, errors };
    return runOf(`r${k}`, `bench-${seed}-${k}`, made, draw);
  });
  return { clocks, powers, tests, duration: DURATION, runs };
}

interface Made {
  readonly clock: number;
  readonly power: number;
  readonly ratio: number;
  readonly meter: { readonly gain: number; readonly offset: number; readonly noise: number; readonly step: number };
  readonly wander: { readonly share: number; readonly memory: number };
  readonly step: number;
  readonly repeats: number;
  readonly scatter: number;
  readonly tests: Bench['tests'];
  readonly errors: Errors;
}

function runOf(alias: string, run: string, made: Made, draw: Random): ComparedRun {
  const { clock, power, meter, wander, step, repeats, errors } = made;
  const rows = made.tests.length * repeats * (DURATION + PAUSE) + 1;
  const working = wandering(draw, wander.share, wander.memory, 1);
  const seen = Array.from({ length: rows }, () =>
    quantise(power * (1 + working()) * (1 + meter.gain) + meter.offset + meter.noise * draw.normal(), meter.step),
  );
  const log = logOf(
    Array.from({ length: rows }, (_, t) => t),
    {
      core: { quantity: 'clock', values: () => quantise(clock, step), step },
      input: { quantity: 'power', values: seen, at: 'board input', instrument: 'meter', step: meter.step },
    },
  );
  const coverage = errors === 'limits' ? 'rectangular' : { k: 2 };
  const context = contextOf({
    run,
    instruments: { meter: instrumentOf('meter', 'power', { ofReading: GAIN, absolute: OFFSET, coverage }) },
    phases: [phase('load', 0, Number.POSITIVE_INFINITY)],
  });
  const scores = { file: 'bench.csv', tests: made.tests.map((test, k) => scored(test, k, made, draw)) };
  const { figures } = derive(log, context, { scores });
  return { alias, run, device: 'larch', specimen: 'no-1', clockSetting: clock, figures };
}

/** Results of a test: points where more is better, or seconds; the true mean at the reference's clock is 1000 and 100. */
function scored({ id, law }: Bench['tests'][number], index: number, made: Made, draw: Random): ScoredTest {
  const points = 'exponent' in law;
  const truth = scoreTruth(law, made.ratio);
  const step = points ? 0.1 : 0.01;
  const repeats = Array.from({ length: made.repeats }, (_, k) => {
    const from = (index * made.repeats + k) * (DURATION + PAUSE) + 2;
    const moment = (seconds: number) => ({ kind: 'elapsed', seconds }) as const;
    return {
      name: String(k + 1),
      value: quantise(truth * (1 + made.scatter * draw.normal()), step),
      step,
      window: { start: moment(from), end: moment(from + DURATION) },
      line: k + 2,
    };
  });
  return { id, title: id, unit: points ? 'points' : 's', better: points ? 'higher' : 'lower', repeats };
}

/** Mean that the repeats of a test scatter about. */
export function scoreTruth(law: Law, ratio: number): number {
  const gain = speedupTruth(law, ratio);
  return 'exponent' in law ? 1000 * gain : 100 / gain;
}
