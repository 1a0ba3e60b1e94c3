/**
 * Generator of repeatable pseudo-random numbers: xoshiro128**, its state filled from the seed by splitmix32.
 *
 * When: noise of tests. The same seed gives the same numbers on every machine. Not for secrets.
 * @param seed any whole number; its low 32 bits count
 * @returns a function that gives the next number, 0 ≤ number < 1, with 32 random bits
 * Source: Blackman & Vigna, "Scrambled linear pseudorandom number generators", ACM Transactions on Mathematical Software 47(4), 2021
 *   (the generator); splitmix with the 32-bit finalizer of MurmurHash3 (the seeding, common practice).
 * Cost: about ten integer operations a number.
 */
export function seededRandom(seed: number): () => number {
  const state = new Uint32Array(4);
  for (let k = 0, z = seed | 0; k < 4; k++) {
    z = (z + 0x9e3779b9) | 0;
    state[k] = mixed(z);
  }
  return () => next(state) / 2 ** 32;
}

function mixed(z: number): number {
  let h = z;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

function next(s: Uint32Array): number {
  const result = Math.imul(rotated(Math.imul(s[1]!, 5), 7), 9) >>> 0;
  const shifted = s[1]! << 9;
  s[2]! ^= s[0]!;
  s[3]! ^= s[1]!;
  s[1]! ^= s[2]!;
  s[0]! ^= s[3]!;
  s[2]! ^= shifted;
  s[3] = rotated(s[3]!, 11);
  return result;
}

function rotated(value: number, by: number): number {
  return (value << by) | (value >>> (32 - by));
}
