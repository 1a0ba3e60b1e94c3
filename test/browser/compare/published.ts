/** The demonstration's runs as a browser gets them. */

import { type ReadRun, readRun } from '../../../src/browser/compare/read-run.ts';
import type { GatherableRun } from '../../../src/compute/compared/gather.ts';
import { jsonText, seriesText } from '../../../src/compute/published.ts';
import { publishedRun } from '../../../src/compute/published-run.ts';
import { isUnreadable } from '../../../src/figures/read-published.ts';
import { computeDemo } from '../../compute/demo.ts';

export const demo = await computeDemo();

/** A run with all that stage 1 computed of it. */
export function gatherable(id: string): GatherableRun {
  const { run, result } = demo.runs.outcomes.get(id)!;
  const { series, ambient } = demo.series.get(id)!;
  return { run, derived: result.derived!, summary: result.summary!, tables: result.tables, series, ambient };
}

/** The texts of its two files. */
export function filesOf(id: string): readonly [figures: string, series: string] {
  const computed = gatherable(id);
  return [jsonText(publishedRun(demo.register, computed)), seriesText(computed.series)];
}

export function browserRun(id: string): ReadRun {
  const read = readRun(...filesOf(id));
  if (isUnreadable(read)) throw new Error(read.unreadable);
  return read;
}
