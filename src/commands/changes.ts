/** `npm run changes`: what stands against the published state, the last good check, or an earlier revision. Exit code 1 where that cannot be told. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'changes',
  does: 'Shows which sentences and charts would print differently now.',
  options: {
    '--since': {
      value: 'WHEN',
      does: 'compare with the last check without errors (`check`) or a revision of git, not with what was published',
    },
    '--json': { does: 'print the same as JSON' },
  },
  exits: { 0: 'the changes are printed, also where there are none', 1: 'they cannot be told' },
  example: 'npm run changes -- --since check',
});

const root = publicationFolder();
if ((await lock(root)) === undefined) {
  console.error('A build or check of this project is under way. Wait for it, or stop it, then try again.');
  process.exit(1);
}
keepCompiled(root);
const { changes } = await import('./changes/changes.ts');
const code = await changes(root, process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exit(code);
