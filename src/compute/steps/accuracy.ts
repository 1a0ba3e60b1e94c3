/** The published values beside ours: carried out once for a version of the code, then stored. */
import { type CheckTable, checkTables } from '../../figures/checks/results.ts';
import type { Store } from '../store/store.ts';

/** `code`: the digest of the code that makes them. The key is for the manifest, so that pruning keeps the result. */
export function computeAccuracy(store: Store, code: string): { readonly key: string; readonly tables: readonly CheckTable[] } {
  const key = `accuracy-${code}`;
  const stored = store.get(key) as readonly CheckTable[] | undefined;
  if (stored !== undefined) return { key, tables: stored };
  const tables = checkTables();
  store.set(key, tables);
  return { key, tables };
}
