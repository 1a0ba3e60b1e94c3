/** Ids of tests: from their words, or the table's own. */
import { idFromWords, isId } from '../../intake/ids.ts';
import { error, type Place, type Problem } from '../../problem.ts';

/** The id of a test; null where neither its own id nor its words make one. */
export function testId(title: string, own: string | undefined): string | null {
  const id = own ? own : idFromWords(title);
  return isId(id) ? id : null;
}

interface Named {
  readonly id: string;
  readonly title: string;
  readonly line: number;
}

/** Reports two tests with one id: their addresses would mean two things. */
export function tellIds(tests: readonly Named[], placeOfTest: (line: number) => Place, problems: Problem[]): void {
  const seen = new Map<string, Named>();
  for (const test of tests) {
    const first = seen.get(test.id);
    if (!first) {
      seen.set(test.id, test);
      continue;
    }
    problems.push(
      error(
        'score-id',
        placeOfTest(test.line),
        `\`${test.title}\` has the id \`${test.id}\`, as \`${first.title}\` in line ${first.line} has`,
        {
          expected: 'an id of its own',
          remedy: 'add a column `id` that tells the two apart',
        },
      ),
    );
  }
}
