/** `npm run build`: stage 1, its problems, and where there is no error the printed site in dist/. */
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { failureText } from '../print/failure.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'build',
  does: 'Computes all figures, checks every file, and prints the site into dist/. Where anything is wrong, dist/ stays as it was.',
  exits: { 0: 'dist/ is the new site', 1: 'an error was found or the build failed; dist/ is as it was' },
  example: 'npm run build',
});

const root = publicationFolder();
keepCompiled(root);
const { build } = await import('./build-site.ts');

build(root).then(
  (code) => process.exit(code),
  (thrown) => {
    console.error(`${failureText(thrown)}\nNothing was published: dist/ is as it was before.`);
    process.exit(1);
  },
);
