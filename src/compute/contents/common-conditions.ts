/** Conditions of several runs: what holds for most of them is said once, and each run says what departs from it. */
import type { Condition } from '../../register/register.ts';

export interface CommonConditions {
  /** Conditions with the text that more than half of the runs have, in the order of the first run that has them. */
  readonly common: readonly Condition[];
  /** What one run has otherwise. */
  departures(conditions: readonly Condition[]): Condition[];
}

export function commonConditions(all: readonly (readonly Condition[])[]): CommonConditions {
  const counts = new Map<string, { condition: Condition; count: number }>();
  for (const condition of all.flat()) {
    const key = keyOf(condition);
    counts.set(key, { condition, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  const common = [...counts.values()].filter(({ count }) => 2 * count > all.length).map(({ condition }) => condition);
  const keys = new Set(common.map(keyOf));
  return { common, departures: (conditions) => conditions.filter((condition) => !keys.has(keyOf(condition))) };
}

function keyOf({ name, text }: Condition): string {
  return `${name}\n${text}`;
}
