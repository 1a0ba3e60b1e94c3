/** Whether an interval holds a truth. */
import { type Figure, isPresent, type PresentFigure } from '../../src/figures/figure.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';

/** Whether the figure's 95 % interval holds the truth, rounding of the last digits aside. */
export function holds({ quantity, interval }: PresentFigure, truth: number): boolean {
  const [low, high] = interval ?? interval95(quantity)!;
  const slack = 1e-9 * Math.abs(truth);
  return low - slack <= truth && truth <= high + slack;
}

/** The same of a figure at an address; null where it is absent, or there is no truth. */
export function heldAt(figures: ReadonlyMap<string, Figure>, address: string, truth: number | null): boolean | null {
  const figure = figures.get(address);
  return figure && isPresent(figure) && truth !== null ? holds(figure, truth) : null;
}
