/** What `npm run build` does, in order. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { compute } from '../compute/compute.ts';
import { mending } from '../compute/project/mending.ts';
import { prune } from '../compute/project/prune.ts';
import { writeLastGood } from '../compute/published-state/last-good.ts';
import { print } from '../print/build.ts';
import { failureText } from '../print/failure.ts';
import { lock } from '../print/lock.ts';
import { hasErrors, report } from '../print/report.ts';
import { undoSwap } from '../print/swap.ts';
import { pictureProgress } from './picture-progress.ts';

/** Builds the site of a project folder. Returns the exit code. Throws where a page or the disk fails; nothing is published then. */
export async function build(root: string): Promise<number> {
  mkdirSync(join(root, '.cache'), { recursive: true });
  const held = await lock(root);
  if (held === undefined) {
    console.error('Another build or check of this project is under way. Wait for it, or stop it, then build again.');
    return 1;
  }
  undoSwap(root);
  let manifest = await compute(root, 'site', pictureProgress(process.stderr));
  process.stderr.write(report(root, manifest.problems));
  if (hasErrors(manifest.problems)) {
    console.error('Nothing was published: dist/ is as it was before.');
    return 1;
  }
  writeLastGood(root, manifest);
  let tried = false;
  const printed = await mending(root, async () => {
    // The second time what was damaged is made anew.
    if (tried) manifest = await compute(root, 'site');
    tried = true;
    return print(root, manifest);
  });
  await tidy(root);
  console.log(
    `dist/ is up to date: printed ${printed} of ${manifest.pages.length} pages, ${manifest.files.length} files beside them. Look at it with \`npm run preview\`.`,
  );
  return 0;
}

/** Prunes the cache, unless a dev session may be filling it. The site is published by now: a fault here is no failure of the build. */
async function tidy(root: string): Promise<void> {
  try {
    const noDev = await lock(root, 'dev');
    if (noDev === undefined) return;
    prune(root);
    noDev.close();
  } catch (thrown) {
    console.error(`The cache could not be tidied. ${failureText(thrown)}`);
  }
}
