/**
 * `npm run damage -- [FLIPS [KILLS [SEED]]]`: builds a copy of the demonstration, then flips bytes of its cache and its site, and kills
 * builds. Exit code 1 where damage was published, or a site was missing or torn.
 */
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cloneIn, tree } from '../site/project.ts';
import { seededRandom } from '../statistics/seeded-random.ts';
import { surviveFlips } from './flips.ts';
import { bothSites, surviveKills } from './kills.ts';

const [flips = 200, kills = 300, seed = 1] = process.argv.slice(2).map(Number);
const project = cloneIn(tmpdir(), 'damage');
try {
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
