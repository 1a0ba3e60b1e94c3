/** What was gathered as figures again: to print, and to take differences of. */
import type { ComparedRun } from '../../figures/comparison/compared.ts';
import type { FigureMap } from '../../figures/figure.ts';
import { isUnreadable, readPublishedFigures } from '../../figures/read-published.ts';
import type { GatheredRun, PublishedMap } from './gathered.ts';

/** The figures by address. Throws where they are not as they are published: they come from our own hand, or from a sealed copy. */
export function figuresOf({ sources, figures }: PublishedMap): FigureMap {
  const read = readPublishedFigures(JSON.stringify({ format: 1, sources, figures }));
  if (isUnreadable(read)) throw new Error(read.unreadable);
  return read;
}

/** A run as comparisons see it. */
export function comparedRun(run: GatheredRun): ComparedRun {
  const { alias, device, specimen } = run;
  return { alias, run: run.run, device: device.id, specimen, figures: figuresOf(run) };
}
