/** When a repeat began or ended, as a cell says it. */
import { readCivil } from '../../intake/cells/civil.ts';
import { zoneReader } from '../../intake/cells/zone.ts';
import { isParseFailure, parseQuantity } from '../../quantities/parse.ts';
import type { Moment } from './score-table.ts';

export const MOMENT_EXPECTED = 'a date and clock time such as 2026-03-14T11:00:00Z, or a time since the first row such as 310 s';

const DAY = 86_400;
const STATED = { id: 'stated', title: 'stated', dof: null };

/**
 * Reads a moment: a date with a clock time (ISO 8601; one without an offset from UTC is in `zone`, where the log declares one, else its
 * instant is not known), or a quantity of time since the log's first row. Null for anything else.
 */
export function readMoment(text: string, zone: string | undefined): Moment | null {
  const civil = readCivil(text, 'ymd');
  if (civil && Number.isFinite(civil.day) && Number.isFinite(civil.seconds)) {
    const whole = civil.day * DAY + civil.seconds;
    if (civil.offset !== null) return { kind: 'instant', epoch: whole - civil.offset };
    const reader = zone === undefined ? null : zoneReader(zone);
    const epoch = reader ? reader(Math.floor(whole), Number.NEGATIVE_INFINITY) + (whole - Math.floor(whole)) : Number.NaN;
    return Number.isFinite(epoch) ? { kind: 'instant', epoch } : { kind: 'local' };
  }
  const quantity = parseQuantity(text, STATED);
  return isParseFailure(quantity) || quantity.unit !== 's' ? null : { kind: 'elapsed', seconds: quantity.value };
}

/** Seconds from one moment to another; null where they are not told on one scale. */
export function between(start: Moment, end: Moment): number | null {
  if (start.kind === 'instant' && end.kind === 'instant') return end.epoch - start.epoch;
  return start.kind === 'elapsed' && end.kind === 'elapsed' ? end.seconds - start.seconds : null;
}
