/** Figures that combine measured quantities: arithmetic that must not fail, and where the result came from. */

import type { Quantity } from '../quantities/quantity.ts';
import { isRefusal, type Refusal } from '../quantities/refusal.ts';
import type { Reason } from './absent.ts';
import type { From } from './figure.ts';

/** A refused combination as an absence: units of a rating or condition that do not fit the channel. */
export function orRefused(result: Quantity | Refusal): Quantity | Reason {
  return isRefusal(result) ? { absent: 'out-of-range', why: `The quantities do not go together: ${result.refused}.` } : result;
}

/** Columns of both, and the rows that cover both. */
export function joinFrom(a: From, b: From | null): From {
  if (!b) return a;
  const columns = [...new Set([...a.columns, ...b.columns])];
  const rows = a.rows && b.rows ? ([Math.min(a.rows[0], b.rows[0]), Math.max(a.rows[1], b.rows[1])] as const) : (a.rows ?? b.rows);
  return { columns, rows };
}
