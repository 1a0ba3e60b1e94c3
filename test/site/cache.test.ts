/** What is kept from one command to the next: never older than the code that makes it, never published when it is damaged, never half a site. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { flip, surviveFlips } from '../damage/flips.ts';
import { bothSites, surviveKills } from '../damage/kills.ts';
import { seededRandom } from '../statistics/seeded-random.ts';
import { copySmall, differences, type TestProject, tree } from './project.ts';

let project: TestProject;

beforeAll(() => {
  project = copySmall('cache');
});
afterAll(() => project.remove());

const warnings = (err: string) => [...err.matchAll(/: warning: .*\[missed-throttling\]$/gm)].map(([line]) => line);

describe('site: the cache', () => {
  it('tells with a warm cache what it tells with a cold one after the code of a warning has changed', () => {
    const project = copySmall('code');
    // The runs and one note are enough, and all of it is computed twice.
    for (const folder of ['scripts', 'comparisons', 'attempts', 'record-copies'])
      rmSync(join(project.root, 'content', folder), { recursive: true });
    rmSync(join(project.root, 'content/notes/a-clock-it-cannot-keep.md'));
    project.edit('content/notes/a-second-larch.md', '[the first note](../a-clock-it-cannot-keep/)', 'the first note');
    expect(warnings(project.run('check').err)).toEqual([]);
    // The demonstration has no sticky flag: the changed code warns of its first channel instead.
    project.edit(
      'src/compute/steps/runs/flag-warnings.ts',
      "if (!channel || typeof missed !== 'number') return [];",
      "if (!channel || typeof missed !== 'number') return [warning('missed-throttling', channels[0]!.place, 'changed')];",
    );
    const warm = project.run('check');
    rmSync(join(project.root, '.cache'), { recursive: true });
    const cold = project.run('check');
    expect(warnings(cold.err).length).toBeGreaterThan(0);
    expect(warm).toEqual(cold);
    project.remove();
  });

  it('survives flipped bytes and killed builds; `npm run damage` tries many more', async () => {
    const random = seededRandom(7);
    const sites = bothSites(project);
    expect(surviveFlips(project, tree(join(project.root, 'dist')), 20, random)).toEqual([]);
    expect((await surviveKills(project, sites, 3, random)).faults).toEqual([]);
  });

  it('makes anew what was damaged in size and time unseen, and publishes nothing of it', () => {
    const dist = tree(join(project.root, 'dist'));
    const [random, blobs] = [seededRandom(3), join(project.root, '.cache', 'blobs')];
    const names = [...tree(blobs)].filter(([, bytes]) => bytes.length > 0).map(([name]) => name);
    // Old enough for the list of undamaged files to be trusted.
    project.run('check');
    for (const name of names) flip(join(blobs, name), random);
    // Where dist/ is the site that would be printed, no blob is read.
    rmSync(join(project.root, '.cache', 'standing.json'));
    const { code, err } = project.run('build');
    expect({ code, err: err.replace(/^.*warning.*$/gm, '').includes('damaged') }).toEqual({ code: 0, err: false });
    expect(differences(dist, tree(join(project.root, 'dist')))).toEqual([]);
  });
});
