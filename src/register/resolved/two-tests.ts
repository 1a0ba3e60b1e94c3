/** A note speaks of one test of a setting: not of a retest, and through a comparison of the run before it. */
import type { Register } from '../register.ts';
import { predecessorsOf } from '../sections/retests.ts';
import type { Report } from '../yaml/report.ts';
import { reachedRuns } from './reached-runs.ts';

/** Tells of notes that speak of a retest, and through a comparison of the run before it: two tests in one sentence, and no word of it. */
export function tellTwoTests({ notes, comparisons, runs }: Pick<Register, 'notes' | 'comparisons' | 'runs'>, report: Report): void {
  for (const note of notes.values()) {
    const own = new Set(note.runs.values());
    for (const [alias, id] of note.comparisons) {
      const comparison = comparisons.get(id);
      if (!comparison) continue;
      const compared = new Set(reachedRuns(comparison));
      const apart = [...own].flatMap((run) =>
        compared.has(run)
          ? []
          : predecessorsOf(run, runs)
              .filter((old) => compared.has(old) && !own.has(old))
              .map((old) => [run, old]),
      );
      const [first] = apart;
      if (!first) continue;
      const [run, old] = first as [string, string];
      report.warning(
        'two-tests',
        note.placeOf('comparisons'),
        `\`runs\` names \`${run}\`, and \`${alias}\` still compares \`${old}\`, the test before it`,
        {
          expected: 'one test of a setting in all numbers of a note',
          remedy: `name \`${run}\` in ${comparison.file}, with \`retests: follow\` there for the next one; or name \`${old}\` under \`runs\``,
        },
      );
    }
  }
}
