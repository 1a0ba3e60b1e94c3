/** What was gathered as figures again: to print, and to take differences of. */
import type { Compared, ComparedRun } from '../../figures/comparison/compared.ts';
import type { Figure } from '../../figures/figure.ts';
import { isUnreadable, readFiguresJson } from '../../figures/read-figures-json.ts';
import type { FiguresJson, Gathered, GatheredRepeat, GatheredRun } from './gathered.ts';

/** The figures by address. Throws where they are not as they are published: they come from our own hand, or from a sealed copy. */
export function figuresOf({ sources, figures }: FiguresJson): ReadonlyMap<string, Figure> {
  const read = readFiguresJson(JSON.stringify({ format: 1, sources, figures }));
  if (isUnreadable(read)) throw new Error(read.unreadable);
  return read;
}

/** A run as comparisons see it. */
export function comparedRun(run: GatheredRun): ComparedRun {
  const { alias, device, specimen } = run;
  return { alias, run: run.run, device: device.id, specimen, figures: figuresOf(run) };
}

/** Settings with their runs, as figures of a comparison are computed from them. */
export function comparedSettings({ id, reference, runs, settings, repeats = [] }: Gathered): Compared {
  const byAlias = new Map(runs.map((run) => [run.alias, comparedRun(run)]));
  const grouped = settings ? Object.entries(settings) : runs.map(({ alias }) => [alias, [alias]] as const);
  // A sealed copy has its keys in the order of letters; the runs keep the author's.
  const inOrder = [...byAlias.keys()].flatMap((alias) => grouped.filter(([setting]) => setting === alias));
  const all = inOrder.map(([alias, aliases]) => ({ alias, runs: aliases.map((each) => byAlias.get(each)!) }));
  return {
    id,
    reference: all.find(({ alias }) => alias === reference)!,
    others: all.filter(({ alias }) => alias !== reference),
    repeats: repeats.map((alike) => alike.map(comparedRepeat)),
  };
}

function comparedRepeat(repeat: GatheredRepeat): ComparedRun {
  const { run, device, specimen } = repeat;
  return { alias: run, run, device, specimen, figures: figuresOf(repeat) };
}

/** The runs that stand for their settings in a plot with a sign for each setting. */
export function firstRuns({ runs, settings }: Gathered): readonly GatheredRun[] {
  return settings ? runs.filter(({ alias }) => Object.hasOwn(settings, alias)) : runs;
}
