/** Builds that are killed: `dist/` is always one whole site, and the next build gives the cold one. */
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { differences, type TestProject, tree } from '../site/project.ts';

const NOTE = 'content/notes/a-second-larch.md';
const WORDS = ['One specimen is an anecdote', 'One specimen is a fable'] as const;
/** A build is let through after so many kills. */
const BETWEEN = 5;

type Site = Map<string, Buffer>;

/** The site of either wording, the second one built last; and how long a build takes that has something to print, in ms. */
export function bothSites(project: TestProject): { readonly sites: readonly [Site, Site]; readonly length: number } {
  project.unprotect();
  const first = built(project);
  project.edit(NOTE, WORDS[0], WORDS[1]);
  const start = performance.now();
  const second = built(project);
  return { sites: [first, second], length: performance.now() - start };
}

/**
 * Kills `count` builds at moments spread over their length, each with the other wording than the last. Gives a sentence for each time
 * that `dist/` was missing or torn, or a build that came to its end gave another site than the cold one.
 */
export async function surviveKills(
  project: TestProject,
  { sites, length }: ReturnType<typeof bothSites>,
  count: number,
  random: () => number,
): Promise<{ readonly faults: string[]; readonly killed: number }> {
  const faults: string[] = [];
  let [killed, wording] = [0, 1];
  for (let kill = 1; kill <= count; kill++) {
    project.edit(NOTE, WORDS[wording]!, WORDS[1 - wording]!);
    wording = 1 - wording;
    const moment = random() * length * 1.1;
    const building = project.start('build');
    const ended = new Promise<NodeJS.Signals | null>((resolve) => building.once('exit', (_code, signal) => resolve(signal)));
    await Promise.race([setTimeout(moment), ended]);
    building.kill('SIGKILL');
    if ((await ended) === 'SIGKILL') killed++;
    const left = tree(join(project.root, 'dist'));
    if (sites.every((site) => differences(site, left).length > 0))
      faults.push(`Killed after ${Math.round(moment)} ms, dist/ is neither site: it has ${left.size} files.`);
    if (kill % BETWEEN > 0 && kill < count) continue;
    const wrong = differences(sites[wording]!, built(project));
    if (wrong.length > 0) faults.push(`After kill ${kill} a build gave another site than the cold one: ${wrong.join(', ')}.`);
  }
  return { faults, killed };
}

function built(project: TestProject): Site {
  const { code, err } = project.run('build');
  if (code !== 0) throw new Error(`a build ended with ${code}: ${err}`);
  return tree(join(project.root, 'dist'));
}
