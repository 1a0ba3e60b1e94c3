/** A figure of one's own beside one that somebody else published. */
import { subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { intervalOf } from '../sources.ts';

export interface Beside {
  /** Own less quoted; null where they cannot be subtracted. */
  readonly difference: Quantity | null;
  /** Whether they are told apart, or why nobody can say. */
  readonly verdict: string;
}

/**
 * Judged on the 95 % interval of the difference, where the source states an uncertainty. Where it states none there is no verdict: a bare
 * number may be off by anything. Other people's numbers are never put into a fit, a mean or a spread of one's own.
 */
export function besideQuoted(own: Quantity, quoted: Quantity): Beside {
  const difference = subtract(own, quoted);
  if (isRefusal(difference)) return { difference: null, verdict: `no verdict: ${difference.refused}` };
  if (quoted.parts === null) return { difference, verdict: 'no verdict: the source states no uncertainty' };
  if (own.repeatabilityOnly) return { difference, verdict: 'no verdict: the own figure is repeatability only' };
  const interval = intervalOf(difference);
  if (interval === null) return { difference, verdict: 'no verdict: the uncertainty of the own figure is unknown' };
  return { difference, verdict: interval[0] > 0 || interval[1] < 0 ? 'told apart' : 'not told apart' };
}
