/** The highlights of a note's front matter: what home, feeds and the top of the page show of it. */
import { error } from '../problem.ts';
import type { Note } from '../register/register.ts';
import { entryOf, holdsNothing, printed } from './directives/value.ts';
import { evaluate } from './expression/expression.ts';
import { ownInterval } from './expression/interval-margins.ts';
import { standInsText } from './expression/stand-ins.ts';
import { locate } from './expression/text-problem.ts';
import { toldInstead } from './page/recorded-words.ts';
import type { Writing } from './page/writing.ts';
import type { DraftEntry } from './written.ts';

/** One entry a highlight, in the author's order; they stand in no text and link nothing. */
export function highlightsOf(note: Note, writing: Writing): DraftEntry[] {
  return note.highlights.flatMap(({ expression, place }) => {
    const quoted = /["']/.test(writing.source.slice(offsetOf(writing, place)).charAt(0));
    const start = quoted ? { ...place, column: place.column + 1 } : place;
    const evaluated = evaluate(expression, writing.subjects, start);
    if ('problems' in evaluated) {
      const asked = { kind: 'highlight', text: expression, expression: expression.trim() } as const;
      if (toldInstead(writing, asked, start, evaluated.problems) !== undefined) return writing.drafts.splice(-1);
      writing.problems.push(...evaluated.problems);
      return [];
    }
    if (evaluated.held.length === 0) {
      writing.problems.push(locate(holdsNothing({ start: 0, end: expression.length }), start));
      return [];
    }
    const shown = printed(evaluated.quantity, { interval: ownInterval(evaluated) });
    if (!('refused' in shown)) {
      const said = { ...shown, shown: shown.shown + standInsText(evaluated.held) };
      return [entryOf('highlight', start, expression, expression.trim(), said, evaluated.held)];
    }
    writing.problems.push(error('unit-mismatch', start, shown.refused));
    return [];
  });
}

/** A quoted scalar is placed at its quote; its text begins behind it. */
function offsetOf(writing: Writing, { line, column }: { readonly line: number; readonly column: number }): number {
  return (writing.lines[line - 1] ?? 0) + column - 1;
}
