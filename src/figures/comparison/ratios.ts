/** Ratios of a setting against the reference: speedup, clock, efficiency, gain per clock, performance per watt. */
import { divide, subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { Refusal } from '../../quantities/refusal.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { exact } from '../../quantities/uncertainty.ts';
import { isReason, type Reason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import type { FigureName } from '../catalogue.ts';
import { orRefused } from '../joined.ts';
import { type Derived, leavesOut } from './compared.ts';
import { clockRatioOf, ofScope, type Pair, powerRatioOf, type Scope, speedupOf } from './relative.ts';
import { type Question, type Tested, tested } from './tested.ts';

/** Ratios that join scores with a clock or a power. */
const JOINED = { neutral: 1, kind: 'apart', joins: true } as const;

/** The ratios of one setting: over all tests, then test by test. */
export function ratioFigures(pair: Pair): Tested[] {
  const scopes: Scope[] = [null, ...pair.tests];
  const bare = { neutral: 1, kind: 'apart' } as const;
  return [
    ...each(pair, 'speedup', scopes, bare, speedupOf),
    ...each(pair, 'clock_ratio', clockScopes(pair), bare, clockRatioOf),
    ...each(pair, 'scaling_efficiency', scopes, JOINED, (of, scope) =>
      joined(speedupOf(of, scope), clockRatioOf(of, scope), divide),
    ),
    ...each(pair, 'gain_per_clock', scopes, JOINED, gainPerClock),
    ...each(pair, 'performance_per_watt', scopes, JOINED, (of, scope) =>
      joined(speedupOf(of, scope), powerRatioOf(of, scope), divide),
    ),
  ];
}

function each(
  pair: Pair,
  name: FigureName,
  scopes: readonly Scope[],
  question: Question,
  ratio: (pair: Pair, scope: Scope) => Derived | Reason,
): Tested[] {
  const between = [pair.run, pair.reference] as const;
  return scopes.map((scope) => {
    const address = scope ? `${name}.${pair.run.alias}.${scope.id}` : `${name}.${pair.run.alias}`;
    return tested(name, address, ratio(pair, scope), ofScope(pair, scope), { ...question, between });
  });
}

/** A clock of its own has a test only where the logs cover it. */
function clockScopes(pair: Pair): Scope[] {
  const own = pair.tests.filter((test) => {
    const ratio = clockRatioOf(pair, test);
    return !isReason(ratio) && ratio.of?.over === 'the time of the scores';
  });
  return [null, ...own];
}

/** Speedup and clock (or power) put together; the overall spread of the tests is that of the speedup alone, and left out. */
function joined(
  speedup: Derived | Reason,
  other: Derived | Reason,
  operation: (a: Quantity, b: Quantity) => Quantity | Refusal,
): Derived | Reason {
  if (isReason(speedup)) return speedup;
  if (isReason(other)) return other;
  const quantity = orRefused(operation(speedup.quantity, other.quantity));
  if (isReason(quantity)) return quantity;
  const { tests } = speedup.of ?? {};
  const { over, clock } = other.of ?? {};
  return {
    quantity,
    origins: [...speedup.origins, ...other.origins],
    inferred: [...(speedup.inferred ?? []), ...(other.inferred ?? [])],
    standsIn: [...(speedup.standsIn ?? []), ...(other.standsIn ?? [])],
    of: {
      ...(tests === undefined ? {} : { tests }),
      ...(over === undefined ? {} : { over }),
      ...(clock === undefined ? {} : { clock }),
      ...rangeMarks({ of: other.of ?? {} }),
    },
  };
}

/** (speedup − 1) ÷ (clock ratio − 1): only where the clocks are told apart, or it divides by nothing. */
function gainPerClock(pair: Pair, scope: Scope): Derived | Reason {
  const clock = clockRatioOf(pair, scope);
  return (
    sameClocks(pair, clock) ??
    joined(speedupOf(pair, scope), clock, (a, b) => overOne(a, (gain) => overOne(b, (rise) => divide(gain, rise))))
  );
}

function overOne(quantity: Quantity, then: (rest: Quantity) => Quantity | Refusal): Quantity | Refusal {
  const rest = subtract(quantity, exact(1, '1'));
  return isRefusal(rest) ? rest : then(rest);
}

/** Why figures per clock cannot be had where two clocks are about the same; null where they are told apart. */
export function sameClocks({ run, reference }: Pair, clock: Derived | Reason): Reason | null {
  if (isReason(clock) || leavesOut(clock.quantity, 1)) return null;
  return { absent: 'out-of-range', why: `The measured clocks of ${run.alias} and ${reference.alias} are not told apart.` };
}
