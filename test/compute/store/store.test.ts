import { mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../../src/compute/store/store.ts';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-store-'));
});
/** Where the store has bytes. */
const pathOf = (blob: string) => join(root, '.cache', 'blobs', blob);
afterEach(() => rmSync(root, { recursive: true }));

describe('compute/store/store', () => {
  it('gives back what was set, maps, typed arrays and infinities included', () => {
    const store = openStore(root);
    const value = { map: new Map([['a', [1, Number.POSITIVE_INFINITY]]]), column: Float64Array.of(1.5, Number.NaN) };
    store.set('key', value);
    expect(openStore(root).get('key')).toEqual(value);
    expect(store.get('other')).toBeUndefined();
  });

  it('takes a damaged entry for a missing one', () => {
    const store = openStore(root);
    store.set('key', { a: 1 });
    writeFileSync(join(root, '.cache', 'entries', 'key'), `${'0'.repeat(64)}rubbish`);
    expect(store.get('key')).toBeUndefined();
    writeFileSync(join(root, '.cache', 'entries', 'key'), '');
    expect(store.get('key')).toBeUndefined();
  });

  it('keeps bytes under their digest, and mends a damaged file when they are kept again', () => {
    const store = openStore(root);
    // SHA-256 of "abc": FIPS 180-2, appendix B.1.
    const blob = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(store.keep('abc')).toBe(blob);
    writeFileSync(pathOf(blob), 'abd');
    expect(store.has(blob)).toBe(false);
    expect(() => store.bytes(blob)).toThrow('the cache is damaged');
    store.keep('abc');
    expect(store.has(blob)).toBe(true);
  });

  it('keeps what comes piece by piece under the digest of all of it, and nothing of what fails half way', () => {
    const store = openStore(root);
    const kept = store.keepPieces((append) => {
      for (const piece of ['a', 'bc', '']) append(Buffer.from(piece));
    });
    expect(kept).toEqual({ blob: store.keep('abc'), bytes: 3 });
    expect(Buffer.from(store.bytes(kept.blob)).toString()).toBe('abc');
    const failing = () =>
      store.keepPieces((append) => {
        append(Buffer.from('d'));
        throw new Error('no more');
      });
    expect(failing).toThrow('no more');
    expect(readdirSync(join(root, '.cache', 'blobs'))).toEqual([kept.blob]);
  });

  it('does not read again what an earlier process found undamaged, and sees what was written since', () => {
    const first = openStore(root);
    const [same, other] = [first.keep('same'), first.keep('other')];
    for (const blob of [same, other]) utimesSync(pathOf(blob), 1000, 1000);
    expect([first.has(same), first.has(other)]).toEqual([true, true]);
    first.remember();

    // A damage that leaves no trace in size, inode and time of writing tells who looks at no more.
    writeFileSync(pathOf(same), 'SAME');
    utimesSync(pathOf(same), 1000, 1000);
    writeFileSync(pathOf(other), 'OTHER');
    const later = openStore(root);
    expect([later.has(same), later.has(other)]).toEqual([true, false]);
    rmSync(join(root, '.cache', 'seen.json'));
    expect(openStore(root).has(same)).toBe(false);
    writeFileSync(join(root, '.cache', 'seen.json'), '[[1');
    expect(openStore(root).has(same)).toBe(false);
  });

  it('reads what was written in the tick of the list itself', () => {
    const store = openStore(root);
    const blob = store.keep('abc');
    utimesSync(pathOf(blob), 1000, 1000);
    expect(store.has(blob)).toBe(true);
    store.remember();
    const list = join(root, '.cache', 'seen.json');
    writeFileSync(pathOf(blob), 'abd');
    utimesSync(pathOf(blob), 1000, 1000);
    utimesSync(list, 1001, 1001);
    expect(openStore(root).has(blob)).toBe(true);
    utimesSync(list, 1000, 1000);
    expect(openStore(root).has(blob)).toBe(false);
  });

  it('prunes what is not named and leaves no part of a write behind', () => {
    const store = openStore(root);
    store.set('old', 1);
    store.set('new', 2);
    const kept = store.keep('kept');
    store.keep('dropped');
    store.prune(new Set(['new']), new Set([kept]));
    expect(readdirSync(join(root, '.cache', 'entries'))).toEqual(['new']);
    expect(readdirSync(join(root, '.cache', 'blobs'))).toEqual([kept]);
  });

  it("remembers the author's large files while the cache is pruned", () => {
    const path = join(root, 'photo.jpg');
    writeFileSync(path, Buffer.alloc(2 ** 18));
    const store = openStore(root);
    store.fileDigest(path);
    store.remember();
    const list = join(root, '.cache', 'known-data.json');
    const listed = readFileSync(list, 'utf8');
    expect(listed).toContain('photo.jpg');
    openStore(root).prune(new Set(), new Set());
    expect(readFileSync(list, 'utf8')).toBe(listed);
  });
});
