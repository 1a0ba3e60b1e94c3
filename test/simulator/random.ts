/**
 * Seeded pseudo-random numbers, so that a simulated log is the same bytes each time.
 * Generator: xoshiro128**, Blackman and Vigna, "Scrambled linear pseudorandom number generators",
 * ACM Transactions on Mathematical Software 47(4), 2021; seeded by a 32-bit mixer of the same family as splitmix.
 */

export interface Random {
  /** The next 32 bits as an integer from 0 to 2³² − 1. */
  bits(): number;
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Uniform on [−limit, limit): a rectangular distribution, as limits of error are taken. */
  within(limit: number): number;
  /** Standard normal. */
  normal(): number;
}

/** A generator for one purpose. Equal seeds give equal sequences; neighbouring seeds give unrelated ones. */
export function random(seed: number): Random {
  const mix = mixer(seed);
  return fromState([mix(), mix(), mix(), mix()]);
}

/** A generator that starts from a given state of four 32-bit words, not all zero: for the published test sequence. */
export function fromState(state: readonly [number, number, number, number]): Random {
  const bits = xoshiro128(state);
  const uniform = () => bits() / 2 ** 32;
  return { bits, uniform, within: (limit) => (2 * uniform() - 1) * limit, normal: polarNormal(uniform) };
}

function rotate(x: number, by: number): number {
  return (x << by) | (x >>> (32 - by));
}

function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = rotate(d, 11);
    return result;
  };
}

/** Spreads one number over many words (the finaliser of MurmurHash3 on a Weyl sequence, as splitmix does in 64 bits). */
function mixer(seed: number): () => number {
  let s = seed | 0;
  return () => {
    s = (s + 0x9e3779b9) | 0;
    let z = s;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  };
}

/** Marsaglia's polar method: two uniforms inside the unit circle give two independent normals; the second one is kept. */
function polarNormal(uniform: () => number): () => number {
  let kept: number | null = null;
  return () => {
    if (kept !== null) {
      const value = kept;
      kept = null;
      return value;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const s = x * x + y * y;
      if (s === 0 || s >= 1) continue;
      const factor = Math.sqrt((-2 * Math.log(s)) / s);
      kept = y * factor;
      return x * factor;
    }
  };
}
