import { existsSync, globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DEMONSTRATION } from '../demonstration-folder.ts';
import { demoFiles } from './demo-files.ts';
import { DEMO_RUNS } from './demo-runs.ts';
import { simulate } from './simulate.ts';

const data = join(DEMONSTRATION, 'data');
const files = demoFiles();

describe('simulator/demo', () => {
  test.each([...files])('data/%s is what the simulator writes today', (path, bytes) => {
    const target = join(data, path);
    expect(existsSync(target), `data/${path} is missing: run \`npm run demo\``).toBe(true);
    expect(readFileSync(target).equals(bytes), `data/${path} differs: run \`npm run demo\``).toBe(true);
  });

  test('nothing else stands among the files of the invented device', () => {
    const found = globSync('larch-2/**/*.csv', { cwd: data }).map((path) => path.replaceAll('\\', '/'));
    expect(found.sort()).toEqual([...files.keys()].sort());
  });

  test('no file is larger than 250 kB', () => {
    expect([...files].filter(([, bytes]) => bytes.length > 250_000).map(([path]) => path)).toEqual([]);
  });

  test('the story holds: only the fast setting is throttled, and in the end it is hardly faster than the quick one', () => {
    const truth = Object.fromEntries(Object.entries(DEMO_RUNS).map(([name, run]) => [name, simulate(run.options).truth]));
    const throttled = Object.entries(truth).filter(([, t]) => t.firstThrottle !== null);
    expect(throttled.map(([name]) => name)).toEqual(['fast']);
    expect(truth.fast!.load.end.clock).toBeGreaterThan(truth.quick!.load.end.clock * 0.98);
    expect(truth.fast!.load.end.clock).toBeLessThan(truth.quick!.load.end.clock * 1.03);
    const lead = truth.fast!.load.clock - truth.quick!.load.clock;
    const early = ((truth.fast!.firstThrottle ?? 0) / 3600) * 0.2e9;
    expect(early / lead).toBeGreaterThan(0.5);
    expect(truth.fast!.load.end.power).toBeGreaterThan(truth.quick!.load.end.power);
    expect(truth.quick!.load.peakDie).toBeGreaterThan(78);
  });
});
