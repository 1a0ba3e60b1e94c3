import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { memo, memoAsync, recording, siteMemo, stored } from '../../../src/compute/store/memo.ts';
import { openStore, type Store } from '../../../src/compute/store/store.ts';

let root: string;
let store: Store;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-memo-'));
  store = openStore(root);
});
/** Where the store has bytes. */
const pathOf = (blob: string) => join(root, '.cache', 'blobs', blob);
afterEach(() => rmSync(root, { recursive: true }));

describe('compute/store/memo', () => {
  it('makes a result once, and anew after one of its blobs was damaged', () => {
    let made = 0;
    const ask = () =>
      memo(store, 'text', (own) => {
        made += 1;
        return own.keep('text');
      });
    const blob = ask();
    expect([ask(), ask(), made]).toEqual([blob, blob, 1]);
    writeFileSync(pathOf(blob), 'damaged');
    expect(stored(store, 'text')).toBeUndefined();
    expect([ask(), made]).toEqual([blob, 2]);
    rmSync(pathOf(blob));
    expect([ask(), made]).toEqual([blob, 3]);
  });

  it('an entry holds the blobs and entries of what was made or taken within it', async () => {
    const inner = (own: Store) => memo(own, 'inner', (its) => its.keep('inner'));
    const outer = (own: Store) => memoAsync(own, 'outer', async (its) => [inner(its), its.keep('outer')]);
    const before = inner(store);
    const [taken, kept] = await outer(store);
    expect(taken).toBe(before);
    expect(store.entry('outer')).toMatchObject({ value: [taken, kept], blobs: [taken, kept].sort(), entries: ['inner'] });
    writeFileSync(pathOf(before), 'damaged');
    expect(stored(store, 'outer')).toBeUndefined();
    expect(await outer(store)).toEqual([taken, kept]);
    expect(store.has(before)).toBe(true);
  });

  it('what two makers store at the same time stays apart', async () => {
    const one = memoAsync(store, 'one', async (own) => {
      await null;
      return own.keep('one');
    });
    const two = memoAsync(store, 'two', async (own) => own.keep('two'));
    const blobs = await Promise.all([one, two]);
    expect(['one', 'two'].map((key) => store.entry(key)!.blobs)).toEqual(blobs.map((blob) => [blob]));
  });

  it('what does not last is not stored, and is recorded as used all the same', async () => {
    const used = recording(store);
    const blob = await memoAsync(
      used,
      'moment',
      async (own) => own.keep('moment'),
      () => false,
    );
    expect(store.get('moment')).toBeUndefined();
    expect(used.used()).toEqual({ blobs: [blob], entries: [] });
  });

  it('a recording names all that was used, so that the rest can be pruned', () => {
    memo(store, 'old', (own) => own.keep('old'));
    const first = recording(store);
    const blob = memo(first, 'new', (own) => own.keep('new'));
    const again = recording(store);
    expect(memo(again, 'new', () => 'never')).toBe(blob);
    expect(again.used()).toEqual(first.used());
    const { entries, blobs } = again.used();
    store.prune(new Set(entries), new Set(blobs));
    expect([stored(store, 'new'), stored(store, 'old')]).toEqual([blob, undefined]);
  });

  it('for the site: made anew what any input has changed of, and nothing else', () => {
    const made: string[] = [];
    const ask = (code: string, what: string, inputs: unknown) =>
      siteMemo(store, code).of(what, inputs, () => {
        made.push(`${code} ${what}`);
        return { code, what };
      });
    expect(ask('a', 'one', [1])).toEqual({ code: 'a', what: 'one' });
    expect(ask('a', 'one', [1])).toEqual({ code: 'a', what: 'one' });
    expect(made).toEqual(['a one']);
    ask('b', 'one', [1]);
    ask('a', 'two', [1]);
    ask('a', 'one', [2]);
    expect(made).toEqual(['a one', 'b one', 'a two', 'a one']);
  });
});
