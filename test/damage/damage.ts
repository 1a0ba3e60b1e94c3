/**
 * `npm run damage -- [FLIPS [KILLS [SEED]]]`: builds the small publication of the tests, then flips bytes of its cache and its site, and kills
 * builds. Exit code 1 where damage was published, or a site was missing or torn.
 */
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { commandLine } from '../../src/commands/command-line.ts';
import { cloneIn, tree } from '../site/project.ts';
import { makeSmall } from '../site/small-project.ts';
import { seededRandom } from '../statistics/seeded-random.ts';
import { surviveFlips } from './flips.ts';
import { bothSites, surviveKills } from './kills.ts';

commandLine({
  name: 'damage',
  does: 'Builds a small publication, flips bytes of its cache and its site, kills builds, and looks at what is published after each.',
  takes: [
    { name: 'FLIPS', is: 'how many bytes to flip, 200 if left out', optional: true },
    { name: 'KILLS', is: 'how many builds to kill, 300 if left out', optional: true },
    { name: 'SEED', is: 'where chance begins, 1 if left out', optional: true },
  ],
  exits: { 0: 'dist/ was always one whole site', 1: 'damage was published, or dist/ was missing or torn' },
  example: 'npm run damage -- 20 30',
});

const [flips = 200, kills = 300, seed = 1] = process.argv.slice(2).map(Number);
const project = cloneIn(tmpdir(), 'damage');
try {
  makeSmall(project.root);
  const random = seededRandom(seed);
  const sites = bothSites(project);
  const ofFlips = surviveFlips(project, tree(join(project.root, 'dist')), flips, random);
  console.log(`${flips} bytes flipped: ${ofFlips.length} faults`);
  const { faults: ofKills, killed } = await surviveKills(project, sites, kills, random);
  console.log(`${killed} of ${kills} builds killed before their end: ${ofKills.length} faults`);
  for (const fault of [...ofFlips, ...ofKills]) console.error(fault);
  process.exitCode = ofFlips.length + ofKills.length === 0 ? 0 : 1;
} finally {
  project.remove();
}
