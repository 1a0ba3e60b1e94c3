/** Looks over the site in dist/ before it goes out. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Changed, changedSince, digestsOf, type SiteDigests } from '../../compute/outgoing/changed.ts';
import { leaksOf } from '../../compute/outgoing/leaks.ts';
import { brokenLinks } from '../../compute/outgoing/links.ts';
import { type SiteFile, siteFiles } from '../../compute/outgoing/site-files.ts';
import { largeOnes, megabytes, pageSizes } from '../../compute/outgoing/sizes.ts';
import { readProject } from '../../compute/project/read-project.ts';
import { siteFacts } from '../../compute/project/site-facts.ts';
import { openStore, writeWhole } from '../../compute/store/store.ts';
import { hasErrors, report } from '../../print/report.ts';
import { compareProblems, type Problem } from '../../problem.ts';
import { type Ask, hostFaults } from './at-host.ts';

export interface SiteCheck {
  readonly root: string;
  /** Names of this machine and of who uses it. */
  readonly names: readonly string[];
  /** A folder with an earlier site. */
  readonly since?: string;
  /** Where the site is on a host, with a slash at its end. */
  readonly at?: string;
  readonly ask?: Ask;
}

interface Output {
  out(text: string): void;
  err(text: string): void;
}

/** Names of changed files that are listed in full. */
const LISTED = 12;
const HEAVIEST = 3;

/** Prints what is wrong and what changed. The exit code: 1 where there is an error. */
export async function checkSite({ root, names, since, at, ask }: SiteCheck, { out, err }: Output): Promise<0 | 1> {
  const folder = join(root, 'dist');
  if (!existsSync(join(folder, 'index.html'))) {
    err('There is no site in dist/ yet: `npm run build` makes it.\n');
    return 1;
  }
  const files = siteFiles(folder);
  const { facts } = await siteFacts(root, openStore(root), readProject(root).config);
  const harmless = [...facts.harmless, facts.contact];
  const problems = [
    ...brokenLinks(files, facts),
    ...leaksOf(files, { names, harmless }),
    ...largeOnes(files, facts.base),
    ...(at === undefined ? [] : await hostFaults(files, at, ask)),
  ].sort(compareProblems);
  err(report(root, problems));
  out(summary(files, facts.base, problems));
  const now = digestsOf(files);
  const remembered = join(root, '.cache', 'site-checked.json');
  const before = earlier(since, remembered);
  out(
    before === undefined
      ? 'There is no earlier site to compare with: --since names a folder that has one.\n'
      : changes(changedSince(before, now), since),
  );
  if (hasErrors(problems)) return 1;
  writeWhole(remembered, `${JSON.stringify(now)}\n`);
  return 0;
}

function earlier(since: string | undefined, remembered: string): SiteDigests | undefined {
  if (since !== undefined) return digestsOf(siteFiles(since));
  if (!existsSync(remembered)) return undefined;
  try {
    return JSON.parse(readFileSync(remembered, 'utf8')) as SiteDigests;
  } catch {
    // Cut off, as by a full disk: the next check writes it anew.
    return undefined;
  }
}

function summary(files: readonly SiteFile[], base: string, problems: readonly Problem[]): string {
  const pages = pageSizes(files, base);
  const whole = files.reduce((sum, { bytes }) => sum + bytes.length, 0);
  const heaviest = pages.slice(0, HEAVIEST).map(({ path, bytes }) => `${path} ${megabytes(bytes)} MB`);
  const clean = problems.length === 0 ? 'No link is broken, and nothing looks private.\n' : '';
  return `${clean}${pages.length} pages and ${files.length - pages.length} other files, ${megabytes(whole)} MB. The heaviest pages, with all that they load: ${heaviest.join(', ')}.\n`;
}

function changes({ added, changed, gone }: Changed, since: string | undefined): string {
  const than = since === undefined ? 'the last site that this check let through' : since;
  if (added.length + changed.length + gone.length === 0) return `Nothing changed since ${than}.\n`;
  const parts = [
    ['new', added],
    ['changed', changed],
    ['gone', gone],
  ] as const;
  const lines = parts.filter(([, paths]) => paths.length > 0).map(([what, paths]) => `  ${what}: ${list(paths)}\n`);
  return `Since ${than}:\n${lines.join('')}`;
}

function list(paths: readonly string[]): string {
  const more = paths.length - LISTED;
  return more > 0 ? `${paths.slice(0, LISTED).join(', ')} and ${more} more` : paths.join(', ');
}
