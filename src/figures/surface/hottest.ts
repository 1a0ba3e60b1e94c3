/** The hottest spot, of all and of each part. */
import { compareText } from '../../problem.ts';
import { maximum } from '../../quantities/arithmetic.ts';
import { absent, isReason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import { type Figure, isPresent, type PresentFigure } from '../figure.ts';
import { orRefused } from '../joined.ts';
import { fromOf } from './spot.ts';
import type { Surface, SurfaceReading } from './surface-table.ts';

export interface Spot {
  readonly reading: SurfaceReading;
  readonly figure: Figure;
}

/** Of two spots equally hot the first by id stands for both, in whatever order the table's rows stand. */
function bySpot(a: Spot, b: Spot): number {
  return compareText(a.reading.spot, b.reading.spot);
}

/** `hottest_surface` of some spots. One that could not be read may be the hottest: then the others are a lower bound. */
export function hottestSurface(surface: Surface, spots: readonly Spot[]): Figure {
  const name = 'hottest_surface';
  const read = spots.filter((spot): spot is Spot & { figure: PresentFigure } => isPresent(spot.figure)).sort(bySpot);
  const unread = spots.filter(({ figure }) => !isPresent(figure));
  const highest = read.length === 0 ? null : orRefused(maximum(read.map(({ figure }) => figure.quantity)));
  if (highest !== null && isReason(highest)) return absent(name, highest);
  if (highest === null || unread.length > 0) {
    const left = unread.map(({ reading }) => reading.title).join(', ');
    return absent(name, {
      absent: 'operand-absent',
      why: `The hottest spot cannot be told, because no temperature is known of: ${left}.`,
      ...(highest === null ? {} : { bound: { relation: '>', value: highest.value, unit: highest.unit } }),
    });
  }
  const hottest = read.find(({ figure }) => figure.quantity.value === highest.value)!;
  return {
    name,
    quantity: highest,
    from: fromOf(
      surface,
      spots.map(({ reading }) => reading),
    ),
    ...(surface.inferred.length > 0 ? { inferred: surface.inferred } : {}),
    of: {
      ...rangeMarks(hottest.figure),
      spot: hottest.reading.spot,
      spot_title: hottest.reading.title,
      part: hottest.reading.part.title,
      spots: spots.length,
    },
  };
}
