import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysFromCivil, isCivil, readCivil } from '../../../src/intake/cells/civil.ts';

describe('intake/cells/civil', () => {
  it('agrees with the calendar of the language (ECMA-262, Date.UTC)', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1000-01-01T00:00:00Z'), max: new Date('9999-12-31T00:00:00Z'), noInvalidDate: true }),
        (date) => {
          const days = daysFromCivil(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
          expect(days).toBe(Math.floor(date.getTime() / 86_400_000));
          const civil = readCivil(date.toISOString(), 'ymd')!;
          expect(Math.round((civil.day * 86400 + civil.seconds) * 1000)).toBe(date.getTime());
          expect(civil.offset).toBe(0);
        },
      ),
    );
  });

  it.each([
    ['2026-03-14T10:00:00.250+01:00', 36000.25, 3600],
    ['2026-03-14 10:00:00', 36000, null],
    ['2026-03-14 10:00', 36000, null],
    ['2026-03-14 10:00:00,5', 36000.5, null],
    ['2026-03-14T10:00:00-0530', 36000, -19800],
    ['2026-03-14T10:00:00 UTC', 36000, 0],
    ['2026-03-14 10:00:00 CET', 36000, null],
    ['2026-03-14T10:00:00+01:00Z', 36000, null],
    ['2026/3/14 9:05:07', 32707, null],
    ['2026-03-14 12:00:01 AM', 1, null],
  ])('reads %s', (text, seconds, offset) => {
    expect(readCivil(text, 'ymd')).toEqual({ day: daysFromCivil(2026, 3, 14), seconds, offset });
  });

  it.each([
    '2026-13-01 10:00:00',
    '2026-02-29',
    '2026-03-14 24:00:00',
    '2026-03-14 10:99:00',
    '2026-03-14 10:00:60',
    '26-03-14',
    '1.2',
    '10:00:00x',
    '',
  ])('refuses %j', (text) => {
    expect(readCivil(text, 'ymd')).toBeNull();
  });

  it('reads day first, month first and clock alone', () => {
    expect(readCivil('1.2.2026 10:00:00.5', 'dmy')).toEqual({ day: daysFromCivil(2026, 2, 1), seconds: 36000.5, offset: null });
    expect(readCivil('1/2/2026', 'mdy')?.day).toBe(daysFromCivil(2026, 1, 2));
    expect(readCivil('23:59:59', 'ymd')).toEqual({ day: Number.NaN, seconds: 86399, offset: null });
  });

  it('tells dates from numbers', () => {
    expect(['2026-01-05', '10:00', '2026-01-05T10:00:00Z'].every(isCivil)).toBe(true);
    expect(['71.3', '2026', '12-13', 'ten', '1.2.3.4'].some(isCivil)).toBe(false);
  });
});
