import { describe, expect, test } from 'vitest';
import { budgetOf } from '../../src/figures/budget.ts';
import { runFiguresJson } from '../../src/figures/figures-json.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';

/**
 * JCGM 100:2008, H.1, Table H.1: an end gauge block, contributions in nm as printed there; the combined uncertainty is 32 nm,
 * of which u² = 1002 nm².
 */
const END_GAUGE: Quantity = {
  value: 50.000838e-3,
  unit: 'm',
  parts: [
    {
      source: { id: 'alpha', title: 'difference in expansion coefficient', dof: 50, distribution: 'rectangular' as const },
      share: 2.9,
    },
    { source: { id: 'd', title: 'measured difference between end gauges', dof: 25.6 }, share: 9.7 },
    { source: { id: 'ls', title: 'calibration of standard end gauge', dof: 18 }, share: 25 },
    { source: { id: 'theta', title: 'difference in temperatures', dof: null }, share: -16.6 },
  ],
};

describe('figures/budget', () => {
  test('the end gauge of JCGM 100:2008, H.1: contributions stand as printed there, and their shares add to 1', () => {
    const rows = budgetOf(END_GAUGE);
    expect(rows.map(({ source }) => source)).toEqual(['ls', 'theta', 'd', 'alpha']);
    expect(rows.map(({ contribution }) => contribution)).toEqual([25, -16.6, 9.7, 2.9]);
    expect(rows.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(rows[0]!.share).toBeCloseTo(625 / 1002, 2);
    expect(Math.sqrt(rows.reduce((sum, { contribution }) => sum + contribution ** 2, 0))).toBeCloseTo(31.7, 1);
  });

  test('says how each source is distributed', () => {
    expect(budgetOf(END_GAUGE).map(({ distribution }) => distribution)).toEqual([
      "Student's t",
      'normal',
      "Student's t",
      'rectangular',
    ]);
  });

  test('an exact value and one of unknown uncertainty have none', () => {
    expect(budgetOf({ ...END_GAUGE, parts: [] })).toEqual([]);
    expect(budgetOf({ ...END_GAUGE, parts: null })).toEqual([]);
  });

  test('a run publishes the shares by source beside the parts', () => {
    const from = { columns: [], rows: null };
    const derived = {
      figures: new Map([['energy', { name: 'energy' as const, quantity: END_GAUGE, from }]]),
      phases: [],
      inferences: [],
    };
    const log = { file: '', sha256: '', rows: 0, span_s: 0 };
    const published = runFiguresJson({ run: 'r', device: 'd', specimen: 's', log, derived }) as {
      budgets: Record<string, Record<string, number>>;
      figures: Record<string, { parts: Record<string, number> }>;
    };
    const budget = published.budgets.energy!;
    const { parts } = published.figures.energy!;
    expect(Object.keys(budget)).toEqual(Object.keys(parts));
    expect(budget.theta).toBeCloseTo(16.6 ** 2 / budgetOf(END_GAUGE).reduce((sum, row) => sum + row.contribution ** 2, 0), 12);
  });
});
