/** How performance grows over the settings of a comparison: an exponent, and the share of time that no clock shortens. */

import { combine } from '../../quantities/combine.ts';
import { exact } from '../../quantities/uncertainty.ts';
import { log } from '../../statistics/elementary.ts';
import { isReason, type Reason } from '../absent.ts';
import type { Derived } from '../comparison/compared.ts';
import { sameClocks } from '../comparison/ratios.ts';
import { clockRatioOf, ofScope, type Pair, type Scope, speedupOf } from '../comparison/relative.ts';
import type { Settled } from '../comparison/settings.ts';
import { type Tested, tested } from '../comparison/tested.ts';
import { ofTest, type Test } from '../comparison/tests.ts';
import { exponentOf, independentShareOf } from './estimators.ts';
import { type Estimator, type Point, throughFit } from './through-fit.ts';

/** An exponent with an interval takes this many settings; fewer give pairs. */
const SETTINGS = 4;

const LINEAR = { neutral: 1, kind: 'linear', joins: true } as const;
const SHARE = { neutral: 0, kind: 'share', joins: true } as const;

/**
 * `scaling_exponent` and `scaling_exponent.<test>` from four settings on, else pairs by alias; `clock_independent_share.<test>`. `id` is
 * the comparison's, for the sources that only the fits have.
 */
export function scalingFigures(id: string, together: Settled, pairs: readonly Pair[], tests: readonly Test[]): Tested[] {
  const settings = settingsOf(together);
  return [
    ...(settings >= SETTINGS ? exponents(id, pairs, tests) : pairExponents(pairs, tests, settings)),
    ...tests.map((test) => {
      const address = `clock_independent_share.${test.id}`;
      const outcome = fitted(id, pairs, test, address, independentShareOf);
      return tested('clock_independent_share', address, outcome, ofTest(test), SHARE);
    }),
  ];
}

/** Distinct clock settings; one that states none counts as one of its own. */
function settingsOf({ reference, others }: Settled): number {
  return new Set([reference, ...others].map(({ clockSetting, run }) => clockSetting ?? run)).size;
}

function exponents(id: string, pairs: readonly Pair[], tests: readonly Test[]): Tested[] {
  return [null, ...tests].map((scope: Scope) => {
    const address = scope ? `scaling_exponent.${scope.id}` : 'scaling_exponent';
    const outcome = fitted(id, pairs, scope, address, exponentOf);
    return tested('scaling_exponent', address, outcome, scope ? ofTest(scope) : {}, LINEAR);
  });
}

/** All runs through one fit; a run whose operand is absent is absent from it, and named. */
function fitted(id: string, pairs: readonly Pair[], scope: Scope, address: string, estimator: Estimator): Derived | Reason {
  const points = pairs.map((pair) => pointOf(pair, scope));
  const had = points.filter((each): each is Point & Derived => !isReason(each));
  const lost = points.find(isReason);
  if (lost) return lost;
  if (!had.every(({ x, y }) => fits(x.value) && fits(y.value)))
    return { absent: 'out-of-range', why: 'The runs are too far apart to compute with.' };
  if (!pairs.some((pair) => sameClocks(pair, clockRatioOf(pair, scope)) === null))
    return { absent: 'out-of-range', why: 'The measured clocks of the runs are not told apart.' };
  const one = exact(1, '1');
  const source = { id: `comparison:${id}/${address}/misfit`, title: `scatter about the fit of ${address} in ${id}` };
  const quantity = throughFit([{ x: one, y: one }, ...had], estimator, source);
  return {
    quantity,
    origins: had.flatMap(({ origins }) => origins),
    inferred: had.flatMap(({ inferred = [] }) => inferred),
    standsIn: had.flatMap(({ standsIn = [] }) => standsIn),
    of: { settings: had.length + 1 },
  };
}

/** Squares and logarithms of a ratio stay within what a double holds. */
function fits(ratio: number): boolean {
  return ratio > 1e-100 && ratio < 1e100;
}

function pointOf(pair: Pair, scope: Scope): (Point & Derived) | Reason {
  const speedup = speedupOf(pair, scope);
  const clock = clockRatioOf(pair, scope);
  if (isReason(speedup)) return speedup;
  if (isReason(clock)) return clock;
  return {
    x: clock.quantity,
    y: speedup.quantity,
    quantity: speedup.quantity,
    origins: [...speedup.origins, ...clock.origins],
    inferred: [...(speedup.inferred ?? []), ...(clock.inferred ?? [])],
    standsIn: [...(speedup.standsIn ?? []), ...(clock.standsIn ?? [])],
  };
}

/** Fewer settings: no exponent of the whole, and one for each against the reference. */
function pairExponents(pairs: readonly Pair[], tests: readonly Test[], settings: number): Tested[] {
  const why = `An exponent over the settings takes ${SETTINGS} of them; there are ${settings} here. There is one for each pair.`;
  const overall = { absent: 'too-short', why } as const;
  return [
    tested('scaling_exponent', 'scaling_exponent', overall, {}, LINEAR),
    ...pairs.flatMap((pair) =>
      [null, ...tests].map((scope: Scope) => {
        const address = ['scaling_exponent', pair.run.alias, ...(scope ? [scope.id] : [])].join('.');
        const question = { ...LINEAR, between: [pair.run, pair.reference] as const };
        return tested('scaling_exponent', address, pairExponent(pair, scope), ofScope(pair, scope), question);
      }),
    ),
  ];
}

/** ln speedup ÷ ln clock ratio. */
function pairExponent(pair: Pair, scope: Scope): Derived | Reason {
  const point = pointOf(pair, scope);
  if (isReason(point)) return point;
  const same = sameClocks(pair, { quantity: point.x, origins: [] });
  if (same) return same;
  const [logX, logY] = [log(point.x.value), log(point.y.value)];
  const { step: _step, ...quantity } = combine(logY / logX, '1', [
    { quantity: point.y, sensitivity: 1 / (point.y.value * logX) },
    { quantity: point.x, sensitivity: -logY / (point.x.value * logX * logX) },
  ]);
  return {
    quantity,
    origins: point.origins,
    inferred: point.inferred ?? [],
    standsIn: point.standsIn ?? [],
    of: { settings: 2 },
  };
}
