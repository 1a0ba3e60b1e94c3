/** Runs of one setting of a comparison are repeats: what they share is looked at once all runs are read. */
import type { StatedComparison } from '../files/comparisons.ts';
import type { Run } from '../register.ts';
import { BROUGHT } from '../values/condition-kinds.ts';
import type { Reference } from '../values/stated-value.ts';
import type { Report } from '../yaml/report.ts';
import { likenessOf } from './likeness.ts';

/** Reports runs of one setting that are not of one, and repeats that repeat nothing. `runOf` gives nothing for a run with errors. */
export function checkSettings(
  { settings, repeats }: StatedComparison,
  runOf: (id: string) => Run | undefined,
  report: Report,
): void {
  for (const { alias, runs } of settings) {
    const [first, ...others] = runs.flatMap((run) => found(run, runOf));
    for (const other of others) tellUnlike(alias, first!, other, report);
  }
  const borrowed = repeats.flatMap((run) => found(run, runOf));
  if (borrowed.length < repeats.length) return;
  for (const { run, place } of borrowed) {
    const alike = borrowed.filter((other) => repeatKey(other.run) === repeatKey(run));
    if (alike.length > 1) continue;
    report.error('no-repeat', place, `the run \`${run.id}\` is like no other under \`repeats\``, {
      expected: 'two runs or more of one specimen, setting and conditions, which differ in their day and ambient alone',
    });
  }
}

/** Runs with the same key are repeats of each other. */
export function repeatKey(run: Run): string {
  return [run.device, run.specimen, likenessOf(run, BROUGHT)].join('\n');
}

interface Found {
  readonly run: Run;
  readonly place: Reference['place'];
}

function found({ value, place }: Reference, runOf: (id: string) => Run | undefined): Found[] {
  const run = runOf(value);
  return run ? [{ run, place }] : [];
}

function tellUnlike(alias: string, first: Found, other: Found, report: Report): void {
  const what = unlike(first.run, other.run);
  if (what === null) return;
  report.error('unlike-runs', other.place, `\`${other.run.id}\` is of another ${what} than \`${first.run.id}\``, {
    expected: `runs of one device, specimen and setting under \`${alias}\``,
    remedy: 'give it an alias of its own',
  });
}

function unlike(first: Run, other: Run): string | null {
  if (first.device !== other.device) return 'device';
  if (first.specimen !== other.specimen) return 'specimen';
  const setting = (run: Run) => likenessOf({ setting: run.setting, conditions: [] }, []);
  return setting(first) === setting(other) ? null : 'setting';
}
