/** The runs that a reader chose, gathered as stage 1 gathers a comparison: figures by the same code, from what is published. */

import type { FiguresJson, Gathered, GatheredRepeat, GatheredRun } from '../../compute/models/gathered.ts';
import { comparedRun } from '../../compute/models/gathered-figures.ts';
import { compare } from '../../figures/comparison/compare.ts';
import { alone } from '../../figures/comparison/compared.ts';
import { figuresJson } from '../../figures/figures-json.ts';
import type { ReadRun } from './read-run.ts';

/** Stands in the ids of the sources that only the comparison has: the scatter about its fits. */
const ID = 'chosen-runs';
/** What the day brings. */
const AMBIENT = 'ambient';

/**
 * A comparison of runs, whose aliases are their ids, in this order; `reference` is one of them. Each stands for itself; those that are
 * alike but for their day and ambient say how far runs lie apart.
 */
export function gatherChosen(runs: readonly ReadRun[], reference: string): Gathered {
  const compared = runs.map(({ gathered, clockSetting }) => ({
    ...comparedRun(gathered),
    ...(clockSetting === undefined ? {} : { clockSetting }),
  }));
  const base = compared.find(({ alias }) => alias === reference);
  if (!base) throw new RangeError(`the reference ${reference} is none of the runs`);
  const alike = [...Map.groupBy(runs, ({ gathered }) => repeatKey(gathered)).values()].filter((group) => group.length > 1);
  const repeats = alike.map((group) => group.map(({ gathered }) => repeatOf(gathered)));
  const figures = compare({
    id: ID,
    reference: alone(base),
    others: compared.filter((run) => run !== base).map(alone),
    repeats: alike.map((group) => group.map(({ gathered }) => comparedRun(gathered))),
  });
  const { sources, figures: published } = figuresJson({}, figures) as FiguresJson;
  return {
    id: ID,
    title: 'Chosen runs',
    reference,
    runs: runs.map(({ gathered }) => gathered),
    ...(repeats.length > 0 ? { repeats } : {}),
    sources,
    figures: published,
    methods: {},
  };
}

function repeatOf({ run, title, device, specimen, sources, figures }: GatheredRun): GatheredRepeat {
  return { run, title, device: device.id, specimen, sources, figures };
}

/** Runs with the same key are of one specimen, setting and conditions, as far as they state them. */
function repeatKey({ device, specimen, setting, conditions }: GatheredRun): string {
  const said = [...setting, ...conditions.filter(({ label }) => label !== AMBIENT)];
  return [device.id, specimen, ...said.map(({ label, text }) => `${label}: ${text}`).sort()].join('\n');
}
