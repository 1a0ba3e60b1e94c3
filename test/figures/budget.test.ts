import { describe, expect, test } from 'vitest';
import { budgetOf } from '../../src/figures/budget.ts';
import { derive } from '../../src/figures/derive.ts';
import { runFiguresJson } from '../../src/figures/figures-json.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import { contextOf, every, instrumentOf, logOf, phase, presentAt } from './build.ts';

/**
 * JCGM 100:2008, H.1, Table H.1: an end gauge block, contributions in nm as printed there; the combined uncertainty is 32 nm,
 * of which u² = 1002 nm². The two that act through a product have the standard uncertainties of its second column, 0.58 × 10⁻⁶ per °C and
 * 0.029 °C; their sensitivities are there −l·θ, with l = 50.000623 mm and θ = −0.1 °C, and −l·α, with α = 11.5 × 10⁻⁶ per °C (from memory).
 */
const END_GAUGE: Quantity = {
  value: 50.000838e-3,
  unit: 'm',
  parts: [
    {
      source: {
        id: 'alpha',
        title: 'difference in expansion coefficient',
        dof: 50,
        distribution: 'rectangular' as const,
        standard: { u: 0.58e-6, unit: '1/K' },
      },
      share: 2.9,
    },
    { source: { id: 'd', title: 'measured difference between end gauges', dof: 25.6 }, share: 9.7 },
    { source: { id: 'ls', title: 'calibration of standard end gauge', dof: 18 }, share: 25 },
    { source: { id: 'theta', title: 'difference in temperatures', dof: null, standard: { u: 0.0289, unit: 'K' } }, share: -16.6 },
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

  test('sensitivities are those printed there; a source that is known by its contribution alone has 1', () => {
    const rows = new Map(budgetOf(END_GAUGE).map((row) => [row.source, row]));
    expect(rows.get('alpha')!.sensitivity / (50.000623e6 * 0.1)).toBeCloseTo(1, 2);
    expect(rows.get('theta')!.sensitivity / (-50.000623e6 * 11.5e-6)).toBeCloseTo(1, 2);
    expect(rows.get('theta')).toMatchObject({ u: 0.0289, unit: 'K' });
    expect(rows.get('ls')).toMatchObject({ u: 25, unit: 'm', sensitivity: 1 });
  });

  test('of a power by current and voltage each gain error acts with the power, each offset with the other factor', () => {
    const current = instrumentOf('meter', 'current', { ofReading: 0.01, absolute: 0.01 });
    const voltage = instrumentOf('meter', 'voltage', { ofReading: 0.002, absolute: 0.02 });
    const meter = { ...current, accuracy: { ...current.accuracy, ...voltage.accuracy } };
    const log = logOf(every(1, 600), {
      amps: { quantity: 'current', values: () => 2, instrument: 'meter', at: 'board input' },
      volts: { quantity: 'voltage', values: () => 5, instrument: 'meter', at: 'board input' },
    });
    const { figures } = derive(log, contextOf({ instruments: { meter }, phases: [phase('load', 0, 600)] }));
    const power = presentAt(figures, 'load_power');
    const rows = new Map(budgetOf(power.quantity).map((row) => [row.source, row]));
    expect(rows.get('instrument:meter/current/gain')).toMatchObject({ unit: '1' });
    expect(rows.get('instrument:meter/current/gain')!.sensitivity).toBeCloseTo(10, 9);
    expect(rows.get('instrument:meter/current/offset')).toMatchObject({ unit: 'A' });
    expect(rows.get('instrument:meter/current/offset')!.sensitivity).toBeCloseTo(5, 9);
    expect(rows.get('instrument:meter/voltage/offset')).toMatchObject({ unit: 'V' });
    expect(rows.get('instrument:meter/voltage/offset')!.sensitivity).toBeCloseTo(2, 9);
    for (const { u, sensitivity, contribution } of rows.values()) expect(u * sensitivity).toBeCloseTo(contribution, 12);
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
      budgets: Record<string, Record<string, { u: number; unit: string; sensitivity: number; share: number }>>;
      figures: Record<string, { parts: Record<string, number> }>;
    };
    const budget = published.budgets.energy!;
    const { parts } = published.figures.energy!;
    expect(Object.keys(budget)).toEqual(Object.keys(parts));
    expect(budget.theta!.sensitivity * budget.theta!.u).toBeCloseTo(parts.theta!, 12);
    expect(budget.theta!.share).toBeCloseTo(
      16.6 ** 2 / budgetOf(END_GAUGE).reduce((sum, row) => sum + row.contribution ** 2, 0),
      12,
    );
  });
});
