// Outside truth: the examples of the CommonMark specification 0.31.2 (CC BY-SA 4.0), from the npm package commonmark-spec.
import { tests } from 'commonmark-spec';
import { describe, expect, test } from 'vitest';
import { renderProse } from '../../src/words/prose.ts';

/** Where notes differ from the specification on purpose. Every other example must render as it says. */
const DIFFERS = {
  /** Comments print nothing, not even themselves. */
  comments: [179, 183, 308, 309, 625, 626],
  /** GitHub Flavored Markdown makes links of bare addresses. */
  bareAddresses: [602, 606, 608, 611, 612],
};

/** One spelling for what HTML can spell in several ways; the ids that our headings have are left out. */
function plain(html: string): string {
  return html
    .replace(/(<h[1-6]) id="[^"]*"/g, '$1')
    .replaceAll('<pre tabindex="0">', '<pre>')
    .replaceAll('&#x3C;', '&lt;')
    .replaceAll('&#x26;', '&amp;')
    .replaceAll('&#x22;', '"')
    .replaceAll('&quot;', '"')
    .replaceAll('&gt;', '>')
    .replaceAll(' />', '>')
    .trim();
}

const examples = tests.map(({ number, section, markdown, html }) => {
  const rendered = renderProse(markdown.replaceAll('→', '\t'), { file: 'spec.md', line: 1 });
  return {
    number,
    section,
    expected: plain(html.replaceAll('→', '\t')),
    rendered,
    rules: new Set(rendered.problems.map(({ rule }) => rule)),
  };
});
const listed = new Set(Object.values(DIFFERS).flat());

describe('words/commonmark', () => {
  test('the specification has the examples that this list was made for', () => {
    expect(tests).toHaveLength(652);
  });

  const plainOnes = examples.filter(({ number, rules }) => !listed.has(number) && rules.size === 0);
  test.each(plainOnes)('example $number ($section) renders as it says', ({ expected, rendered }) => {
    expect(plain(rendered.html)).toBe(expected);
  });

  test('nothing else differs but raw HTML, pictures and links of other protocols, which are told', () => {
    expect(plainOnes.length).toBeGreaterThan(540);
    const told = examples.filter(({ rules }) => rules.size > 0).flatMap(({ rules }) => [...rules]);
    expect([...new Set(told)].toSorted()).toEqual(['image', 'link-protocol', 'raw-html']);
  });

  test('the list of differences holds none that is no difference', () => {
    const same = examples.filter(({ number, expected, rendered }) => listed.has(number) && plain(rendered.html) === expected);
    expect(same.map(({ number }) => number)).toEqual([]);
  });

  test('no raw HTML of the examples reaches the page', () => {
    const tags = examples.flatMap(({ rendered }) =>
      [...rendered.html.matchAll(/<\/?([a-zA-Z][^\s/>]*)/g)].map((match) => match[1]),
    );
    const ours = [
      'a',
      'blockquote',
      'br',
      'code',
      'em',
      'h1',
      'h2',
      'h3',
      'h4',
      'h5',
      'h6',
      'hr',
      'li',
      'ol',
      'p',
      'pre',
      'strong',
      'ul',
    ];
    expect([...new Set(tags)].toSorted()).toEqual(ours);
  });
});
