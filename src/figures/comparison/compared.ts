/** Runs side by side: what comparison figures are computed from. */
import { sumSorted } from '../../quantities/combine.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { interval95 } from '../../quantities/uncertainty.ts';
import { absent, isReason, type Of, type Reason } from '../absent.ts';
import { type Figure, type FigureMap, type From, isPresent, type NameOfFigure, type PresentFigure } from '../figure.ts';
import { isTellable } from '../sources.ts';

export interface ComparedRun {
  readonly alias: string;
  /** Run id. */
  readonly run: string;
  readonly device: string;
  readonly specimen: string;
  /** Hz, as set; absent where the run states none. */
  readonly clockSetting?: number;
  /** The run's own figures, keys without alias. */
  readonly figures: FigureMap;
}

export interface Compared {
  /** Comparison id, used in source ids. */
  readonly id: string;
  readonly reference: ComparedRun;
  /** The runs beside the reference, in the author's order. */
  readonly others: readonly ComparedRun[];
}

/** A value of several runs, with the runs' figures that it came from. */
export interface Derived {
  readonly quantity: Quantity;
  readonly figures: readonly string[];
  readonly of?: Of;
  readonly inferred?: readonly string[];
}

/** A run's figure that a comparison needs, or why it cannot be had. */
export function operand(run: ComparedRun, key: string): PresentFigure | Reason {
  const figure = run.figures.get(key);
  if (figure === undefined) return { absent: 'operand-absent', why: `The run ${run.alias} has no ${key}.` };
  if (isPresent(figure)) return figure;
  return { absent: 'operand-absent', why: `${key} of ${run.alias} is absent. ${figure.why}` };
}

/** How a figure's source is named: `larch-fast/load_power`. */
export function named(run: ComparedRun, key: string): string {
  return `${run.run}/${key}`;
}

export type Verdict = 'told apart' | 'not told apart' | 'cannot be told';

/** Whether the 95 % interval leaves a value out: 1 for a ratio of equals, 0 for a difference; it cannot be told where the uncertainty is unknown. */
export function verdictAgainst(quantity: Quantity, neutral: number): Verdict {
  const interval = interval95(quantity);
  if (!interval) return 'cannot be told';
  return interval[0] > neutral || interval[1] < neutral ? 'told apart' : 'not told apart';
}

/** Puts a derived value, or the reason for none, under its name; the verdict goes along. */
export function compared(name: NameOfFigure, outcome: Derived | Reason, of: Of, verdict: (quantity: Quantity) => string): Figure {
  if (isReason(outcome)) return absent(name, { ...outcome, of: { ...of, ...outcome.of } });
  const { quantity, figures, inferred = [] } = outcome;
  if (!isTellable(quantity))
    return absent(name, { absent: 'out-of-range', why: 'The numbers are too large or too small to compute with.', of });
  const from: From = { figures: [...new Set(figures)].sort(), columns: [], rows: null };
  return {
    name,
    quantity,
    from,
    ...(inferred.length > 0 ? { inferred: [...new Set(inferred)] } : {}),
    of: { ...of, ...outcome.of, verdict: verdict(quantity) },
  };
}

/** Mean of numbers, the same bits whatever their order. */
export function evenMean(numbers: readonly number[]): number {
  return sumSorted(numbers) / numbers.length;
}
