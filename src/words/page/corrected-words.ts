/** Words of a published note that the data no longer bears, where a correction of its front matter says which stand in their place. */
import { plainExpression } from '../expression/plain-expression.ts';
import type { Writing } from './writing.ts';

/** What a claim says on the page once it no longer holds, and the author kept it as a correction. */
export const NO_LONGER = '(this no longer holds)';

/** The words that corrections give for an expression, the newest first. Scripts have none: what was recorded was said. */
export function correctedWords({ kind, corrections }: Writing, expression: string): string[] {
  if (kind !== 'note') return [];
  const number = plainExpression(expression);
  return corrections
    .filter((each) => plainExpression(each.number) === number)
    .map(({ now }) => now)
    .reverse();
}
