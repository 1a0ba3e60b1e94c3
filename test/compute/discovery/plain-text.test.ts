import fc from 'fast-check';
import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { plainText } from '../../../src/compute/discovery/plain-text.ts';

describe('compute/discovery/plain-text', () => {
  it.each([
    [
      '<p>It reached <a class="held" href="#h-1" data-n="1">71.3 °C</a>.</p>\n<p>Then it fell.</p>',
      'It reached 71.3 °C. Then it fell.',
    ],
    ['<td>58.0 °C</td><td>4.5 K</td>', '58.0 °C 4.5 K'],
    ['a <a href="x" title="b > c">link</a>', 'a link'],
    ['5 &#x3C; 6 &#x26; 7 &lt; 8, &quot;9&quot;', '5 < 6 & 7 < 8, "9"'],
    ['<p>un<em>break</em>able</p>', 'unbreakable'],
    ['<a><img alt="The lid"><svg class="marks" aria-hidden="true"><text x="46%">1</text></svg></a><p>Below.</p>', 'Below.'],
    ['', ''],
  ])('%s', (html, text) => {
    expect(plainText(html)).toBe(text);
  });

  // Against the serialiser that prints the notes' HTML: whatever words it is given come back.
  it('gives back the words that a page was made of', () => {
    const words = fc.string({ unit: 'grapheme' }).map((text) => text.replaceAll(/\s+/g, ' ').trim());
    fc.assert(
      fc.property(words, words, fc.constantFrom('em', 'a', 'code', 'strong'), (text, title, tag) => {
        const html = toHtml({
          type: 'element',
          tagName: 'p',
          properties: {},
          children: [{ type: 'element', tagName: tag, properties: { title }, children: [{ type: 'text', value: text }] }],
        });
        expect(plainText(html)).toBe(text);
      }),
    );
  });
});
