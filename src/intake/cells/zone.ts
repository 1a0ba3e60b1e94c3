/** Civil time in a declared zone -> instants. Names and rules come from the IANA time zone database, packed by moment-timezone. */
import packed from 'moment-timezone/data/packed/latest.json' with { type: 'json' };
import { readOffset } from './civil.ts';

/**
 * Civil seconds since 1970-01-01 -> epoch seconds. Where the hour is repeated, the first reading not before `previous` counts;
 * NaN for a civil time that the clock skipped.
 */
export type ZoneReader = (civil: number, previous: number) => number;

/** Reader of a zone written as `UTC`, `±hh:mm` or an IANA name; null for a name that the database does not have. */
export function zoneReader(zone: string): ZoneReader | null {
  const fixed = readOffset(zone.trim());
  if (fixed !== null) return (civil) => civil - fixed;
  const periods = periodsOf(zone.trim());
  if (!periods) return null;
  let latest = 0;
  return (civil, previous) => {
    const same = instantIn(periods[latest]!, civil);
    if (same >= previous) return same;
    let last = Number.NaN;
    for (let k = 0; k < periods.length; k++) {
      const instant = instantIn(periods[k]!, civil);
      if (Number.isNaN(instant)) continue;
      last = instant;
      latest = k;
      if (instant >= previous) return instant;
    }
    return last;
  };
}

/** Names of all zones and their aliases. */
export function zoneNames(): string[] {
  return [
    ...packed.zones.map((zone) => zone.slice(0, zone.indexOf('|'))),
    ...packed.links.map((link) => link.slice(link.indexOf('|') + 1)),
  ];
}

/** A stretch of time with one offset. Epoch seconds, half open; `offset` is what civil time is ahead of UTC. */
interface Period {
  readonly from: number;
  readonly to: number;
  readonly offset: number;
}

function instantIn(period: Period, civil: number): number {
  const instant = civil - period.offset;
  return instant >= period.from && instant < period.to ? instant : Number.NaN;
}

function periodsOf(name: string): Period[] | null {
  const target = packed.links.find((link) => link.endsWith(`|${name}`))?.split('|')[0] ?? name;
  const zone = packed.zones.find((text) => text.startsWith(`${target}|`));
  if (!zone) return null;
  // Packed form (moment-timezone, "Data formats"): name|abbreviations|minutes behind UTC|indices|minutes between changes, in base 60.
  const [, , offsets = '', indices = '', changes = ''] = zone.split('|');
  const behind = offsets.split(' ').map(base60);
  const lengths = changes === '' ? [] : changes.split(' ').map(base60);
  let from = Number.NEGATIVE_INFINITY;
  let sum = 0;
  return [...indices].map((index, k) => {
    sum += lengths[k] ?? 0;
    const to = k < lengths.length ? Math.round(sum * 60) : Number.POSITIVE_INFINITY;
    const period = { from, to, offset: -Math.round(behind[base60(index)]! * 60) };
    from = to;
    return period;
  });
}

/** Digits 0-9, a-z, A-X with an optional sign and fraction. */
function base60(text: string): number {
  const [whole = '', part = ''] = text.replace('-', '').split('.');
  let value = 0;
  for (const digit of whole) value = value * 60 + digitOf(digit);
  let weight = 1;
  for (const digit of part) {
    weight /= 60;
    value += digitOf(digit) * weight;
  }
  return text.startsWith('-') ? -value : value;
}

function digitOf(digit: string): number {
  const code = digit.charCodeAt(0);
  return code > 96 ? code - 87 : code > 64 ? code - 29 : code - 48;
}
