import { describe, expect, it } from 'vitest';
import { answerOf, sha256 } from '../../../src/browser/verify/answer.ts';
import type { Digests } from '../../../src/compute/data/known-files.ts';

const bytes = (text: string) => new TextEncoder().encode(text).buffer as ArrayBuffer;
const file = (name: string, text: string) => ({ name, arrayBuffer: async () => bytes(text) });

/** NIST, "Secure Hash Standard", FIPS 180-4: the example messages of its published SHA-256 examples. */
const EXAMPLES = [
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
] as const;

const published = { what: 'log as it came', of: 'A run', page: 'runs/a/', path: 'runs/a/data/soak.csv' };
const list: Digests = { format: 1, digests: { [EXAMPLES[0][1]]: [published] } };

describe('browser/verify/answer', () => {
  it.each(EXAMPLES)('computes the published digest of %s', async (text, digest) => {
    expect(await sha256(bytes(text))).toBe(digest);
  });

  it('finds what a file was published as, or that it was not', async () => {
    expect(await answerOf(file('soak.csv', 'abc'), async () => list)).toEqual({
      name: 'soak.csv',
      sha256: EXAMPLES[0][1],
      published: [published],
      fault: '',
    });
    expect((await answerOf(file('soak.csv', 'abd'), async () => list)).published).toEqual([]);
  });

  it('says what went wrong, and gives the digest where it has one', async () => {
    const lost = await answerOf(file('soak.csv', 'abc'), () => Promise.reject(new Error('503')));
    expect(lost).toMatchObject({ sha256: EXAMPLES[0][1], published: [], fault: expect.stringContaining('could not be loaded') });
    const unreadable = { name: 'big.csv', arrayBuffer: () => Promise.reject(new DOMException('NotReadableError')) };
    expect(await answerOf(unreadable, async () => list)).toMatchObject({
      sha256: '',
      fault: expect.stringContaining('could not read'),
    });
  });
});
