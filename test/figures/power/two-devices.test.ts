// Two devices in one log: told apart by the column that names them, each with the energy of its own rows (trapezoidal rule, by hand below).
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { readLong } from '../../../src/intake/long-log.ts';
import { read } from '../../../src/intake/read.ts';
import { bytes, channel, declare, RUN } from '../../intake/declare.ts';
import { apart, contextOf, presentAt } from '../build.ts';

const ROWS = 600;
/** A ramp and a level, W: over 599 s the ramp from 2 to 7.99 W gives 599 · (2 + 7.99)/2 J, the level 599 · 30 J. */
const DEVICES = [
  { name: 'alder', watts: (k: number) => (200 + k) / 100, energy: (599 * (2 + 7.99)) / 2 },
  { name: 'birch', watts: () => 30, energy: 599 * 30 },
];

/** Rows of both an instant, named by `tell`; or each at its own instants, half a second apart. */
function log(column: string, tell: (device: number) => string, together: boolean): Uint8Array {
  const rows = Array.from({ length: ROWS }, (_, k) =>
    DEVICES.map(
      ({ watts }, device) => `${together ? k : (k + device / 2).toFixed(1)},${tell(device)},${watts(k).toFixed(2)}\n`,
    ).join(''),
  );
  return bytes(`t_s,${column},power_w\n${rows.join('')}`);
}

describe('two devices in one log', () => {
  test.each([
    ['an index', 'gpu_index', (device: number) => String(device), true],
    ['names at one instant', 'sensor', (device: number) => DEVICES[device]!.name, true],
    ['names in turn', 'device', (device: number) => DEVICES[device]!.name, false],
  ])('by %s: told with the remedy, and with it each has its own energy', (_, column, tell, together) => {
    const written = log(column, tell, together);
    const channels = [channel('input', 'power', 'power_w')];
    const undeclared = read(written, declare(channels), 'data/a.csv');
    expect(undeclared.log).toBeNull();
    expect(undeclared.problems[0]).toMatchObject({
      rule: 'long-form',
      found: `rows of several devices or channels stand in this log: \`${column}\` tells which a row is of`,
    });
    expect(undeclared.problems[0]!.remedy).toContain(`\`${column}: ${tell(0)}\``);
    for (const [device, { energy }] of DEVICES.entries()) {
      const declaration = declare(channels, { rows: { column, value: tell(device), place: RUN } });
      for (const result of [
        read(written, declaration, 'data/a.csv'),
        readLong(written, declaration, 'data/a.csv', { part: 4000 }),
      ]) {
        expect(result.problems).toEqual([]);
        const { quantity } = presentAt(derive(result.log!, contextOf()).figures, 'energy');
        expect(apart(quantity.value, energy)).toBeLessThan(1e-12);
      }
    }
  });
});
