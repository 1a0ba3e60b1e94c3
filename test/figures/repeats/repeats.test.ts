import { describe, expect, test } from 'vitest';
import type { Figure } from '../../../src/figures/figure.ts';
import type { RepeatedRun } from '../../../src/figures/repeats/groups.ts';
import { repeatFigures } from '../../../src/figures/repeats/repeats.ts';
import { degreesOfFreedom, standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { chiSquareQuantile } from '../../../src/statistics/chi-square-quantile.ts';
import { expectNear } from '../../statistics/near.ts';
import { presentAt } from '../build.ts';
import { absentAt, figure } from '../comparison/runs.ts';

function run(id: string, specimen: string, rise: number | null, more: Partial<RepeatedRun> & { at?: string } = {}): RepeatedRun {
  const { at, ...rest } = more;
  const quantity = { value: rise ?? 0, unit: 'K', parts: [] };
  const figures = new Map<string, Figure>(
    rise === null ? [] : [['temperature_rise', figure('temperature_rise', quantity, at ? { at } : {})]],
  );
  return { run: id, specimen, date: '2026-03-10', likeness: 'clock: 2 GHz', figures, ...rest };
}

describe('repeatability', () => {
  // JCGM 100:2008, 4.4.3 and Table 1 (from memory): s = 1.489 °C of twenty readings; E.4.3: u(s) = s/√(2·19).
  test('twenty runs of one specimen', () => {
    const gum = [
      96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2, 101.57,
      101.84, 102.36, 102.72,
    ];
    const runs = gum.map((value, k) => run(`r${String(k).padStart(2, '0')}`, 'no-1', value));
    const found = presentAt(repeatFigures('larch', runs), 'repeatability.r00.temperature_rise');
    expect(found.quantity.value.toFixed(3)).toBe('1.489');
    expectNear(standardUncertainty(found.quantity)!, found.quantity.value / Math.sqrt(38), 1e-12);
    expectNear(degreesOfFreedom(found.quantity)!, 19, 1e-12);
    // χ² with 19 degrees of freedom, NIST/SEMATECH e-Handbook 1.3.6.7.4 (from memory): 8.907 and 32.852.
    expectNear(found.interval![0], found.quantity.value * Math.sqrt(19 / 32.852), 1e-4);
    expectNear(found.interval![1], found.quantity.value * Math.sqrt(19 / 8.907), 1e-4);
    expect(found.of).toMatchObject({ group: 'r00', runs: 20, specimens: 1, n: 20, figure: 'temperature_rise' });
    expect(found.quantity.parts![0]!.source.id).toBe('device:larch/repeatability.r00.temperature_rise/sampling');
  });

  test('pooled over specimens, each about its own mean', () => {
    const runs = [run('a', 'no-1', 30), run('b', 'no-1', 32), run('c', 'no-2', 50), run('d', 'no-2', 50)];
    const found = presentAt(repeatFigures('larch', runs), 'repeatability.a.temperature_rise');
    expectNear(found.quantity.value, 1, 1e-12);
    expect(found.quantity.parts![0]!.source.dof).toBe(2);
  });

  test('absent where no specimen was run twice', () => {
    expect(absentAt(repeatFigures('larch', [run('a', 'no-1', 30), run('b', 'no-2', 31)]), 'repeatability.a')).toMatchObject({
      absent: 'too-short',
      why: 'No specimen was run twice at this setting and under these conditions, so that nothing is known of how runs repeat.',
    });
  });

  test('equal values lie within the step; different places are not put together; a figure that one run lacks', () => {
    const key = 'repeatability.a.temperature_rise';
    expect(absentAt(repeatFigures('larch', [run('a', 'no-1', 30), run('b', 'no-1', 30)]), key)).toMatchObject({
      absent: 'out-of-range',
    });
    const apart = [run('a', 'no-1', 30, { at: 'wall' }), run('b', 'no-1', 31, { at: 'rail' })];
    expect(absentAt(repeatFigures('larch', apart), key)).toMatchObject({ absent: 'different-places' });
    expect(absentAt(repeatFigures('larch', [run('a', 'no-1', 30), run('b', 'no-1', null)]), key)).toMatchObject({
      absent: 'operand-absent',
      why: 'Fewer than two of the runs have temperature_rise.',
    });
  });
});

describe('specimen_spread', () => {
  test('of two, their difference over √2, and an interval that says how little two are', () => {
    const runs = [run('a', 'no-1', 31), run('c', 'no-2', 34)];
    const found = presentAt(repeatFigures('larch', runs), 'specimen_spread.a.temperature_rise');
    expectNear(found.quantity.value, 3 / Math.SQRT2, 1e-12);
    expect(found.of).toMatchObject({ n: 2, runs: 2, specimens: 2 });
    expect(found.of).not.toHaveProperty('repeats_taken_off');
    expectNear(found.interval![1] / found.quantity.value, 1 / Math.sqrt(chiSquareQuantile(0.025, 1)), 1e-12);
    expect(found.interval![1] / found.quantity.value).toBeGreaterThan(30);
  });

  // By hand: means 31 and 34, s² = 4.5; within no-1 s² = 2 with one degree of freedom, of which (1/2 + 1)/2 is in the means: 4.5 − 1.5 = 3.
  test('what runs of one specimen repeat is taken off; both ends of the interval are wider for it', () => {
    const runs = [run('a', 'no-1', 30), run('b', 'no-1', 32), run('c', 'no-2', 34)];
    const found = presentAt(repeatFigures('larch', runs), 'specimen_spread.a.temperature_rise');
    expectNear(found.quantity.value, Math.sqrt(3), 1e-12);
    expect(found.of).toMatchObject({ n: 2, runs: 3, specimens: 2, repeats_taken_off: true });
    const [above, below] = [1 / chiSquareQuantile(0.025, 1) - 1, 1 - 1 / chiSquareQuantile(0.975, 1)];
    expectNear(found.interval![1], Math.sqrt(3 + Math.hypot(4.5 * above, 1.5 * below)), 1e-9);
    expect(found.interval![0]).toBe(0);
  });

  test('where runs of one specimen lie as far apart as specimens do, the spread is below its upper end', () => {
    const runs = [run('a', 'no-1', 30), run('b', 'no-1', 34), run('c', 'no-2', 33)];
    const found = absentAt(repeatFigures('larch', runs), 'specimen_spread.a.temperature_rise');
    expect(found).toMatchObject({ absent: 'out-of-range', bound: { relation: '<', unit: 'K' } });
    expect(found.bound!.value).toBeGreaterThan(1);
  });

  test('one specimen is never typical', () => {
    expect(absentAt(repeatFigures('larch', [run('a', 'no-1', 30)]), 'specimen_spread.a')).toMatchObject({
      absent: 'too-short',
      why: 'One specimen was run at this setting and under these conditions (1 run): nothing is known of another.',
    });
  });
});

describe('groups', () => {
  test('runs that differ in anything but time are apart; a group is named by its earliest run', () => {
    const runs = [
      run('late', 'no-1', 31, { date: '2026-04-01' }),
      run('early', 'no-2', 30, { date: '2026-03-01' }),
      run('other', 'no-1', 40, { likeness: 'clock: 2.4 GHz' }),
    ];
    expect([...repeatFigures('larch', runs).keys()]).toEqual([
      'repeatability.early',
      'specimen_spread.early.temperature_rise',
      'repeatability.other',
      'specimen_spread.other',
    ]);
  });
});
