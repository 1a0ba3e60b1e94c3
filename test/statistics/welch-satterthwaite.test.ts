import { describe, expect, test } from 'vitest';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { welchSatterthwaite } from '../../src/statistics/welch-satterthwaite.ts';
import { expectNear } from './near.ts';

describe('statistics/welch-satterthwaite', () => {
  // JCGM 100:2008, G.4.1, example (printed values from memory: 1.03 %, 19.0, 2.2 %).
  test('GUM G.4.1: product of three quantities', () => {
    const parts = [
      { u: 0.25, dof: 9 },
      { u: 0.57, dof: 4 },
      { u: 0.82, dof: 14 },
    ];
    const u = Math.hypot(...parts.map((part) => part.u));
    const dof = welchSatterthwaite(parts);
    expectNear(u, 1.02947, 1e-5);
    expectNear(dof, 18.9987, 1e-5);
    expectNear(studentQuantile(0.975, Math.floor(dof + 0.5)) * u, 2.1547, 2e-4);
  });

  // JCGM 100:2008, H.1: end gauge; inputs as in the public repository MSLNZ/GTC, `examples/GUM_H1.py`. Lengths in nm.
  test('GUM H.1: end-gauge calibration, 16 degrees of freedom and 93 nm at 99 %', () => {
    const d = [
      { u: 5.8, dof: 24 },
      { u: 3.9, dof: 5 },
      { u: 6.7, dof: 8 },
    ];
    const dofOfD = welchSatterthwaite(d);
    expectNear(dofOfD, 25.447, 1e-4);
    const parts = [
      { u: 25, dof: 18 },
      { u: Math.hypot(5.8, 3.9, 6.7), dof: dofOfD },
      { u: 2.88679, dof: 50 },
      { u: 16.599, dof: 2 },
    ];
    const dof = welchSatterthwaite(parts);
    expectNear(dof, 16.752, 1e-4);
    expectNear(Math.hypot(...parts.map((part) => part.u)), 31.6639, 1e-5);
    expectNear(studentQuantile(0.995, Math.floor(dof)) * 32, 93.465, 1e-5);
  });

  test('stated limits alone have infinitely many; zeros do not count; huge and tiny numbers do no harm', () => {
    expect(welchSatterthwaite([{ u: 2, dof: Number.POSITIVE_INFINITY }])).toBe(Number.POSITIVE_INFINITY);
    expect(welchSatterthwaite([])).toBe(Number.POSITIVE_INFINITY);
    expect(
      welchSatterthwaite([
        { u: 0, dof: 1 },
        { u: -3, dof: 7 },
      ]),
    ).toBe(7);
    expectNear(
      welchSatterthwaite([
        { u: 1e-200, dof: 3 },
        { u: 1e-200, dof: 3 },
      ]),
      6,
      1e-14,
    );
  });

  test('arguments out of range are refused', () => {
    expect(() => welchSatterthwaite([{ u: 1, dof: 0 }])).toThrow('dof is 0');
    expect(() => welchSatterthwaite([{ u: Number.NaN, dof: 2 }])).toThrow('u is NaN');
  });
});
