/** A comparison as other programs read it: `comparisons/<id>/figures.json`. */
import { publishMap } from '../../figures/publish.ts';
import type { ComputedComparison } from '../contents/site-contents.ts';

export function publishedComparison({
  comparison: { id, reference, runs },
  figures,
}: Pick<ComputedComparison, 'comparison' | 'figures'>): object {
  return publishMap({ comparison: id, reference, runs: Object.fromEntries(runs) }, figures);
}
