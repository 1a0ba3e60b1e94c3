/** Repeats that go together, as those of a device that warms and cools slowly. */

/** `count` values of unit variance, each of which goes with the one before by `rho`. `normal` draws independent ones. */
export function correlated(count: number, rho: number, normal: () => number): number[] {
  const values = [normal()];
  while (values.length < count) values.push(rho * values[values.length - 1]! + Math.sqrt(1 - rho * rho) * normal());
  return values;
}
