/** What comes nearest to a number that nothing holds, so that its author sees how far off it is. */
import { printQuantity } from '../../quantities/print.ts';
import { isUnread } from '../../words/stated/read.ts';
import { type Asked, type Bearing, type Offer, titleOf } from './offers.ts';
import { contextScore } from './rank.ts';

const SHOWN = 2;

/** The two single figures, settings, conditions or ratings of the number's kind that are nearest; of equally near ones those that the words mean. */
export function nearestTo({ context, inUnitOf }: Asked, { candidates, aliases }: Bearing): Offer[] {
  const near = candidates.flatMap((candidate) => {
    const read = inUnitOf(candidate.quantity.unit);
    if (isUnread(read)) return [];
    const value = read.bySize ? Math.abs(candidate.quantity.value) : candidate.quantity.value;
    return [{ candidate, distance: Math.abs(value - read.nominal), score: contextScore(candidate, context, aliases) }];
  });
  return near
    .sort((a, b) => a.distance - b.distance || b.score - a.score)
    .slice(0, SHOWN)
    .map(({ candidate }) => ({
      is: candidate.is,
      shown: printQuantity(candidate.quantity).text,
      title: titleOf(candidate),
      narrow: false,
    }));
}
