/** A comparison as other programs read it: `comparisons/<id>/figures.json`. */
import { figuresJson } from '../../figures/figures-json.ts';
import type { ComputedComparison } from '../contents/site-contents.ts';

export function comparisonJson({
  comparison: { id, reference, runs, settings, repeats },
  figures,
}: Pick<ComputedComparison, 'comparison' | 'figures'>): object {
  const several = settings.size < runs.size ? { settings: Object.fromEntries(settings) } : {};
  const beside = repeats.length > 0 ? { repeats } : {};
  return figuresJson({ comparison: id, reference, runs: Object.fromEntries(runs), ...several, ...beside }, figures);
}
