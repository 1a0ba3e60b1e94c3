import { expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, noise, phase, presentAt } from '../build.ts';

/** Degrees of freedom that the scatter of so many readings has. */
function dofOf(rows: number): number | null {
  const random = noise(rows);
  const log = logOf(every(1, rows - 1), { soc: { quantity: 'temperature', values: () => 40 + random() } });
  const [part] = presentAt(derive(log, contextOf({ phases: [phase('idle', 0, rows)] })).figures, 'sensor_noise').quantity.parts!;
  return part!.source.dof;
}

// Of n independent readings the squares of second differences have 18 (n − 2)/35 degrees of freedom (from their variances, 6, and covariances, −4 and 1).
test('figures/thermal/noise: the scatter has the degrees of freedom of its second differences', () => {
  expect([37, 71, 72, 107].map(dofOf)).toEqual([18, 35, 36, 54]);
});
