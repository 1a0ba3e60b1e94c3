/** What is kept from one command to the next is never older than the code that makes it. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyProject, type TestProject } from './project.ts';

let project: TestProject;

beforeAll(() => {
  project = copyProject('cache');
});
afterAll(() => project.remove());

const warnings = (err: string) => [...err.matchAll(/: warning: .*\[missed-throttling\]$/gm)].map(([line]) => line);

describe('site: the cache', () => {
  it('tells with a warm cache what it tells with a cold one after the code of a warning has changed', () => {
    expect(warnings(project.run('check').err)).toEqual([]);
    // The demonstration has no sticky flag: the changed code warns of its first channel instead.
    project.edit(
      'src/compute/steps/runs/flag-warnings.ts',
      "if (!channel || typeof missed !== 'number') return [];",
      "if (!channel || typeof missed !== 'number') return [warning('missed-throttling', declaration.channels[0]!.place, 'changed')];",
    );
    const warm = project.run('check');
    rmSync(join(project.root, '.cache'), { recursive: true });
    const cold = project.run('check');
    expect(warnings(cold.err).length).toBeGreaterThan(0);
    expect(warm).toEqual(cold);
  });
});
