/** Differences of a run against the reference: load power, rise over ambient, mean clock. */
import { subtract } from '../../quantities/arithmetic.ts';
import { isReason, type Reason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import type { FigureName } from '../catalogue.ts';
import { orRefused } from '../joined.ts';
import { clocksOf } from './clocks.ts';
import { type Derived, operand, originOf, type Setting } from './compared.ts';
import { ofScope, type Pair, powerKeys } from './relative.ts';
import { type Tested, tested } from './tested.ts';

/** W: load power less the reference's, at one place of measurement. */
export function powerDelta(pair: Pair): Tested {
  const { run, reference } = pair;
  const keys = powerKeys(run, reference);
  return delta(pair, 'power_delta', isReason(keys) ? keys : difference(run, keys.run, reference, keys.reference));
}

/**
 * K: rise over ambient less the reference's, of the channel that is the primary one in both. Two specimens have two die sensors: where
 * these state no accuracy, the scatter of the readings does not tell the specimens apart.
 */
export function riseDelta(pair: Pair): Tested {
  return delta(pair, 'rise_delta', difference(pair.run, 'temperature_rise', pair.reference, 'temperature_rise'));
}

/** Hz: mean clock under load less the reference's; absent where one is the requested and the other the delivered clock. */
export function clockDelta(pair: Pair): Tested {
  return delta(pair, 'clock_delta', difference(pair.run, 'mean_clock', pair.reference, 'mean_clock'));
}

function delta(pair: Pair, name: FigureName, outcome: Derived | Reason): Tested {
  const between = [pair.run, pair.reference] as const;
  const question = { neutral: 0, kind: 'apart', between, sensors: name === 'rise_delta' } as const;
  return tested(name, `${name}.${pair.run.alias}`, outcome, ofScope(pair, null), question);
}

/** A run's figure less the reference's, which may stand under another key: source by source, so that what they share cancels. */
export function difference(run: Setting, key: string, reference: Setting, referenceKey: string): Derived | Reason {
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
  return { quantity, origins: [originOf(run, key), originOf(reference, referenceKey)], of };
}
