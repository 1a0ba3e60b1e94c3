import { describe, expect, it } from 'vitest';
import { digest, digestOf } from '../../../src/compute/store/digest.ts';

describe('compute/store/digest', () => {
  it('is SHA-256', () => {
    // FIPS 180-2, appendix B.1.
    expect(digest('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('is the same for equal values, however they were made', () => {
    // A piece of a text with characters beyond Latin-1 is held in another form by V8 than the same text written out.
    expect(digestOf('≥ alias rated'.slice(2))).toBe(digestOf('alias rated'));
    const shared = { id: 'a' };
    expect(digestOf([shared, shared])).toBe(digestOf([{ id: 'a' }, { id: 'a' }]));
    expect(digestOf({ a: 1, b: 2 })).toBe(digestOf({ b: 2, a: 1 }));
    expect(digestOf([1.5, 2].map((value) => value * 2))).toBe(digestOf([3, 4]));
    expect(digestOf(structuredClone(new Map([['°C', [1]]])))).toBe(digestOf(new Map([['°C', [1]]])));
  });

  it('tells different values apart', () => {
    const values = [
      0,
      -0,
      Number.NaN,
      Number.POSITIVE_INFINITY,
      null,
      '',
      'NaN',
      [],
      {},
      new Map(),
      new Map([['a', 1]]),
      { a: 1 },
      [['a', 1]],
    ];
    expect(new Set(values.map(digestOf)).size).toBe(values.length);
  });
});
