import { describe, expect, it } from 'vitest';
import { write } from '../../../src/words/write.ts';
import { noteOf, TWO } from '../subjects.ts';
import { scriptOf } from './script-of.ts';

const V = ':value[fast.peak_temperature]';

describe('words/script/blocks', () => {
  it('takes a script apart into headings, what is said, what is on screen, and what is only shown', () => {
    const { script, problems } = scriptOf(
      `One *two* ${V}.\n\n## Part of ${V}\n\n:::cue{at="0:15"}\nThe plot.\n\n::plot{kind=trace}\n:::\n\n- three\n- four\n\n::table{of=peak_temperature}\n\n::plot{kind=trace id=second}\n\n:::cue\nThe end.\n:::`,
    );
    expect(problems).toEqual([]);
    expect(script?.map(({ kind, html }) => [kind, html.filter((piece) => typeof piece === 'object')])).toEqual([
      ['said', [{ held: 1 }]],
      ['heading', [{ held: 2 }]],
      ['cue', [{ plot: 0 }]],
      ['said', []],
      ['shown', [{ held: 3 }, { held: 4 }]],
      ['shown', [{ plot: 1 }]],
      ['cue', []],
    ]);
    expect(script?.flatMap((block) => (block.kind === 'cue' ? [[block.at, block.line, block.column]] : []))).toEqual([
      [15, 5, 1],
      [null, 18, 1],
    ]);
    expect(script?.[0]?.html).toEqual(['<p>One <em>two</em> ', { held: 1 }, '.</p>']);
  });

  it('does not speak struck words, marks of footnotes and code blocks', () => {
    const { script } = scriptOf('Said ~~struck~~ here.[^1]\n\n```\ncode\n```\n\n[^1]: A footnote.');
    expect(script?.map(({ said }) => said.join('').trim())).toEqual(['Said  here.', '', '']);
  });

  it('is made of scripts only', () => {
    expect(scriptOf('x').script).toHaveLength(1);
    expect(write(noteOf('x'), TWO)).not.toHaveProperty('script');
  });

  it('refuses a cue in a list, a quotation or another cue: nothing is said before or after it', () => {
    const { problems } = scriptOf('> :::cue\n> x\n> :::\n\n- :::cue\n  x\n  :::\n\n::::cue\n:::cue\nx\n:::\n::::');
    expect(problems.map(({ rule, place }) => [rule, place.line])).toEqual([
      ['misplaced-directive', 1],
      ['misplaced-directive', 5],
      ['misplaced-directive', 10],
    ]);
  });
});
