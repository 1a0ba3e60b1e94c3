/**
 * The one memo of stage 1: what is made is stored under a key that covers all it is made from, and taken from there the next time. An entry
 * names the blobs and entries that were stored while it was made, so that it counts only with them and nobody keeps lists of them.
 */
import { digestOf } from './digest.ts';
import type { Attachments, Store } from './store.ts';

/** A store that notes what goes through it. */
export interface Recording extends Store {
  /** All that was stored or taken so far, in the order of its names. */
  used(): Attachments;
}

/** A view of a store; what it notes, the store below it notes too. */
export function recording(store: Store): Recording {
  const blobs = new Set<string>();
  const entries = new Set<string>();
  const note = (key: string, kept: Attachments) => {
    store.note(key, kept);
    entries.add(key);
    for (const blob of kept.blobs) blobs.add(blob);
    for (const entry of kept.entries) entries.add(entry);
  };
  return {
    ...store,
    note,
    set(key, value, kept = { blobs: [], entries: [] }) {
      store.set(key, value, kept);
      note(key, kept);
    },
    keep(bytes) {
      const blob = store.keep(bytes);
      blobs.add(blob);
      return blob;
    },
    keepPieces(write) {
      const kept = store.keepPieces(write);
      blobs.add(kept.blob);
      return kept;
    },
    used: () => ({ blobs: [...blobs].sort(), entries: [...entries].sort() }),
  };
}

/** What an earlier build stored under a key, noted as used; undefined where there is none with all that belongs to it. */
export function stored<T>(store: Store, key: string): T | undefined {
  const entry = store.entry(key);
  if (entry !== undefined) store.note(key, entry);
  return entry?.value as T | undefined;
}

/** What `make` gives, or gave under the same key. `make` stores its blobs through `own`, and never gives undefined. */
export function memo<T>(store: Store, key: string, make: (own: Store) => T): T {
  const before = stored<T>(store, key);
  if (before !== undefined) return before;
  const own = recording(store);
  const made = make(own);
  store.set(key, made, own.used());
  return made;
}

/** The same where making takes time. What does not last is made anew the next time. */
export async function memoAsync<T>(
  store: Store,
  key: string,
  make: (own: Store) => Promise<T>,
  lasts: (made: T) => boolean = () => true,
): Promise<T> {
  const before = stored<T>(store, key);
  if (before !== undefined) return before;
  const own = recording(store);
  const made = await make(own);
  if (lasts(made)) store.set(key, made, own.used());
  return made;
}

/** The memo of what is made while the site is put together: where one log has changed, what comes of the others stands. */
export interface SiteMemo {
  /** `what` names it, `inputs` cover all that `make` reads. */
  of<T>(what: string, inputs: unknown, make: (own: Store) => T): T;
}

/** `code` is the digest of all code of stage 1. */
export function siteMemo(store: Store, code: string): SiteMemo {
  return { of: (what, inputs, make) => memo(store, digestOf(['assembled', what, code, inputs]), make) };
}
