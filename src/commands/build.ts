/** `npm run build`: stage 1, its problems, and where there is no error the printed site in dist/. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { compute } from '../compute/compute.ts';
import { prune } from '../compute/prune.ts';
import { print } from '../print/build.ts';
import { lock } from '../print/lock.ts';
import { hasErrors, report } from '../print/report.ts';
import { finishSwap } from '../print/swap.ts';

const root = process.cwd();

async function build(): Promise<number> {
  mkdirSync(join(root, '.cache'), { recursive: true });
  const held = await lock(root);
  if (held === undefined) {
    console.error('Another build of this project is under way. Wait for it, or stop it, then build again.');
    return 1;
  }
  finishSwap(root);
  const manifest = await compute(root, 'site');
  process.stderr.write(report(root, manifest.problems));
  if (hasErrors(manifest.problems)) {
    console.error('Nothing was published: dist/ is as it was before.');
    return 1;
  }
  const printed = await print(root, manifest);
  prune(root);
  console.log(
    `dist/ is up to date: printed ${printed} of ${manifest.pages.length} pages, ${manifest.files.length} files beside them. Look at it with \`npm run preview\`.`,
  );
  return 0;
}

build().then(
  (code) => process.exit(code),
  (thrown) => {
    const reason = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);
    console.error(`The build stopped: ${reason}\nNothing was published: dist/ is as it was before.`);
    process.exit(1);
  },
);
