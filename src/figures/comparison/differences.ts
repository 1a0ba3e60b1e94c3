/** Differences of a run against the reference: load power, rise over ambient, mean clock. */
import { subtract } from '../../quantities/arithmetic.ts';
import { isReason, type Reason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import type { Figure } from '../figure.ts';
import { orRefused } from '../joined.ts';
import { clocksOf } from './clocks.ts';
import { type ComparedRun, compared, type Derived, named, operand, verdictAgainst } from './compared.ts';
import { ofScope, type Pair, powerKeys } from './relative.ts';

/** W: load power less the reference's, at one place of measurement. */
export function powerDelta(pair: Pair): Figure {
  const { run, reference } = pair;
  const keys = powerKeys(run, reference);
  const outcome = isReason(keys) ? keys : difference(run, keys.run, reference, keys.reference);
  return compared('power_delta', outcome, ofScope(pair, null), (quantity) => verdictAgainst(quantity, 0));
}

/**
 * K: rise over ambient less the reference's, of the channel that is the primary one in both. Two specimens have two die sensors: where
 * these state no accuracy, the scatter of the readings does not tell the specimens apart.
 */
export function riseDelta(pair: Pair): Figure {
  const { run, reference } = pair;
  const outcome = difference(run, 'temperature_rise', reference, 'temperature_rise');
  const strangers = run.device !== reference.device || run.specimen !== reference.specimen;
  return compared('rise_delta', outcome, ofScope(pair, null), (quantity) =>
    strangers && quantity.repeatabilityOnly ? 'cannot be told' : verdictAgainst(quantity, 0),
  );
}

/** Hz: mean clock under load less the reference's; absent where one is the requested and the other the delivered clock. */
export function clockDelta(pair: Pair): Figure {
  const { run, reference } = pair;
  const outcome = difference(run, 'mean_clock', reference, 'mean_clock');
  return compared('clock_delta', outcome, ofScope(pair, null), (quantity) => verdictAgainst(quantity, 0));
}

/** A run's figure less the reference's, which may stand under another key: source by source, so that what they share cancels. */
export function difference(run: ComparedRun, key: string, reference: ComparedRun, referenceKey: string): Derived | Reason {
  const own = operand(run, key);
  const base = operand(reference, referenceKey);
  if (isReason(base)) return base;
  if (isReason(own)) return own;
  const clocks = clocksOf({ alias: run.alias, figure: own }, { alias: reference.alias, figure: base });
  if (isReason(clocks)) return clocks;
  const quantity = orRefused(subtract(own.quantity, base.quantity));
  if (isReason(quantity)) return quantity;
  const { channel, at } = own.of ?? {};
  const of = {
    ...(channel === undefined ? {} : { channel }),
    ...(at === undefined ? {} : { at }),
    ...clocks,
    ...rangeMarks(own, base),
  };
  return { quantity, figures: [named(run, key), named(reference, referenceKey)], of };
}
