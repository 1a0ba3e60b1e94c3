/** The caution of a surface that is past a published touch limit, or may be. */
import { printQuantity } from '../../quantities/print.ts';
import { expandedUncertainty } from '../../quantities/uncertainty.ts';
import { isPresent, type PresentFigure, type RunFigures } from '../figure.ts';
import { type Caution, caution } from './caution.ts';

/** Calls for one where a `touch_margin` is below zero, or not above it by more than its uncertainty. */
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

/** K; a tenth of what the room was colder by where the uncertainty is unknown, since the margin was moved by that much. */
function leeway({ quantity, of }: PresentFigure): number {
  const colder = typeof of?.colder_than_reference_k === 'number' ? of.colder_than_reference_k : 0;
  return expandedUncertainty(quantity) ?? Math.max(0, colder) / 10;
}

function spotOf({ quantity, of }: PresentFigure): string {
  const size = printQuantity({ ...quantity, value: Math.abs(quantity.value) }).text;
  return `${of?.spot_title ?? 'a spot'} (${size} ${quantity.value < 0 ? 'over' : 'below'})`;
}
