import { expect, test } from 'vitest';
import { loadedAt } from '../../../src/figures/clock/setting.ts';
import type { Soak } from '../../../src/figures/soak.ts';
import { every, logOf } from '../build.ts';

const BUSY = [0, 0.499, 0.5, 0.501, 1];

test.each([
  ['%', 100],
  ['1', 1],
])('figures/clock/setting: half of the utilisation counts as loaded, in %s', (unit, whole) => {
  const log = logOf(every(1, BUSY.length - 1), {
    core: { quantity: 'clock', values: () => 2e9 },
    busy: { quantity: 'utilisation', unit, values: (t) => whole * BUSY[t]! },
  });
  const loaded = loadedAt({ log } as Soak, log.channels[0]!);
  expect(BUSY.map((_, row) => loaded(row))).toEqual([false, false, true, true, true]);
});
