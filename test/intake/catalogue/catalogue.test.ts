// Logs as they occur: each file of this folder has its expectation beside it, computed from the same truth by make.py, without our code.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Inspection, inspect } from '../../../src/intake/inspect.ts';
import type { Log, QuantityKind } from '../../../src/intake/log.ts';
import { type ReadLog, read } from '../../../src/intake/read.ts';
import { ENTRIES } from './entries.ts';
import { declarationOf, type Typed, typedLines } from './typed.ts';

interface Statistics {
  readonly quantity: QuantityKind;
  readonly unit: string;
  readonly count: number;
  readonly missing: number;
  readonly first: number;
  readonly last: number;
  readonly min: number;
  readonly max: number;
  readonly mean: number;
}

interface Expected {
  readonly shows: string;
  readonly refused?: { readonly rule: string; readonly found: string; readonly write: string };
  readonly typed: Typed;
  readonly time: {
    readonly column: string;
    readonly format: string;
    readonly step: number | null;
    readonly span: number | null;
    readonly start: number | null;
    readonly date?: string;
  };
  readonly rows: number;
  readonly columns: Readonly<Record<string, Statistics>>;
  readonly setAside: Readonly<Record<string, string>>;
  readonly told: readonly string[];
  readonly leftOut: readonly string[];
  readonly says: readonly string[];
}

const names = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith('.csv'))
  .map((name) => name.slice(0, -4));
const bytesOf = (name: string) => new Uint8Array(readFileSync(join(import.meta.dirname, `${name}.csv`)));
const expectedOf = (name: string): Expected => JSON.parse(readFileSync(join(import.meta.dirname, `${name}.json`), 'utf8'));

/** Statistics of the readings, one by one in plain loops. */
function statisticsOf(log: Log, column: string): Partial<Statistics> {
  const channel = log.channels.find((one) => one.column === column)!;
  const known = channel.values.filter((value) => !Number.isNaN(value));
  return {
    quantity: channel.quantity,
    unit: channel.unit,
    count: known.length,
    missing: channel.missing,
    first: known[0]!,
    last: known.at(-1)!,
    min: Math.min(...known),
    max: Math.max(...known),
    mean: known.reduce((sum, value) => sum + value, 0) / known.length,
  };
}

/** Numbers may differ by the rounding of a few doubles. */
function near(actual: unknown, expected: unknown): boolean {
  if (typeof actual !== 'number' || typeof expected !== 'number') return Object.is(actual, expected);
  return Math.abs(actual - expected) <= 1e-12 * Math.max(1, Math.abs(expected));
}

function expectRefused({ problems, log }: ReadLog, { rule, found, write }: NonNullable<Expected['refused']>): void {
  expect(log).toBeNull();
  const [problem] = problems.filter(({ severity }) => severity === 'error');
  expect(problem?.rule).toBe(rule);
  expect(problem!.found).toContain(found);
  expect(`${problem!.expected ?? ''} ${problem!.remedy}`).toContain(write);
}

function expectTime(log: Log, inspection: Inspection, { time }: Expected): void {
  const { column, format, step, seconds, start } = log.time;
  expect({ column, format, start }).toEqual({ column: time.column, format: time.format, start: time.start });
  expect(step === null ? step : Number(step.toPrecision(12))).toBe(time.step);
  expect(Math.round((seconds.at(-1) ?? Number.NaN) * 1e9) / 1e9).toBe(time.span ?? Number.NaN);
  if (time.date !== undefined) expect(inspection.time?.date).toBe(time.date);
}

function expectRead(result: ReadLog, inspection: Inspection, expected: Expected): void {
  const errors = result.problems.filter(({ severity }) => severity === 'error');
  expect(errors.map(({ found }) => found)).toEqual([]);
  const log = result.log!;
  expect(log.rows).toBe(expected.rows);
  expectTime(log, inspection, expected);
  expect(log.channels.map(({ column }) => column).sort()).toEqual(Object.keys(expected.columns).sort());
  for (const [column, wanted] of Object.entries(expected.columns)) {
    const actual = statisticsOf(log, column);
    const unlike = Object.entries(wanted).filter(([key, value]) => !near(actual[key as keyof Statistics], value));
    expect(unlike.map(([key, value]) => `${column} ${key}: ${actual[key as keyof Statistics]} instead of ${value}`)).toEqual([]);
  }
  const aside = log.setAside.filter(({ line, reason }) => !reason.includes(expected.setAside[line] ?? '\0'));
  expect(aside).toEqual([]);
  expect(log.setAside.length).toBe(Object.keys(expected.setAside).length);
  expect([...new Set(result.problems.map(({ rule }) => rule))].sort()).toEqual([...new Set(expected.told)].sort());
  expect(inspection.leftOut.map(({ column }) => column).sort()).toEqual([...expected.leftOut].sort());
  expect(log.inferences.map(({ method }) => method)).toEqual(expect.arrayContaining([...expected.says]));
}

describe('intake: logs as they occur', () => {
  it.each(names.map((name) => [name, expectedOf(name).shows]))('%s: %s', (name) => {
    const expected = expectedOf(name);
    const file = `data/${name}.csv`;
    const inspection = inspect(bytesOf(name), file);
    const result = read(bytesOf(name), declarationOf(inspection, expected.refused ? {} : expected.typed), file);
    if (expected.refused) expectRefused(result, expected.refused);
    else expectRead(result, inspection, expected);
  });

  it('has an expectation for each file and a file for each expectation', () => {
    const expectations = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.json'));
    expect(expectations.map((name) => name.slice(0, -5)).sort()).toEqual([...names].sort());
  });

  it('shows every entry of the list, and each log shows one of them', () => {
    expect([...new Set(ENTRIES.flatMap(({ logs = [] }) => logs))].sort()).toEqual([...names].sort());
    const root = join(import.meta.dirname, '..', '..', '..');
    expect(ENTRIES.filter(({ elsewhere }) => elsewhere && !existsSync(join(root, elsewhere)))).toEqual([]);
  });

  it('never asks for more than three lines', () => {
    const asking = names.filter((name) => typedLines(expectedOf(name).typed ?? {}) > 3);
    expect(asking).toEqual([]);
  });
});
