/** The demonstration's runs as a browser gets them. */

import { type ReadRun, readRun } from '../../../src/browser/compare/read-run.ts';
import type { GatherableRun } from '../../../src/compute/comparison/gather.ts';
import { runJson } from '../../../src/compute/data/run-json.ts';
import { storedSeries } from '../../../src/compute/steps/series/series-step.ts';
import { jsonText } from '../../../src/compute/store/json-text.ts';
import { isUnreadable } from '../../../src/figures/read-figures-json.ts';
import { computeDemo } from '../../compute/demo.ts';

export const demo = await computeDemo();

/** A run with all that stage 1 computed of it. */
export function gatherable(id: string): GatherableRun {
  const { run, result } = demo.runs.outcomes.get(id)!;
  const made = demo.series.get(id)!;
  return {
    run,
    derived: result.derived!,
    summary: result.summary!,
    tables: result.tables,
    series: () => storedSeries(demo.store, made),
    ambient: made.ambient,
  };
}

/** The texts of its two files. */
export function filesOf(id: string): readonly [figures: string, series: string] {
  const series = Buffer.from(demo.store.bytes(demo.series.get(id)!.text)!).toString('utf8');
  return [jsonText(runJson(demo.register, gatherable(id))), series];
}

export function browserRun(id: string): ReadRun {
  const read = readRun(...filesOf(id));
  if (isUnreadable(read)) throw new Error(read.unreadable);
  return read;
}
