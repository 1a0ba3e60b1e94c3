import { describe, expect, it } from 'vitest';
import { zoneReader } from '../../src/intake/zone.ts';

/** Civil seconds of a text read as if it were UTC. */
const civil = (text: string) => Date.parse(`${text}Z`) / 1000;
const instant = (zone: string, text: string, previous = Number.NEGATIVE_INFINITY) =>
  new Date(zoneReader(zone)!(civil(text), previous) * 1000).toISOString();

// Directive 2000/84/EC: summer time begins and ends at 01:00 UTC on the last Sundays of March and October.
describe('intake/zone', () => {
  it('reads fixed offsets', () => {
    expect(instant('+05:30', '2026-03-14T10:00:00')).toBe('2026-03-14T04:30:00.000Z');
    expect(instant('UTC', '2026-03-14T10:00:00')).toBe('2026-03-14T10:00:00.000Z');
  });

  it('follows summer time by name', () => {
    expect(instant('Europe/Vienna', '2026-03-29T01:59:59')).toBe('2026-03-29T00:59:59.000Z');
    expect(instant('Europe/Vienna', '2026-03-29T03:00:00')).toBe('2026-03-29T01:00:00.000Z');
    expect(zoneReader('Europe/Vienna')!(civil('2026-03-29T02:30:00'), Number.NEGATIVE_INFINITY)).toBeNaN();
  });

  it('takes the repeated hour in the order of the rows', () => {
    expect(instant('Europe/Vienna', '2026-10-25T02:30:00')).toBe('2026-10-25T00:30:00.000Z');
    expect(instant('Europe/Vienna', '2026-10-25T02:10:00', civil('2026-10-25T00:50:00'))).toBe('2026-10-25T01:10:00.000Z');
  });

  it('agrees with the time zone data of the runtime over a century', () => {
    const format = new Intl.DateTimeFormat('en-GB', {
      timeZone: 'America/New_York',
      dateStyle: 'short',
      timeStyle: 'medium',
      hourCycle: 'h23',
    });
    const reader = zoneReader('America/New_York')!;
    for (let year = 1971; year < 2037; year++) {
      for (const month of ['01', '04', '07', '11']) {
        const found = reader(civil(`${year}-${month}-20T12:34:56`), Number.NEGATIVE_INFINITY);
        expect(format.format(new Date(found * 1000))).toBe(`20/${month}/${year}, 12:34:56`);
      }
    }
  });

  it('knows aliases, and no invented names', () => {
    expect(zoneReader('Asia/Calcutta')!(0, Number.NEGATIVE_INFINITY)).toBe(-19800);
    expect(zoneReader('Europe/Nowhere')).toBeNull();
  });
});
