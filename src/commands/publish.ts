/** `npm run publish -- NOTE --date 2026-04-02`: sets a note's status to published and stores what it printed. Exit code 1 where it may not go out. */
import { keepCompiled } from '../compute/compiled.ts';

const root = process.cwd();
keepCompiled(root);
const { publishNote } = await import('./publish/publish-note.ts');
process.exitCode = await publishNote(root, process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
});
