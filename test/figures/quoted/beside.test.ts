import { describe, expect, test } from 'vitest';
import { besideQuoted } from '../../../src/figures/quoted/beside.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { part } from '../comparison/runs.ts';

const own: Quantity = { value: 71, unit: '°C', parts: [part('run:a/steady_temperature/sampling', 0.3)] };
const quoted = (value: number, u: number | null): Quantity => ({
  value,
  unit: '°C',
  parts: u === null ? null : [part('quoted:b/steady_temperature', u)],
});

describe('figures/quoted', () => {
  test('without a stated uncertainty there is no verdict, and it says why', () => {
    const { difference, verdict } = besideQuoted(own, quoted(74, null));
    expect(difference).toMatchObject({ value: -3, unit: 'K' });
    expect(verdict).toBe('no verdict: the source states no uncertainty');
  });

  test('with one the 95 % interval of the difference decides: u = √(0.3² + 0.4²) = 0.5 K (JCGM 100:2008, 5.1.2)', () => {
    expect(besideQuoted(own, quoted(72.1, 0.4)).verdict).toBe('told apart');
    expect(besideQuoted(own, quoted(71.9, 0.4)).verdict).toBe('not told apart');
  });

  test('an own figure that is repeatability only tells nothing of another device', () => {
    expect(besideQuoted({ ...own, repeatabilityOnly: true }, quoted(80, 0.4)).verdict).toBe(
      'no verdict: the own figure is repeatability only',
    );
  });
});
