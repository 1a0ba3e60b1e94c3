import { createHash } from 'node:crypto';
import { linkSync, mkdtempSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { lookOf, openKnown } from '../../../src/compute/store/known-digests.ts';

const LENGTH = 2 ** 18;
let folder: string;
let photo: string;
let list: string;
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const filled = (byte: number, length = LENGTH) => Buffer.alloc(length, byte);

beforeEach(() => {
  folder = mkdtempSync(join(inject('scratch'), 'known-'));
  photo = join(folder, 'photo.jpg');
  list = join(folder, 'known.json');
  writeFileSync(photo, filled(1));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Writes the list as if a second later, so that no file is as young as the list. */
function remember(known: ReturnType<typeof openKnown>, replace?: (text: string) => string): void {
  const text = known.listed();
  if (text !== undefined) writeFileSync(list, replace?.(text) ?? text);
  const { mtimeMs } = statSync(list);
  utimesSync(list, mtimeMs / 1000 + 1, mtimeMs / 1000 + 1);
}

describe('compute/store/known-digests', () => {
  it('does not read a large file again that looks as it did', () => {
    const first = openKnown(list);
    expect(first.of('photo', photo)).toBe(sha256(filled(1)));
    // Another digest in the list shows that it is taken from there.
    remember(first, (text) => text.replace(sha256(filled(1)), 'as listed'));
    const later = openKnown(list);
    expect(later.of('photo', photo)).toBe('as listed');
    expect(later.listed()).toBeUndefined();
    expect(openKnown(list).read('photo', photo)).toBe(sha256(filled(1)));
  });

  it('sees bytes that were written since, though size and time of writing are as before', () => {
    const first = openKnown(list);
    first.of('photo', photo);
    remember(first);
    const { atime, mtime } = statSync(photo);
    writeFileSync(photo, filled(2));
    utimesSync(photo, atime, mtime);
    expect(openKnown(list).of('photo', photo)).toBe(sha256(filled(2)));
  });

  // Steps of 2 s (FAT) and of 10 ms (exFAT): from memory.
  it.each([2_000_000_000n, 10_000_000n])(
    'trusts no time of change that counts in steps of %i ns: it is that of writing',
    (step) => {
      const file = { mtimeNs: 1n, size: BigInt(LENGTH), ino: 2n };
      expect(lookOf({ ...file, ctimeNs: 875_000_000n * step })).toBeNull();
      expect(lookOf({ ...file, ctimeNs: 875_000_000n * step + 100n })).not.toBeNull();
    },
  );

  it('sees another file under the name, whatever its size and time of writing', () => {
    const first = openKnown(list);
    first.of('photo', photo);
    remember(first);
    const { atime, mtime } = statSync(photo);
    const other = join(folder, 'other.jpg');
    writeFileSync(other, filled(2));
    utimesSync(other, atime, mtime);
    renameSync(other, photo);
    expect(openKnown(list).of('photo', photo)).toBe(sha256(filled(2)));
    const second = openKnown(list);
    second.of('photo', photo);
    remember(second);
    // Through another name of the same file.
    linkSync(photo, other);
    writeFileSync(other, filled(3));
    utimesSync(photo, atime, mtime);
    expect(openKnown(list).of('photo', photo)).toBe(sha256(filled(3)));
  });

  it('reads what changed in the tick of the list itself, small files, and all where the list is damaged', () => {
    const first = openKnown(list);
    first.of('photo', photo);
    writeFileSync(list, first.listed()!.replace(sha256(filled(1)), 'as listed'));
    const { mtime } = statSync(photo);
    utimesSync(list, new Date(mtime.getTime() - 1), new Date(mtime.getTime() - 1));
    expect(openKnown(list).of('photo', photo)).toBe(sha256(filled(1)));

    writeFileSync(photo, filled(1, LENGTH - 1));
    const second = openKnown(list);
    expect(second.of('photo', photo)).toBe(sha256(filled(1, LENGTH - 1)));
    expect(second.listed()).toBe('[]');
    writeFileSync(list, '[[1');
    expect(openKnown(list).of('photo', photo)).toBe(sha256(filled(1, LENGTH - 1)));
    expect(() => openKnown(list).of('gone', join(folder, 'gone.jpg'))).toThrow('ENOENT');
  });
});
