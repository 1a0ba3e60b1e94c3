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
  const past = margins.filter(({ quantity }) => quantity.value < 0);
  const close = margins.filter((margin) => margin.quantity.value >= 0 && margin.quantity.value < leeway(margin));
  if (past.length + close.length === 0) return null;
  const told = [
    ...(past.length > 0 ? [`past the touch limit: ${past.map(spotOf).join(', ')}`] : []),
    ...(close.length > 0 ? [`too near the touch limit to tell: ${close.map(spotOf).join(', ')}`] : []),
  ];
  return caution('hot-surface', `Surfaces were ${told.join('; ')}.`);
}

/** Uncertainty and colder room together, K; where the uncertainty is unknown, the colder room alone. */
function leeway({ quantity, of }: PresentFigure): number {
  const colder = typeof of?.colder_than_reference_k === 'number' ? of.colder_than_reference_k : 0;
  return (expandedUncertainty(quantity) ?? 0) + Math.max(0, colder);
}

function spotOf({ quantity, of }: PresentFigure): string {
  const size = printQuantity({ ...quantity, value: Math.abs(quantity.value) }).text;
  return `${of?.spot_title ?? 'a spot'} (${of?.contact ?? ''}, ${size} ${quantity.value < 0 ? 'over' : 'below'})`;
}
