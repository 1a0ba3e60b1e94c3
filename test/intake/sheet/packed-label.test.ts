/** Names in the head of a packed file: RFC 1952, 2.3.1, laid out here by hand. */
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { saysMore } from '../../../src/intake/sheet/packed-label.ts';

function named(flags: number, ...fields: Uint8Array[]): Uint8Array {
  const plain = new Uint8Array(gzipSync('t_s,soc\n0,20\n'));
  const head = plain.slice(0, 10);
  head[3] = flags;
  return new Uint8Array(Buffer.concat([head, ...fields, plain.slice(10)]));
}
const text = (words: string) => new Uint8Array([...words].map((letter) => letter.charCodeAt(0)).concat(0));

describe('intake/sheet/packed-label', () => {
  it.each([
    ['no name', named(0), false],
    ['its own name', named(8, text('soak.csv')), false],
    ['its own name, packed', named(8, text('soak.csv.gz')), false],
    ['another name', named(8, text('anna-at-home.csv')), true],
    ['a comment', named(16, text('by anna')), true],
    ['fields of the packer', named(4, new Uint8Array([2, 0, 1, 2])), true],
    ['a name without an end', named(8).slice(0, 10), true],
  ] as const)('%s', (_what, bytes, expected) => {
    expect(saysMore(bytes, 'data/soak.csv.gz')).toBe(expected);
  });
});
