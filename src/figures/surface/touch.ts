/** How far a spot stays below the published touch limit of its material and contact. */
import { subtract } from '../../quantities/arithmetic.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { absent, isReason, type Reason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import { type Figure, isPresent } from '../figure.ts';
import { orRefused } from '../joined.ts';
import { materialClasses } from './material.ts';
import { spotOf } from './spot.ts';
import type { SurfaceReading } from './surface-table.ts';
import { CONTACT_TIMES, REFERENCE_AMBIENT, type TouchLimit, touchLimit } from './touch-limits.ts';

/** Margins measured further than this from the table's ambient say nothing about it, K. */
const REACH = 10;

/** `touch_margin` of a spot from its corrected temperature and the ambient of the run. In a room colder than the limits mean the surface is taken as warmer by the difference; a warmer room is left as it is. */
export function touchMargin(spot: SurfaceReading, surface: Figure, ambient: Quantity | Reason, run: string): Figure {
  const limit = limitFor(spot);
  const reason = isReason(limit) ? limit : reasonOf(surface, ambient);
  if (reason || isReason(limit)) return absent('touch_margin', { ...(reason as Reason), of: spotOf(spot) });
  if (!isPresent(surface) || isReason(ambient)) throw new Error('an absent surface has a reason');
  const quantity = marginOf(limit.limit, surface.quantity, ambient, `run:${run}/touch_margin.${spot.spot}/room`);
  if (isReason(quantity)) return absent('touch_margin', { ...quantity, of: spotOf(spot) });
  return {
    name: 'touch_margin',
    quantity,
    from: surface.from,
    ...(surface.inferred ? { inferred: surface.inferred } : {}),
    of: {
      ...spotOf(spot),
      ...rangeMarks(surface),
      contact: contactWords(spot),
      limit_celsius: limit.limit,
      limit_of: limit.material,
      ...(limit.fromMemory ? { limit_from_memory: true } : {}),
      ambient: `${printQuantity(ambient).text}; the limit means ${REFERENCE_AMBIENT} °C`,
      colder_than_reference_k: REFERENCE_AMBIENT - ambient.value,
    },
  };
}

/** How far a rise over ambient may change with the room, as a share of the difference between the rooms. */
const RISE_KEPT = 0.1;

/**
 * The limit less the surface. In a room colder than the limits mean, the rise over ambient is compared with what the limit leaves over
 * 25 °C: the surface would be warmer by the difference, to within a tenth of it (limits). A warmer room already is on the side of care.
 */
function marginOf(limit: number, surface: Quantity, ambient: Quantity, source: string): Quantity | Reason {
  const move = REFERENCE_AMBIENT - ambient.value;
  if (move <= 0) return orRefused(subtract({ value: limit, unit: '°C', parts: [] }, surface));
  const title = 'what the rise over ambient may differ by in a room of 25 °C';
  const allowed: Quantity = {
    value: limit - REFERENCE_AMBIENT,
    unit: 'K',
    parts: [{ source: { id: source, title, dof: null, distribution: 'rectangular' }, share: (RISE_KEPT * move) / Math.sqrt(3) }],
  };
  const rise = orRefused(subtract(surface, ambient));
  return isReason(rise) ? rise : orRefused(subtract(allowed, rise));
}

/** "touched briefly (1 s to 10 s)". */
function contactWords({ contact }: SurfaceReading): string {
  return contact === 'none' || contact === 'beyond' || contact === 'unstated' ? contact : `${contact} (${CONTACT_TIMES[contact]})`;
}

function limitFor({ contact, material, title }: SurfaceReading): TouchLimit | Reason {
  if (contact === 'none') return { absent: 'no-condition', why: `Nobody touches ${title}: its contact is stated as none.` };
  if (contact === 'unstated') return { absent: 'no-condition', why: `The table does not say how long a hand may touch ${title}.` };
  if (material === '') return { absent: 'no-condition', why: `The table does not say of what material ${title} is.` };
  if (contact === 'beyond')
    return { absent: 'no-rating', why: `The limits have no row for a contact as long as that of ${title}.` };
  return (
    touchLimit(contact, materialClasses(material)) ?? {
      absent: 'no-rating',
      why: `The limits are for metal, glass or porcelain, plastic or rubber, and wood; ${title} is of ${material}.`,
    }
  );
}

function reasonOf(surface: Figure, ambient: Quantity | Reason): Reason | null {
  if (!isPresent(surface)) return { absent: 'operand-absent', why: surface.why };
  if (isReason(ambient)) return { absent: ambient.absent, why: ambient.why };
  if (Math.abs(ambient.value - REFERENCE_AMBIENT) <= REACH) return null;
  const room = printQuantity(ambient).text;
  return {
    absent: 'out-of-range',
    why: `The room was at ${room}, more than ${REACH} K from the ${REFERENCE_AMBIENT} °C that the limits mean.`,
  };
}
