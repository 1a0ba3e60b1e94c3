import { describe, expect, it } from 'vitest';
import { zoneReader } from '../../../src/intake/cells/zone.ts';

/** Civil seconds of a text read as if it were UTC. */
const civil = (text: string) => Date.parse(`${text}Z`) / 1000;
const instant = (zone: string, text: string, previous = Number.NEGATIVE_INFINITY) =>
  new Date(zoneReader(zone)!(civil(text), previous) * 1000).toISOString();

// Directive 2000/84/EC: summer time begins and ends at 01:00 UTC on the last Sundays of March and October.
describe('intake/cells/zone', () => {
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

  // 15 U.S.C. 260a as it stood from 1987 to 2006 and since 2007: April and July are in summer time, January and late November are not.
  it('follows another law for fifty years', () => {
    const reader = zoneReader('America/New_York')!;
    for (let year = 1987; year <= 2036; year++) {
      for (const [month, hours] of [
        ['01', 5],
        ['04', 4],
        ['07', 4],
        ['11', 5],
      ] as const) {
        const local = civil(`${year}-${month}-20T12:34:56`);
        expect(reader(local, Number.NEGATIVE_INFINITY) - local).toBe(hours * 3600);
      }
    }
  });

  it('knows aliases, and no invented names', () => {
    expect(zoneReader('Asia/Calcutta')!(0, Number.NEGATIVE_INFINITY)).toBe(-19800);
    expect(zoneReader('Europe/Nowhere')).toBeNull();
  });
});
