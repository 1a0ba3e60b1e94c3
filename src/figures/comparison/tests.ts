/** The tests of compared runs, and how one run did in a test beside another. */

import { compareText } from '../../problem.ts';
import { divide } from '../../quantities/arithmetic.ts';
import { combine } from '../../quantities/combine.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { exp, log } from '../../statistics/elementary.ts';
import { isReason, type Of, type Reason } from '../absent.ts';
import { orRefused } from '../joined.ts';
import { type ComparedRun, type Derived, evenMean, operand, originOf, type Setting } from './compared.ts';

export interface Test {
  readonly id: string;
  readonly title: string;
}

/** Tests of the runs by first appearance, also those that only some of them have. */
export function testsOf(runs: readonly ComparedRun[]): Test[] {
  const tests = new Map<string, Test>();
  for (const { figures } of runs) {
    for (const { name, of } of figures.values()) {
      if (name !== 'score' || typeof of?.test !== 'string' || tests.has(of.test)) continue;
      tests.set(of.test, { id: of.test, title: String(of.title) });
    }
  }
  return [...tests.values()];
}

export function ofTest({ id, title }: Test): Of {
  return { test: id, title };
}

/** Performance in a test as a multiple of the reference's: score over score where higher is better, the other way round where lower is. */
export function testSpeedup(run: Setting, reference: Setting, { id, title }: Test): Derived | Reason {
  const key = `score.${id}`;
  const own = operand(run, key);
  const base = operand(reference, key);
  if (isReason(base)) return base;
  if (isReason(own)) return own;
  const { better } = own.of ?? {};
  if (better !== base.of?.better)
    return {
      absent: 'out-of-range',
      why: `The tables of ${run.alias} and ${reference.alias} state different directions for ${title}.`,
    };
  const positive =
    positiveOr(own.quantity, `${title} of ${run.alias}`) ?? positiveOr(base.quantity, `${title} of ${reference.alias}`);
  if (positive) return positive;
  const ratio = orRefused(better === 'higher' ? divide(own.quantity, base.quantity) : divide(base.quantity, own.quantity));
  if (isReason(ratio)) return ratio;
  if (!(ratio.value > 0)) return { absent: 'out-of-range', why: `The scores of ${title} are too far apart to compute with.` };
  if (ratio.unit !== '1')
    return {
      absent: 'out-of-range',
      why: `${title} is in ${own.quantity.unit} in ${run.alias} and in ${base.quantity.unit} in ${reference.alias}.`,
    };
  return { quantity: ratio, origins: [originOf(run, key), originOf(reference, key)] };
}

/** Ratios and logarithms need numbers above zero. */
function positiveOr({ value }: Quantity, what: string): Reason | null {
  return value > 0
    ? null
    : { absent: 'out-of-range', why: `The score ${what} is not above zero, so that no ratio can be made of it.` };
}

/**
 * Geometric mean of ratios: exp of the mean logarithm, uncertainty carried by ∂G/∂r = G/(n·r), so that what the ratios share is shared.
 * How far the tests lie apart goes along as the smallest and largest: it is no part of the uncertainty, which is that of these tests.
 */
export function geometricMeanOf(ratios: readonly Derived[]): Derived {
  const n = ratios.length;
  const value = exp(evenMean(ratios.map(({ quantity }) => log(quantity.value))));
  const terms = ratios.map(({ quantity }) => ({ quantity, sensitivity: value / (n * quantity.value) }));
  const values = ratios.map(({ quantity }) => quantity.value);
  return {
    quantity: combine(value, '1', terms),
    origins: ratios.flatMap(({ origins }) => origins),
    inferred: ratios.flatMap(({ inferred = [] }) => inferred),
    standsIn: ratios.flatMap(({ standsIn = [] }) => standsIn),
    of: { tests: n, smallest: Math.min(...values), largest: Math.max(...values) },
  };
}

/** Ratios by test as far as they can be had, with the names of the tests left out: these by id, so that no order of figures shows in words. */
export function ratiosOf(
  tests: readonly Test[],
  ratio: (test: Test) => Derived | Reason,
): {
  readonly ratios: readonly Derived[];
  readonly tests: readonly Test[];
  readonly leftOut: readonly string[];
  readonly why: Reason | null;
} {
  const found = tests.map((test) => ({ test, ratio: ratio(test) }));
  const had = found.filter((each): each is { test: Test; ratio: Derived } => !isReason(each.ratio));
  const lost = found.filter(({ ratio }) => isReason(ratio)).sort((a, b) => compareText(a.test.id, b.test.id));
  return {
    ratios: had.map((each) => each.ratio),
    tests: had.map(({ test }) => test),
    leftOut: lost.map(({ test }) => test.title),
    why: (lost[0]?.ratio as Reason | undefined) ?? null,
  };
}
