/** The runs that a reader chose, gathered as stage 1 gathers a comparison: figures by the same code, from what is published. */

import type { Gathered, PublishedMap } from '../../compute/models/gathered.ts';
import { comparedRun } from '../../compute/models/gathered-figures.ts';
import { compare } from '../../figures/comparison/compare.ts';
import { publishMap } from '../../figures/publish.ts';
import type { ReadRun } from './read-run.ts';

/** Stands in the ids of the sources that only the comparison has: the scatter about its fits. */
const ID = 'chosen-runs';

/** A comparison of runs, whose aliases are their ids, in this order; `reference` is one of them. */
export function gatherChosen(runs: readonly ReadRun[], reference: string): Gathered {
  const compared = runs.map(({ gathered, clockSetting }) => ({
    ...comparedRun(gathered),
    ...(clockSetting === undefined ? {} : { clockSetting }),
  }));
  const base = compared.find(({ alias }) => alias === reference);
  if (!base) throw new RangeError(`the reference ${reference} is none of the runs`);
  const figures = compare({ id: ID, reference: base, others: compared.filter((run) => run !== base) });
  const { sources, figures: published } = publishMap({}, figures) as PublishedMap;
  return {
    id: ID,
    title: 'Chosen runs',
    reference,
    runs: runs.map(({ gathered }) => gathered),
    sources,
    figures: published,
    methods: {},
  };
}
