/** Which of the runs in the address are shown, and what is said of the others. */
import { MOST_STYLES } from '../../plots/drawing/palette.ts';
import type { View } from './view.ts';

export interface Choice {
  /** Ids of runs that are there, in the reader's order. */
  readonly shown: readonly string[];
  /** Ids that the site does not have. */
  readonly gone: readonly string[];
  /** One of `shown`; null where there is none. */
  readonly reference: string | null;
  /** Sentences for readers. */
  readonly remarks: readonly string[];
}

/** Most runs that one plot can tell apart. */
export const MOST_RUNS = MOST_STYLES;

/** A view in the ids that runs have now, with a remark for each that had another. */
export function underNewIds(
  view: View,
  renamed: ReadonlyMap<string, string>,
): { readonly view: View; readonly remarks: readonly string[] } {
  const idNow = (id: string) => renamed.get(id) ?? id;
  const former = [...new Set(view.runs)].filter((id) => renamed.has(id));
  const remarks = former.map((id) => `The run ${id} is called ${idNow(id)} now.`);
  const runs = [...new Set(view.runs.map(idNow))];
  return { view: { ...view, runs, reference: view.reference === null ? null : idNow(view.reference) }, remarks };
}

/** What of a view can be shown on a site that has these runs. */
export function choose(view: Pick<View, 'runs' | 'reference'>, known: ReadonlySet<string>): Choice {
  const there = view.runs.filter((id) => known.has(id));
  const gone = view.runs.filter((id) => !known.has(id));
  const shown = there.slice(0, MOST_RUNS);
  const left = there.slice(MOST_RUNS);
  const wanted = view.reference;
  const reference = wanted !== null && shown.includes(wanted) ? wanted : (shown[0] ?? null);
  return { shown, gone, reference, remarks: [...tooMany(left), ...otherReference(wanted, reference)] };
}

function tooMany(left: readonly string[]): string[] {
  if (left.length === 0) return [];
  const are = left.length === 1 ? 'is' : 'are';
  return [`At most ${MOST_RUNS} runs can be told apart in one plot: ${left.join(', ')} ${are} left out.`];
}

function otherReference(wanted: string | null, reference: string | null): string[] {
  if (wanted === null || wanted === reference || reference === null) return [];
  return [`The reference ${wanted} cannot be shown: ${reference} stands in for it.`];
}
