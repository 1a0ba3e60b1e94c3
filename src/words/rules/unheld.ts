/** Numbers that stand in the prose, that data could hold and that nothing holds. */
import type { Root } from 'mdast';
import type { Problem } from '../../problem.ts';
import { placeWithin } from '../expression/text-problem.ts';
import { placeAt, type Writing } from '../page/writing.ts';
import { findUnheld } from './find-unheld.ts';
import { ownWords } from './own-words.ts';
import { shownValue } from './shown-value.ts';

/** Reports each of some texts of one file: as warnings, the first of which says what to do, or as errors where the note refuses them. Code and our directives are not prose. */
export function reportUnheld(
  texts: readonly { readonly writing: Writing; readonly tree: Root }[],
  severity: 'warning' | 'error',
): void {
  const all = texts.flatMap(({ writing, tree }) =>
    findUnheld(writing.source, tree, ownWords(writing.subjects), shownValue(writing.subjects)).map((unheld) => ({
      writing,
      ...unheld,
    })),
  );
  for (const [index, { writing, start, source }] of all.entries()) {
    const line = source.split(/\r\n|\n|\r/)[0] as string;
    writing.problems.push({
      severity,
      rule: 'unheld-number',
      place: placeWithin(placeAt(writing, start), { start: 0, end: line.length }),
      found: `nothing holds \`${source.replace(/\s+/g, ' ')}\``,
      ...(index === 0 || severity === 'error' ? adviceFor(writing.file) : {}),
    });
  }
}

function adviceFor(file: string): Pick<Problem, 'expected' | 'remedy'> {
  return {
    expected: 'a figure, setting, condition or rating that holds it',
    remedy: `\`npm run hold -- ${file}\` offers those that fit; \`:unheld[…]\` leaves it free`,
  };
}
