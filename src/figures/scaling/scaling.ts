/** How performance grows over the settings of a comparison: an exponent, and the share of time that no clock shortens. */

import { combine } from '../../quantities/combine.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { exact, interval95 } from '../../quantities/uncertainty.ts';
import { log } from '../../statistics/elementary.ts';
import { absent, isReason, type Of, type Reason } from '../absent.ts';
import { type Compared, compared, type Derived, verdictAgainst } from '../comparison/compared.ts';
import { sameClocks } from '../comparison/ratios.ts';
import { clockRatioOf, ofScope, type Pair, type Scope, speedupOf } from '../comparison/relative.ts';
import { ofTest, type Test } from '../comparison/tests.ts';
import type { Entry } from '../soak.ts';
import { exponentOf, independentShareOf } from './estimators.ts';
import { type Estimator, type Point, throughFit } from './through-fit.ts';

/** An exponent with an interval takes this many settings; fewer give pairs. */
const SETTINGS = 4;

/** `scaling_exponent` and `scaling_exponent.<test>` from four settings on, else pairs by alias; `clock_independent_share.<test>`. */
export function scalingFigures(comparison: Compared, pairs: readonly Pair[], tests: readonly Test[]): Entry[] {
  const settings = settingsOf(comparison);
  return [
    ...(settings >= SETTINGS ? exponents(comparison, pairs, tests) : pairExponents(pairs, tests, settings)),
    ...tests.map((test): Entry => {
      const outcome = fitted(comparison, pairs, test, `clock_independent_share.${test.id}`, independentShareOf);
      return [
        `clock_independent_share.${test.id}`,
        compared('clock_independent_share', outcome, ofTest(test), (quantity) => verdictAgainst(quantity, 0)),
      ];
    }),
  ];
}

/** Distinct clock settings; a run that states none counts as one of its own. */
function settingsOf({ reference, others }: Compared): number {
  return new Set([reference, ...others].map(({ clockSetting, run }) => clockSetting ?? run)).size;
}

function exponents(comparison: Compared, pairs: readonly Pair[], tests: readonly Test[]): Entry[] {
  return [null, ...tests].map((scope: Scope) => {
    const address = scope ? `scaling_exponent.${scope.id}` : 'scaling_exponent';
    const outcome = fitted(comparison, pairs, scope, address, exponentOf);
    return [address, compared('scaling_exponent', outcome, scope ? ofTest(scope) : {}, linearVerdict)];
  });
}

/** All runs through one fit; a run whose operand is absent is absent from it, and named. */
function fitted({ id }: Compared, pairs: readonly Pair[], scope: Scope, address: string, estimator: Estimator): Derived | Reason {
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
    figures: had.flatMap(({ figures }) => figures),
    inferred: had.flatMap(({ inferred = [] }) => inferred),
    of: { runs: had.length + 1 },
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
    figures: [...speedup.figures, ...clock.figures],
    inferred: [...(speedup.inferred ?? []), ...(clock.inferred ?? [])],
  };
}

/** Fewer settings: no exponent of the whole, and one for each run against the reference. */
function pairExponents(pairs: readonly Pair[], tests: readonly Test[], settings: number): Entry[] {
  const why = `An exponent over the settings takes ${SETTINGS} of them; these runs have ${settings}. There is one for each pair.`;
  return [
    ['scaling_exponent', absent('scaling_exponent', { absent: 'too-short', why })],
    ...pairs.flatMap((pair) =>
      [null, ...tests].map((scope: Scope): Entry => {
        const address = ['scaling_exponent', pair.run.alias, ...(scope ? [scope.id] : [])].join('.');
        return [address, compared('scaling_exponent', pairExponent(pair, scope), ofScope(pair, scope), linearVerdict)];
      }),
    ),
  ];
}

/** ln speedup ÷ ln clock ratio. */
function pairExponent(pair: Pair, scope: Scope): Derived | Reason {
  const point = pointOf(pair, scope);
  if (isReason(point)) return point;
  const same = sameClocks(pair, { quantity: point.x, figures: [] });
  if (same) return same;
  const [logX, logY] = [log(point.x.value), log(point.y.value)];
  const { step: _step, ...quantity } = combine(logY / logX, '1', [
    { quantity: point.y, sensitivity: 1 / (point.y.value * logX) },
    { quantity: point.x, sensitivity: -logY / (point.x.value * logX * logX) },
  ]);
  return { quantity, figures: point.figures, inferred: point.inferred ?? [], of: { runs: 2 } satisfies Of };
}

/** What the data excludes and what it does not, of performance that is proportional to the clock (an exponent of 1). */
function linearVerdict(quantity: Quantity): string {
  const interval = interval95(quantity);
  if (!interval) return 'cannot be told';
  const [low, high] = interval;
  if (high < 1) return 'linear is excluded: it grows more slowly than the clock';
  if (low > 1) return 'linear is excluded: it grows faster than the clock';
  return `linear is not excluded; exponents below ${outward(low, Math.floor)} and above ${outward(high, Math.ceil)} are`;
}

/** To two decimals, away from 1: what is said to be excluded is. */
function outward(end: number, round: (value: number) => number): string {
  return (round(end * 100) / 100).toFixed(2);
}
