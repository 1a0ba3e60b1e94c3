import { describe, expect, test } from 'vitest';
import { DEMO_RUNS } from './demo-runs.ts';
import { ATTEMPTS, scoresTable, surfaceTable } from './demo-tables.ts';
import { simulate } from './simulate.ts';

const START = Date.UTC(2026, 2, 10, 15, 30);
const { rated, fast } = DEMO_RUNS;
const truth = { rated: simulate(rated.options).truth, fast: simulate(fast.options).truth };

/** Cells without the one quoted column at the front. */
function cells(table: string): string[][] {
  const lines = table.trimEnd().split('\n').slice(1);
  return lines.map((line) => line.replace(/^"([^"]*)"/, (_, words: string) => words.replaceAll(',', ' /')).split(','));
}

describe('simulator/demo-tables', () => {
  test('five repeats of each test, one after the other, none before the last one ended', () => {
    const rows = cells(scoresTable(rated, truth.rated, START));
    expect(rows.map((row) => row[1])).toEqual(Array.from({ length: 20 }, (_, k) => String((k % 5) + 1)));
    const times = rows.flatMap((row) => [row[5]!, row[6]!]);
    expect(times).toEqual([...times].sort());
    expect(times[0]).toBe('2026-03-10T15:30:00Z');
  });

  test('what is better with more is higher at the faster setting, and a time is shorter', () => {
    const mean = (table: string, test: string) => {
      const values = cells(table)
        .filter((row) => row[0]!.startsWith(test))
        .map((row) => Number(row[2]));
      return values.reduce((a, b) => a + b) / values.length;
    };
    const [slow, quick] = [scoresTable(rated, truth.rated, START), scoresTable(fast, truth.fast, START)];
    expect(mean(quick, 'Grid')).toBeGreaterThan(mean(slow, 'Grid') * 1.1);
    expect(mean(quick, 'Ledger')).toBeLessThan(mean(slow, 'Ledger') * 0.9);
  });

  test('the same run gives the same tables', () => {
    expect(scoresTable(rated, truth.rated, START)).toBe(scoresTable(rated, truth.rated, START));
    expect(surfaceTable(rated, truth.rated)).toBe(surfaceTable(rated, truth.rated));
  });

  test('surfaces lie between room and board, the lid above the underside', () => {
    const readings = surfaceTable(rated, truth.rated)
      .trimEnd()
      .split('\n')
      .slice(1)
      .map((line) => Number(line.split(',')[4]));
    const { room, board } = truth.rated.load.end;
    expect(readings.every((reading) => reading > room && reading < board)).toBe(true);
    expect(readings[0]).toBeGreaterThan(readings[3]!);
  });

  test('outcomes of attempts are words of the trade, one a setting', () => {
    const known = ['no boot', 'hung at boot', 'hung under load', 'wrong results', 'restarted', 'throttled', 'passed'];
    const lines = ATTEMPTS.trimEnd()
      .split('\n')
      .slice(1)
      .map((line) => line.split(','));
    expect(lines.every((line) => known.includes(line[2]!))).toBe(true);
    expect(new Set(lines.map((line) => line.slice(0, 2).join())).size).toBe(lines.length);
  });
});
