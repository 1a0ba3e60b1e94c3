/** Characters that Markdown writes as references (`&#x202e;`), which nobody sees on the page. As they are, no file of content/ holds them. */
import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import { hiddenIn } from '../../hidden-characters.ts';
import { report, spanOf, type Writing } from '../page/writing.ts';

/** Reports the first of each text, title, address or description. */
export function reportHidden(writing: Writing, tree: Root): void {
  visit(tree, (node) => {
    const texts = ['value', 'title', 'alt', 'url', 'label'].map((key) => (node as unknown as Record<string, unknown>)[key]);
    const [found] = texts.flatMap((text) => (typeof text === 'string' ? hiddenIn(text) : []));
    if (!found || node.type === 'yaml') return;
    report(writing, {
      rule: 'hidden-character',
      ...spanOf(node),
      found: `a character that ${found.does} (${found.name})`,
      expected: 'characters that a reader can see',
      remedy: 'remove it',
    });
  });
}
