import { describe, expect, test } from 'vitest';
import { isPresent } from '../../../src/figures/figure.ts';
import { write } from '../../../src/words/write.ts';
import type { Subject } from '../../../src/words/written.ts';
import { noteOf, RATED, TWO } from '../subjects.ts';

/** The rated run with its load power measured elsewhere, or at no stated place. */
function measuredAt(at: string | undefined): Subject {
  const figures = new Map(RATED.figures);
  const power = figures.get('load_power')!;
  if (isPresent(power)) figures.set('load_power', { ...power, of: at === undefined ? {} : { at } });
  return { ...RATED, figures };
}

function htmlOf(rated: Subject): string {
  const { pieces } = write(noteOf('::table{of="load_power peak_temperature"}'), new Map([...TWO, ['rated', rated]]));
  return pieces.join('');
}

describe('words/directives/place-table: where power was measured', () => {
  test('is not said where it is the same in all runs', () => {
    expect(htmlOf(RATED)).not.toContain('board input');
  });

  test('is said in each cell of a row whose places differ, and only there', () => {
    const html = htmlOf(measuredAt('wall'));
    expect(html.match(/<span class="detail">wall<\/span>/g)).toHaveLength(1);
    expect(html.match(/<span class="detail">board input<\/span>/g)).toHaveLength(1);
  });

  test('is said to be unstated where it is', () => {
    expect(htmlOf(measuredAt(undefined))).toContain('<span class="detail">place unstated</span>');
  });
});
