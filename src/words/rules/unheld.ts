/** Numbers with a unit that stand in the prose and that nothing holds. */
import type { Root } from 'mdast';
import { placeWithin } from '../text-problem.ts';
import { placeAt, type Writing } from '../writing.ts';
import { findUnheld } from './find-unheld.ts';

/** Reports each: as warnings, or as errors where the note refuses them. Code, our directives and front matter are not prose. */
export function reportUnheld(writing: Writing, tree: Root, severity: 'warning' | 'error'): void {
  for (const { start, source } of findUnheld(writing.source, tree)) {
    const line = source.split(/\r\n|\n|\r/)[0] as string;
    writing.problems.push({
      severity,
      rule: 'unheld-number',
      place: placeWithin(placeAt(writing, start), { start: 0, end: line.length }),
      found: `\`${source.replace(/\s+/g, ' ')}\`, which nothing holds`,
      expected: 'a figure, setting, condition or rating that holds it',
      remedy: `\`npm run hold -- ${writing.file}\` offers those that fit; \`:unheld[…]\` leaves it free`,
    });
  }
}
