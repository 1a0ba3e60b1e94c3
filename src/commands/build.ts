/** `npm run build`: stage 1, its problems, and where there is no error the printed site in dist/. */
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { failureText } from '../print/failure.ts';
import { noArguments } from './no-arguments.ts';

noArguments('build');
const root = process.cwd();
keepCompiled(root);
const { build } = await import('./build-site.ts');

build(root).then(
  (code) => process.exit(code),
  (thrown) => {
    console.error(`${failureText(thrown)}\nNothing was published: dist/ is as it was before.`);
    process.exit(1);
  },
);
