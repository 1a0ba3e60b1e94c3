/** The model of the accuracy page: published values beside ours, and the coverage of intervals. */
import { definitionOf } from '../../figures/catalogue.ts';
import { COVERAGE, shareOf, whyOutside } from '../../figures/checks/coverage.ts';
import { FAMILIES } from '../../figures/checks/families.ts';
import type { CheckTable } from '../../figures/checks/results.ts';
import type { AccuracyModel } from '../results.ts';
import { familyModel } from './family-words.ts';

/** `tables`: the published values beside ours, carried out. */
export function accuracyModel(tables: readonly CheckTable[]): AccuracyModel {
  const { runs, seed, figures } = COVERAGE;
  const coverage = Object.entries(figures).map(([name, { kind, truth, limits, expanded }]) => ({
    name,
    label: definitionOf(name)?.label ?? name,
    kind,
    truth,
    limits: shareOf(limits),
    limitsOf: limits.of,
    expanded: shareOf(expanded),
    expandedOf: expanded.of,
    why: whyOutside(name),
  }));
  return { kind: 'accuracy', tables, runs, seed, coverage, families: Object.entries(FAMILIES).map(familyModel) };
}
