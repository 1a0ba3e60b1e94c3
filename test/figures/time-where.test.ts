import { expect, test } from 'vitest';
import { readingsOf } from '../../src/figures/readings.ts';
import { timeWhere } from '../../src/figures/time-where.ts';
import { apart, every, logOf, noise } from './build.ts';

function uncertainty(values: (row: number) => number, step: number, rows: number): number {
  const log = logOf(every(step, step * (rows - 1)), { core: { quantity: 'clock', values: (_, row) => values(row) } });
  const readings = readingsOf(log, log.channels[0]!.values, { from: 0, to: rows });
  return timeWhere(readings, (value) => value > 0, step, { from: 0, to: step * (rows - 1) }).u;
}

// A state that is new at each glance: the time is a binomial count of steps, with a standard deviation of step·√(n·p·(1 − p)).
test('figures/time-where: a state that changes faster than the log is known as glances tell it', () => {
  const random = noise(3);
  const u = uncertainty(() => (random() > -1 / 3 ? 1 : -1), 2, 1800);
  expect(apart(u, 2 * Math.sqrt((1800 * 5) / 36))).toBeLessThan(0.1);
});

test('figures/time-where: one fall is known by its two edges, to a step/√12 each', () => {
  expect(
    apart(
      uncertainty((row) => (row >= 100 && row < 400 ? 1 : -1), 2, 1000),
      2 * Math.sqrt(2 / 12),
    ),
  ).toBeLessThan(1e-12);
});
