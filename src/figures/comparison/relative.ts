/** One run beside the reference: speed, clock and power, for one test or for all of them together. */
import { compareText } from '../../problem.ts';
import { divide } from '../../quantities/arithmetic.ts';
import { isReason, type Of, type Reason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import { isPresent } from '../figure.ts';
import { orRefused } from '../joined.ts';
import { clocksOf } from './clocks.ts';
import { type Derived, operand, originOf, type Setting } from './compared.ts';
import type { Settled } from './settings.ts';
import { geometricMeanOf, ofTest, ratiosOf, type Test, testSpeedup } from './tests.ts';

/** Over which a ratio is taken: one test, or all that both runs have. */
export type Scope = Test | null;

export interface Pair {
  readonly run: Setting;
  readonly reference: Setting;
  readonly tests: readonly Test[];
}

export function pairsOf({ reference, others }: Settled, tests: readonly Test[]): Pair[] {
  return others.map((run) => ({ run, reference, tests }));
}

/** What a figure of a scope says of it. */
export function ofScope(pair: Pair, scope: Scope): Of {
  const { run, reference } = pair;
  return { run: run.alias, reference: reference.alias, ...(scope ? ofTest(scope) : {}) };
}

/** Speedup in one test, or the geometric mean over the tests that both runs have. */
export function speedupOf({ run, reference, tests }: Pair, scope: Scope): Derived | Reason {
  if (scope) return testSpeedup(run, reference, scope);
  const { ratios, leftOut, why } = ratiosOf(tests, (test) => testSpeedup(run, reference, test));
  if (ratios.length === 0) return why ?? { absent: 'no-readings', why: `Neither ${run.alias} nor ${reference.alias} has scores.` };
  const overall = geometricMeanOf(ratios);
  return leftOut.length === 0 ? overall : { ...overall, of: { ...overall.of, left_out: leftOut.join('; ') } };
}

/** How a clock or a power stands in for that of the scores: in short, and as an inference. */
const STANDS_IN = {
  clock: {
    standsIn: ['the mean clock of the load phase stands in for that of the scores'],
    inferred: ['The clock during the scores was not logged: the mean clock of the load phase stands in for it.'],
  },
  power: {
    standsIn: ['the mean power of the load phase stands in for that of the scores'],
    inferred: ['The power during the scores was not logged: the mean power of the load phase stands in for it.'],
  },
};

/** Ratio of measured clocks: during the scores where both logs cover them, else over the load phase. */
export function clockRatioOf(pair: Pair, scope: Scope): Derived | Reason {
  return duringScores(pair, scope, 'score_clock') ?? overLoad(pair, 'mean_clock', 'clock');
}

/** Ratio of powers at one place: during the scores where both logs cover them, else over the load phase. */
export function powerRatioOf(pair: Pair, scope: Scope): Derived | Reason {
  const during = duringScores(pair, scope, 'score_power');
  if (during) return during;
  const key = powerKeys(pair.run, pair.reference);
  return isReason(key) ? key : overLoad(pair, key.run, 'power', key.reference);
}

function duringScores({ run, reference, tests }: Pair, scope: Scope, name: 'score_clock' | 'score_power'): Derived | null {
  const inTest = (test: Test) => ratio(run, reference, `${name}.${test.id}`);
  if (scope) {
    const found = inTest(scope);
    return isReason(found) ? null : { ...found, of: { ...found.of, over: 'the time of the scores' } };
  }
  const scored = ratiosOf(tests, (test) => testSpeedup(run, reference, test)).tests;
  const { ratios, leftOut } = ratiosOf(scored, inTest);
  if (ratios.length === 0 || leftOut.length > 0) return null;
  return { ...geometricMeanOf(ratios), of: { ...sharedOf(ratios), over: 'the time of the scores' } };
}

/** What all ratios of a mean say of their clocks, and the mark of any that lies outside an accurate range. */
function sharedOf(ratios: readonly Derived[]): Of {
  const clocks = new Set(ratios.map(({ of }) => of?.clock));
  const [clock] = clocks;
  return {
    ...(clocks.size === 1 && clock !== undefined ? { clock } : {}),
    ...rangeMarks(...ratios.map(({ of }) => ({ of: of ?? {} }))),
  };
}

function overLoad({ run, reference, tests }: Pair, key: string, what: 'clock' | 'power', referenceKey = key): Derived | Reason {
  const found = ratio(run, reference, key, referenceKey);
  if (isReason(found)) return found;
  return { ...found, of: { ...found.of, over: 'the load phase' }, ...(tests.length > 0 ? STANDS_IN[what] : {}) };
}

function ratio(run: Setting, reference: Setting, key: string, referenceKey = key): Derived | Reason {
  const own = operand(run, key);
  const base = operand(reference, referenceKey);
  if (isReason(base)) return base;
  if (isReason(own)) return own;
  if (own.of?.at !== base.of?.at) return differentPlaces(run, reference, own.of?.at, base.of?.at);
  const clocks = clocksOf({ alias: run.alias, figure: own }, { alias: reference.alias, figure: base });
  if (isReason(clocks)) return clocks;
  const quantity = orRefused(divide(own.quantity, base.quantity));
  if (isReason(quantity)) return quantity;
  if (!(quantity.value > 0)) return { absent: 'out-of-range', why: `The ratio of ${key} is not above zero.` };
  return {
    quantity,
    origins: [originOf(run, key), originOf(reference, referenceKey)],
    of: { ...clocks, ...rangeMarks(own, base) },
  };
}

type At = string | number | boolean | undefined;

/** Electrical figures of different places, or of a place that one of the two does not state, are not put together. */
function differentPlaces(run: Setting, reference: Setting, own: At, base: At): Reason {
  const where = (at: At) => (at === undefined ? 'at a place that is not stated' : `at the ${at}`);
  return {
    absent: 'different-places',
    why: `Power was measured ${where(own)} in ${run.alias} and ${where(base)} in ${reference.alias}.`,
  };
}

/** The load powers of two runs at one place: the primary ones, or the first two by channel name that agree. */
export function powerKeys(run: Setting, reference: Setting): { readonly run: string; readonly reference: string } | Reason {
  const own = loadPowers(run);
  const base = loadPowers(reference);
  for (const a of own) {
    const b = base.find((each) => each.at === a.at);
    if (b) return { run: a.key, reference: b.key };
  }
  if (own[0] && base[0]) return differentPlaces(run, reference, own[0].at, base[0].at);
  const missing = operand(own[0] ? reference : run, 'load_power');
  return isReason(missing) ? missing : { absent: 'operand-absent', why: 'No load power of both runs is present.' };
}

function loadPowers({ figures }: Setting): { readonly key: string; readonly at: At }[] {
  return [...figures]
    .filter(([, figure]) => figure.name === 'load_power' && isPresent(figure))
    .map(([key, { of }]) => ({ key, at: of?.at }))
    .sort((a, b) => compareText(a.key, b.key));
}
