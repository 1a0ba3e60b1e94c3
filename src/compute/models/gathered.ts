/**
 * All that the page of a comparison prints, gathered once: from the runs as they are now, or read back from a record copy. JSON as it
 * stands, so that a copy prints by the same way as the living comparison. What it holds is described where a copy is read.
 */
import type { RecordedComparison } from '../../register/sealed/record-copies.ts';
import type { RecordedRepeat, RecordedRun } from '../../register/sealed/recorded-comparison.ts';

export type Gathered = RecordedComparison;
export type GatheredRun = RecordedRun;
/** A run of which nothing but its figures counts. */
export type GatheredRepeat = RecordedRepeat;

/** Figures by address without alias, each as in `figures.json`, and the sources that they rest on. */
export type FiguresJson = Pick<RecordedRepeat, 'sources' | 'figures'>;
