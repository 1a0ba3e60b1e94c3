/** `npm run retest -- OLD new.csv`: a run that follows another takes its place in the notes and comparisons that say so. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { retestRun } from './retest/retest-run.ts';

process.exitCode = retestRun(process.cwd(), process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
