import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cut, dateOf, instantOf } from '../../../src/register/values/values.ts';
import type { TextNode } from '../../../src/register/yaml/node.ts';
import { Report } from '../../../src/register/yaml/report.ts';

const PLACE = { file: 'content/runs/a.md', line: 2, column: 7 };

function node(text: string): TextNode {
  return { kind: 'text', text, quoted: false, place: PLACE, inside: PLACE };
}

describe('register/values/values', () => {
  it('knows the days of the Gregorian calendar as ECMAScript does (ECMA-262, time values; ISO 8601 calendar dates)', () => {
    const part = (most: number) => fc.integer({ min: 0, max: most });
    fc.assert(
      fc.property(fc.integer({ min: 1900, max: 2500 }), part(13), part(32), (year, month, day) => {
        const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
        const moment = new Date(Date.UTC(year, month - 1, day));
        const exists = moment.toISOString().startsWith(text);
        expect(dateOf(node(text), 'date', new Report())).toBe(exists ? text : undefined);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['2026-03-14T09:00:00Z', Date.UTC(2026, 2, 14, 9)],
    ['2026-03-14T10:00:00.25+01:00', Date.UTC(2026, 2, 14, 9, 0, 0, 250)],
    ['2026-03-14T09:00:00', undefined],
    ['2026-02-30T09:00:00Z', undefined],
    ['09:00:00Z', undefined],
    ['2026-03-14', undefined],
  ])('%s is an instant: %s ms since 1970', (text, expected) => {
    const report = new Report();
    const epoch = instantOf(node(text), 'start', report);
    expect(epoch).toBe(expected === undefined ? undefined : expected / 1000);
    expect(report.problems.map(({ rule }) => rule)).toEqual(expected === undefined ? ['bad-date'] : []);
  });

  it.each([
    ['1900-02-29', false],
    ['2000-02-29', true],
    ['2024-02-29', true],
    ['2026-02-29', false],
    ['2026-3-1', false],
    ['2026-03-01T10:00', false],
    ['20260301', false],
  ])('%s is a day: %s', (text, expected) => {
    const report = new Report();
    expect(dateOf(node(text), 'date', report) !== undefined).toBe(expected);
    expect(report.problems.length).toBe(expected ? 0 : 1);
  });

  it('quotes long and broken values on one short line', () => {
    expect(cut('a\n  b')).toBe('a b');
    expect(cut('x'.repeat(61))).toBe(`${'x'.repeat(57)}…`);
    expect(cut('x'.repeat(60))).toBe('x'.repeat(60));
  });
});
