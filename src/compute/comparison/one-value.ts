/** Whether a condition that runs state as a quantity is one value in all of them, as far as its uncertainty tells. */
import { leavesOut } from '../../figures/comparison/compared.ts';
import { isRefusal, subtract } from '../../quantities/arithmetic.ts';
import { isParseFailure, parseQuantity } from '../../quantities/parse.ts';
import type { Quantity } from '../../quantities/quantity.ts';

/** A condition of one run, as its row prints it. */
interface StatedText {
  readonly run: string;
  readonly text: string | undefined;
}

/** A supply may say behind its voltage where that holds. */
interface Placed {
  readonly quantity: Quantity;
  readonly at: string;
}

/** False where a run states it in words or not at all: words tell for themselves. */
export function areOneValue(stated: readonly StatedText[]): boolean {
  const values = stated.map(placed);
  return values.every((a) => a !== null && values.every((b) => b !== null && isOne(a, b)));
}

function placed({ run, text = '' }: StatedText): Placed | null {
  const [, value = '', at = ''] = /^(.*?)(?:\s+at\s+(.*))?$/s.exec(text) ?? [];
  const quantity = parseQuantity(value, { id: `run:${run}`, title: run, dof: null }, { unstated: 'unknown' });
  return isParseFailure(quantity) ? null : { quantity, at };
}

/** Where an uncertainty is unknown, only the same value is one. */
function isOne(a: Placed, b: Placed): boolean {
  if (a.at !== b.at) return false;
  const difference = subtract(a.quantity, b.quantity);
  if (isRefusal(difference)) return false;
  return difference.value === 0 || (difference.parts !== null && !leavesOut(difference, 0));
}
