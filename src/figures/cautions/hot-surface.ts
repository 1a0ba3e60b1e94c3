/** The caution of a surface that is past a published touch limit, or may be. */
import { printQuantity } from '../../quantities/print.ts';
import { expandedUncertainty } from '../../quantities/uncertainty.ts';
import { isPresent, type PresentFigure, type RunFigures } from '../figure.ts';
import { type Caution, caution } from './caution.ts';

/**
 * Calls for one where a `touch_margin` is below zero, or not above it by more than its uncertainty and by what the room was
 * colder than the table's ambient: on the side of care, because a warmer room warms the surface too.
 */
export function hotSurface({ figures }: RunFigures): Caution | null {
  const margins = [...figures.values()].filter(
    (figure): figure is PresentFigure => figure.name === 'touch_margin' && isPresent(figure),
  );
  const close = margins.filter((margin) => margin.quantity.value < leeway(margin));
  if (close.length === 0) return null;
  return caution(
    'hot-surface',
    `These surfaces were past their touch limit, or too near to tell: ${close.map(spotOf).join(', ')}.`,
  );
}

/** Uncertainty and colder room together, K; where the uncertainty is unknown, the colder room alone. */
function leeway({ quantity, of }: PresentFigure): number {
  const colder = typeof of?.colder_than_reference_k === 'number' ? of.colder_than_reference_k : 0;
  return (expandedUncertainty(quantity) ?? 0) + Math.max(0, colder);
}

function spotOf({ quantity, of }: PresentFigure): string {
  const size = printQuantity({ ...quantity, value: Math.abs(quantity.value) }).text;
  return `${of?.spot_title ?? 'a spot'} (${size} ${quantity.value < 0 ? 'over' : 'below'})`;
}
