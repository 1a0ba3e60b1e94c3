/** What is made while the site is put together, kept by all that it was made from: where one log has changed, what comes of the others stands. */
import { digestOf } from './digest.ts';
import type { Store } from './store.ts';

export interface Memory {
  /**
   * What `make` gives, or gave of the same inputs. `what` names it, `inputs` cover all that `make` reads; `blobs` are those of the result
   * that must be in the store too.
   */
  of<T>(what: string, inputs: unknown, make: () => T, blobs?: (made: T) => readonly string[]): T;
  /** Keys of all that was asked for. */
  readonly keys: readonly string[];
}

/** `code` is the digest of all code of stage 1. */
export function openMemory(store: Store, code: string): Memory {
  const keys: string[] = [];
  return {
    keys,
    of<T>(what: string, inputs: unknown, make: () => T, blobs: (made: T) => readonly string[] = () => []): T {
      const key = digestOf(['assembled', what, code, inputs]);
      keys.push(key);
      const stored = store.get(key) as T | undefined;
      if (stored !== undefined && blobs(stored).every((blob) => store.has(blob))) return stored;
      const made = make();
      store.set(key, made);
      return made;
    },
  };
}
