import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { DEMONSTRATION } from '../demonstration-folder.ts';
import { DEMO_RUNS, type DemoRun } from './demo-runs.ts';
import { SPECIMENS } from './larch.ts';
import type { Schedule } from './options.ts';
import { simulate } from './simulate.ts';

/** The front matter of one of the demo's own files: plain YAML, read by the library alone. */
function frontMatter<Shape>(path: string): Shape {
  return parse(readFileSync(join(DEMONSTRATION, path), 'utf8').split('---\n')[1] ?? '');
}

interface Stated {
  readonly specimen: string;
  readonly setting: { readonly clock: string; readonly voltage_offset: string };
  readonly conditions: { readonly ambient: string };
  readonly log: string | { readonly file: string };
  readonly phases?: Readonly<Record<string, string>>;
}

const setup = frontMatter<{ readonly phases: Readonly<Record<string, string>> }>('content/setups/open-bench.md');
const stated = globSync('content/runs/*.md', { cwd: DEMONSTRATION })
  .map((path): [string, Stated] => [path, frontMatter<Stated>(path)])
  .filter(([, run]) => fileOf(run).startsWith('larch-2/'));

function fileOf(run: Stated): string {
  return typeof run.log === 'string' ? run.log : run.log.file;
}

/** Phases as an author would state them for a schedule, in minutes. */
function phasesOf({ idle, load, coolDown }: Schedule): Readonly<Record<string, string>> {
  const [a, b, c] = [idle / 60, (idle + load) / 60, (idle + load + coolDown) / 60];
  if (coolDown === 0) return { idle: `0 .. ${a} min`, load: `${a} min ..` };
  return { idle: `0 .. ${a} min`, load: `${a} .. ${b} min`, 'cool-down': `${b} .. ${c} min` };
}

function simulatedFor(run: Stated): DemoRun {
  const found = Object.values(DEMO_RUNS).find(({ file }) => file === fileOf(run));
  if (!found) throw new Error(`no simulated run writes data/${fileOf(run)}`);
  return found;
}

describe('simulator/content', () => {
  test('every simulated run has its page', () => {
    const written = Object.values(DEMO_RUNS).map(({ file }) => file);
    expect(stated.map(([, run]) => fileOf(run)).sort()).toEqual(written.sort());
  });

  test.each(stated)('%s states what was simulated', (_, run) => {
    const { setting, specimen, schedule } = simulatedFor(run).options;
    expect(run.setting.clock).toBe(`${(setting.clock / 1e9).toFixed(1)} GHz`);
    expect(run.setting.voltage_offset).toBe(`${Math.round(setting.voltageOffset * 1000)} mV`);
    expect(SPECIMENS[run.specimen as keyof typeof SPECIMENS]).toBe(specimen);
    expect(run.phases ?? setup.phases).toEqual(phasesOf(schedule));
  });

  test.each(stated)('the limits of the ambient that %s states hold the room that was simulated', (_, run) => {
    const [middle, limit] = run.conditions.ambient.split(' ± ').map(Number.parseFloat);
    const { truth } = simulate(simulatedFor(run).options);
    expect(Math.abs(truth.load.room - (middle ?? Number.NaN))).toBeLessThan(limit ?? 0);
  });

  test('the limit of the device is that of its governor', () => {
    const device = frontMatter<{ readonly throttle_at: { readonly soc: string } }>('content/devices/larch-2.md');
    const limits = Object.values(SPECIMENS).map(({ governor }) => `${governor.limit} °C`);
    expect(new Set(limits)).toEqual(new Set([device.throttle_at.soc]));
  });

  test('whatever is of the invented device says that it is invented', () => {
    expect(frontMatter('content/devices/larch-2.md')).toMatchObject({ invented: 'yes' });
  });
});
