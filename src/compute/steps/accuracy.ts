/** The published values beside ours: carried out once for a version of the code, then stored. */
import { type CheckTable, checkTables } from '../../figures/checks/results.ts';
import { memo } from '../store/memo.ts';
import type { Store } from '../store/store.ts';

/** `code`: the digest of the code that makes them. */
export function computeAccuracy(store: Store, code: string): readonly CheckTable[] {
  return memo(store, `accuracy-${code}`, checkTables);
}
