/** Runs alike but for time: grouped, and the specimens in a group told apart. */
import { compareText } from '../../problem.ts';
import type { FigureMap } from '../figure.ts';

export interface RepeatedRun {
  /** Run id. */
  readonly run: string;
  readonly specimen: string;
  /** ISO date. */
  readonly date: string;
  /** Setting and conditions that must be equal, as one text: all but what the time brought, the ambient. */
  readonly likeness: string;
  readonly figures: FigureMap;
}

export interface RepeatGroup {
  /** Id of its earliest run. */
  readonly id: string;
  /** By date. */
  readonly runs: readonly RepeatedRun[];
  /** Runs by specimen, specimens by name. */
  readonly specimens: ReadonlyMap<string, readonly RepeatedRun[]>;
}

/** Groups the runs of one device; a run that is like no other is a group of its own. */
export function groupsOf(runs: readonly RepeatedRun[]): RepeatGroup[] {
  const sorted = [...runs].sort((a, b) => compareText(a.date, b.date) || compareText(a.run, b.run));
  const groups = Map.groupBy(sorted, ({ likeness }) => likeness);
  return [...groups.values()].map((alike) => {
    const specimens = [...Map.groupBy(alike, ({ specimen }) => specimen)].sort(([a], [b]) => compareText(a, b));
    return { id: alike[0]!.run, runs: alike, specimens: new Map(specimens) };
  });
}
