import { describe, expect, test } from 'vitest';
import { autocorrelation } from '../../src/statistics/autocorrelation.ts';
import { mean } from '../../src/statistics/mean.ts';
import { sampleDeviation } from '../../src/statistics/sample-deviation.ts';
import { seededRandom } from './seeded-random.ts';

const draw = (seed: number, n: number) => {
  const random = seededRandom(seed);
  return Array.from({ length: n }, random);
};

/** xoshiro128** after Blackman & Vigna's paper, in exact integers: an independent second writing. */
function reference(seed: number, n: number): number[] {
  const mask = 0xffffffffn;
  const rotate = (x: bigint, k: bigint) => ((x << k) | (x >> (32n - k))) & mask;
  let z = BigInt(seed) & mask;
  const s = [0, 1, 2, 3].map(() => {
    z = (z + 0x9e3779b9n) & mask;
    let h = z;
    h = ((h ^ (h >> 16n)) * 0x85ebca6bn) & mask;
    h = ((h ^ (h >> 13n)) * 0xc2b2ae35n) & mask;
    return h ^ (h >> 16n);
  }) as [bigint, bigint, bigint, bigint];
  return Array.from({ length: n }, () => {
    const result = (rotate((s[1] * 5n) & mask, 7n) * 9n) & mask;
    const t = (s[1] << 9n) & mask;
    s[2] ^= s[0];
    s[3] ^= s[1];
    s[1] ^= s[2];
    s[0] ^= s[3];
    s[2] ^= t;
    s[3] = rotate(s[3], 11n);
    return Number(result) / 2 ** 32;
  });
}

describe('statistics/seeded-random', () => {
  test.each([0, 1, 42, 4294967295])('seed %i: the numbers of the published generator', (seed) => {
    expect(draw(seed, 200)).toEqual(reference(seed, 200));
  });

  test('even on 0 … 1, and uncorrelated', () => {
    const numbers = draw(7, 20_000);
    expect(Math.abs(mean(numbers) - 0.5)).toBeLessThan(5 / Math.sqrt(12 * 20_000));
    expect(Math.abs(sampleDeviation(numbers) - 1 / Math.sqrt(12))).toBeLessThan(0.005);
    expect(Math.abs(autocorrelation(numbers, 1))).toBeLessThan(5 / Math.sqrt(20_000));
    expect(Math.min(...numbers) >= 0 && Math.max(...numbers) < 1).toBe(true);
  });
});
