import { expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, noise, phase, presentAt } from '../build.ts';

/** Degrees of freedom that the scatter of so many readings has. */
function dofOf(rows: number): number | null {
  const flat = noise(rows);
  const log = logOf(every(1, rows - 1), { soc: { quantity: 'temperature', values: () => 40 + flat() } });
  const [part] = presentAt(derive(log, contextOf({ phases: [phase('idle', 0, rows)] })).figures, 'sensor_noise').quantity.parts!;
  return part!.source.dof;
}

// Of n independent readings the squares of second differences have 18 (n − 2)/35 degrees of freedom (from their variances, 6, and covariances, −4 and 1).
test('figures/thermal/noise: the scatter has the degrees of freedom of its second differences', () => {
  expect([37, 71, 72, 107].map(dofOf)).toEqual([18, 35, 36, 54]);
});

// A sensor that scatters by 0.3 K and is refreshed every k-th row, or whose rows stand in the log k times: the truth is 0.3 K, in whatever way it was logged.
test.each(['written twice', 'held for two rows', 'held for five rows'])('readings that were %s count once', (how) => {
  const held = how === 'held for five rows' ? 5 : 2;
  let inside = 0;
  for (let seed = 1; seed <= 20; seed++) {
    const chance = random(seed);
    const fresh = Array.from({ length: 300 }, () => 40 + Math.round(30 * chance.normal()) / 100);
    const rows = fresh.flatMap((value) => Array<number>(held).fill(value));
    const times = rows.map((_, row) => (how === 'written twice' ? Math.floor(row / held) : row));
    const log = logOf(times, { soc: { quantity: 'temperature', values: rows, step: 0.01 } });
    const { interval } = presentAt(derive(log, contextOf({ phases: [phase('idle', 0, 300 * held)] })).figures, 'sensor_noise');
    if (interval![0] <= 0.3 && 0.3 <= interval![1]) inside++;
  }
  expect(inside).toBeGreaterThanOrEqual(17);
});
