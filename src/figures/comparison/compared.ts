/** Runs side by side, by setting: what comparison figures are computed from. */
import { sumSorted } from '../../quantities/combine.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { interval95 } from '../../quantities/uncertainty.ts';
import type { Of, Reason } from '../absent.ts';
import { type Figure, isPresent, type PresentFigure } from '../figure.ts';

export interface ComparedRun {
  readonly alias: string;
  /** Run id. */
  readonly run: string;
  readonly device: string;
  readonly specimen: string;
  /** Hz, as set; absent where the run states none. */
  readonly clockSetting?: number;
  /** The run's own figures, keys without alias. */
  readonly figures: ReadonlyMap<string, Figure>;
}

/** The runs of one setting, one or more, of one specimen and alike but for time. */
export interface ComparedSetting {
  readonly alias: string;
  readonly runs: readonly ComparedRun[];
}

export interface Compared {
  /** Comparison id, used in source ids. */
  readonly id: string;
  readonly reference: ComparedSetting;
  /** The settings beside the reference, in the author's order. */
  readonly others: readonly ComparedSetting[];
  /** Other repeats of the specimen: groups of runs alike but for time. They say how runs lie apart, and nothing else. */
  readonly repeats?: readonly (readonly ComparedRun[])[];
}

/** Of which runs a figure of a setting is, and what is known of how such runs lie apart. */
export interface Origin {
  /** Figures of runs: `larch-fast/load_power`. */
  readonly names: readonly string[];
  /** Degrees of freedom of the spread between runs; 0 where it is unknown. */
  readonly dof: number;
}

/** The runs of a setting together. Its figures are theirs, or the mean of theirs; `run` is the first one. */
export interface Setting extends ComparedRun {
  readonly runs: readonly string[];
  readonly origins: ReadonlyMap<string, Origin>;
}

/** A value of several settings, with what it came from. */
export interface Derived {
  readonly quantity: Quantity;
  readonly origins: readonly Origin[];
  readonly of?: Of;
  readonly inferred?: readonly string[];
  /** What stood in for something that was not measured: "the mean clock of the load phase for that of the scores". */
  readonly standsIn?: readonly string[];
}

/** A setting's figure that a comparison needs, or why it cannot be had. */
export function operand(run: ComparedRun, key: string): PresentFigure | Reason {
  const figure = run.figures.get(key);
  if (figure === undefined) return { absent: 'operand-absent', why: `The run ${run.alias} has no ${key}.` };
  if (isPresent(figure)) return figure;
  return { absent: 'operand-absent', why: `${key} of ${run.alias} is absent. ${figure.why}` };
}

/** Where a setting's figure came from. */
export function originOf({ origins, run }: Setting, key: string): Origin {
  return origins.get(key) ?? { names: [`${run}/${key}`], dof: 0 };
}

/** Whether the 95 % interval leaves a value out; not where the uncertainty is unknown. */
export function leavesOut(quantity: Quantity, neutral: number): boolean {
  const interval = interval95(quantity);
  return interval !== null && (interval[0] > neutral || interval[1] < neutral);
}

/** Mean of numbers, the same bits whatever their order. */
export function evenMean(numbers: readonly number[]): number {
  return sumSorted(numbers) / numbers.length;
}

/** A setting with one run, under the run's alias. */
export function alone(run: ComparedRun): ComparedSetting {
  return { alias: run.alias, runs: [run] };
}
