/** Counts of what was tried, for sentences such as "eight settings were tried, three passed". */
import type { Quantity } from '../../quantities/quantity.ts';
import { exact } from '../../quantities/uncertainty.ts';
import { type Ladder, OUTCOMES } from './ladder.ts';

/**
 * By address: `tried`, how many attempts there are; `outcome.passed`, `outcome."hung under load"` and so on, how many ended so; `outcome.hung`
 * counts both kinds of hanging. Exact numbers without a unit; outcomes that did not occur have none.
 */
export function triedFacts(ladder: Ladder | null): ReadonlyMap<string, Quantity> {
  if (ladder === null) return new Map();
  const { attempts } = ladder;
  const ended = OUTCOMES.map((each) => [each, attempts.filter(({ outcome }) => outcome === each).length] as const);
  const hung = ended.filter(([outcome]) => outcome.startsWith('hung')).reduce((sum, [, count]) => sum + count, 0);
  const counts = [...ended, ['hung', hung] as const].filter(([, count]) => count > 0);
  return new Map([
    ['tried', exact(attempts.length, '1')],
    ...counts.map(([outcome, count]) => [`outcome.${/\W/.test(outcome) ? `"${outcome}"` : outcome}`, exact(count, '1')] as const),
  ]);
}
