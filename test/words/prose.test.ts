import { describe, expect, test } from 'vitest';
import { renderProse } from '../../src/words/prose.ts';

describe('words/prose', () => {
  test('renders Markdown as notes do', () => {
    expect(renderProse('# The *bench*\n\nAt 8:00.', { file: 'content/runs/run.md', line: 9 })).toEqual({
      html: '<h1 id="the-bench">The <em>bench</em></h1>\n<p>At 8:00.</p>',
      problems: [],
    });
  });

  test('counts lines from where the text begins in its file', () => {
    const { html, problems } = renderProse('One.\n\nTwo :value[fast.load_power]', { file: 'content/runs/run.md', line: 9 });
    expect(problems.map(({ rule, place }) => [rule, place.line, place.column])).toEqual([['held-number-in-prose', 11, 5]]);
    expect(html).toBe('<p>One.</p>\n<p>Two :value[fast.load_power]</p>');
  });

  test('a rule at the start of the text is no front matter', () => {
    expect(renderProse('---\na\n\n---\n', { file: 'x.md', line: 3 }).html).toBe('<hr>\n<p>a</p>\n<hr>');
  });
});
