import { describe, expect, test } from 'vitest';
import { mappingLines, scalar } from '../../src/figures/mapping-lines.ts';
import { isTableOf, proposeMapping } from '../../src/figures/propose-mapping.ts';
import type { TableKind } from '../../src/figures/table-layout.ts';
import { readTable } from '../../src/intake/table.ts';

/** The lines that would be written of a table. */
function lines(text: string, kind: TableKind): string[] {
  return mappingLines(proposeMapping(readTable(new TextEncoder().encode(text), 'data/t.csv'), kind));
}
const fits = (text: string, kind: TableKind) =>
  isTableOf(proposeMapping(readTable(new TextEncoder().encode(text), 'data/t.csv'), kind));

describe('figures/propose-mapping', () => {
  test('a long table of scores with settings: columns, rows, directions by unit', () => {
    expect(
      lines('Benchmark,Clock,Result,Units,Pass\nCopy,1900,10,MB/s,1\nSort,1900,3,s,1\nCopy,2400,12,MB/s,1\n', 'scores'),
    ).toEqual([
      'columns:',
      '  test: Benchmark',
      '  value: Result',
      '  unit: Units',
      '  repeat: Pass',
      'rows:',
      '  Clock: 1900',
      'tests:',
      '  Copy: higher',
      '  Sort: lower',
    ]);
  });

  test('a wide one: what no unit tells is left open', () => {
    expect(lines('Mode,Copy [MB/s],Frames\nslow,10,31\nfast,12,35\n', 'scores')).toEqual([
      'layout: wide',
      'rows:',
      '  Mode: slow',
      'tests:',
      '  Copy: higher',
      '#   Frames: higher, points # or lower, and its own unit',
    ]);
  });

  test('repeats in columns that are numbered', () => {
    expect(lines('Name,Run 1,Run 2,Run 3\nCopy,10,11,12\nSort,3,4,5\n', 'scores')).toEqual([
      'columns:',
      '  test: Name',
      '  value: ["Run 1", "Run 2", "Run 3"]',
      '# tests:',
      '#   Copy: higher, points # or lower, and its own unit',
      '#   Sort: higher, points # or lower, and its own unit',
    ]);
  });

  test('runs that have names are settings', () => {
    expect(lines('Run,Copy [MB/s]\nslow,10\nfast,12\n', 'scores')).toEqual([
      'layout: wide',
      'rows:',
      '  Run: slow',
      'tests:',
      '  Copy: higher',
    ]);
  });

  test('a camera’s spots, long and wide', () => {
    expect(lines('Point,Max temp\nLid,48.7\nBase,40.1\n', 'surface')).toEqual(['columns:', '  spot: Point', '  reading: Max temp']);
    expect(lines('Lid,Base\n48.7,40.1\n', 'surface')).toEqual(['layout: wide']);
  });

  test('attempts in words of one’s own, clocks without a unit, no voltage', () => {
    expect(lines('MHz,Result\n1900,ok\n2100,froze\n2400,would not boot\n2500,sparks\n', 'attempts')).toEqual([
      'columns:',
      '  clock: MHz',
      '  outcome: Result',
      'units:',
      '  clock: MHz',
      'every_row:',
      '  voltage_offset: 0 mV # if no voltage was changed',
      'words:',
      '  ok: passed',
      '  froze: hung under load',
      '  would not boot: no boot',
      '#   sparks: what it means, one of our outcomes',
    ]);
  });

  test('a table in our words needs nothing', () => {
    expect(lines('test,value,unit,better\ncopy,1,s,lower\n', 'scores')).toEqual([]);
  });

  test('a column in which all passed may be of anything; what did not happen is no outcome', () => {
    expect(fits('MHz,mV,posted,finished\n1900,0,yes,yes\n2000,0,yes,no\n', 'attempts')).toBe(false);
    expect(fits('MHz,mV,check\n1900,0,no errors\n2000,0,no errors\n', 'attempts')).toBe(false);
    const words =
      'MHz,Result\n1900,"passed, no errors"\n2000,did not hang\n2100,"froze, no picture"\n2200,would not boot\n2300,does not boot\n';
    expect(lines(words, 'attempts').slice(-6)).toEqual([
      'words:',
      '  passed, no errors: passed',
      '  froze, no picture: hung under load',
      '  would not boot: no boot',
      '  does not boot: no boot',
      '#   did not hang: what it means, one of our outcomes',
    ]);
  });

  test('tells which kind a table can be', () => {
    expect(fits('Point,Max temp\nLid,48.7\n', 'surface')).toBe(true);
    expect(fits('MHz,Result\n1900,ok\n', 'attempts')).toBe(true);
    expect(fits('MHz,mV,what came of it\n1900,0,ok\n2000,0,froze\n2100,30,dead\n', 'attempts')).toBe(true);
    expect(fits('MHz,mV,remarks of mine\n1900,0,ok\n2000,0,warm\n', 'attempts')).toBe(false);
    expect(fits('a\nx\n', 'scores')).toBe(false);
    expect(fits('Point,Max temp\nLid,48.7\n', 'attempts')).toBe(false);
  });
});

describe('figures/mapping-lines', () => {
  test.each([
    ['Wide copy', 'Wide copy'],
    ['1900', '1900'],
    ['a: b', '"a: b"'],
    ['# 1', '"# 1"'],
    ['yes', '"yes"'],
    ['say "ah"', '"say \\"ah\\""'],
  ])('%s as a YAML scalar', (text, written) => {
    expect(scalar(text)).toBe(written);
  });
});
