/** Moves labels apart so that they do not collide. */

/**
 * Places of labels along one axis, px: as near as possible to where they are wanted, at least half the sum of their sizes
 * apart, within the bounds where there is room; in the order of `wanted` (returned in the order given). Least squares, by
 * pooling neighbours that collide (the pool-adjacent-violators algorithm; Barlow, Bartholomew, Bremner & Brunk,
 * "Statistical Inference under Order Restrictions", 1972, from memory).
 */
export function dodge(wanted: readonly number[], sizes: readonly number[], low: number, high: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const offsets = offsetsOf(order.map((index) => sizes[index]!));
  const pooled = pool(order.map((index, k) => wanted[index]! - offsets[k]!));
  const total = offsets.at(-1) ?? 0;
  const first = low + (sizes[order[0] ?? 0] ?? 0) / 2;
  const last = high - (sizes[order.at(-1) ?? 0] ?? 0) / 2 - total;
  const placed = new Array<number>(wanted.length);
  order.forEach((index, k) => {
    placed[index] = Math.max(Math.min(pooled[k]!, last), first) + offsets[k]!;
  });
  return placed;
}

/** Distance of each centre from the first one when all touch. */
function offsetsOf(sizes: readonly number[]): number[] {
  let at = 0;
  return sizes.map((size, k) => {
    if (k > 0) at += (sizes[k - 1]! + size) / 2;
    return at;
  });
}

/** The never-decreasing sequence nearest to `values`. */
function pool(values: readonly number[]): number[] {
  const blocks: { mean: number; count: number }[] = [];
  for (const value of values) {
    blocks.push({ mean: value, count: 1 });
    while (blocks.length > 1 && blocks.at(-2)!.mean > blocks.at(-1)!.mean) {
      const right = blocks.pop()!;
      const left = blocks.pop()!;
      const count = left.count + right.count;
      blocks.push({ mean: (left.mean * left.count + right.mean * right.count) / count, count });
    }
  }
  return blocks.flatMap(({ mean, count }) => new Array<number>(count).fill(mean));
}
