/** Whether two runs were made in about the same ambient. */
import { subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isReason } from '../absent.ts';
import { orRefused } from '../joined.ts';
import { leavesOut } from './compared.ts';

/** K: as much as a temperature may still change in 15 min and count as steady. */
const LEAST = 1;
/** K: this far apart, however uncertain they are. */
const ENOUGH = 2;

/** The rule in words. */
export const AMBIENT_RULE =
  'Ambients count as different where they lie more than 1 K apart and the 95 % interval of their difference leaves out zero, or more than 2 K apart whatever their uncertainty (common practice, no source).';

/** Two ambients, °C, measured or stated; what their thermometer is wrong by in both is not between them. */
export function ambientsDiffer(a: Quantity, b: Quantity): boolean {
  const difference = orRefused(subtract(a, b));
  if (isReason(difference)) return true;
  const apart = Math.abs(difference.value);
  return apart > ENOUGH || (apart > LEAST && leavesOut(difference, 0));
}
