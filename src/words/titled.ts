/** Free text that brings its own title: the page about the publication. */
import type { Nodes, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { Span } from './expression/expression-tree.ts';
import { parseMarkdown } from './page/markdown.ts';
import { spanOf } from './page/writing.ts';

export interface Titled {
  /** Words of the first heading of the first level, without its marks; '' where there is none. */
  readonly title: string;
  /** All else. What was taken out leaves its lines, so that all keep their numbers. */
  readonly body: string;
  /** Whether front matter, which has no place there, was taken out. */
  readonly hadFrontMatter: boolean;
}

/** Takes title and front matter out of Markdown. */
export function titled(markdown: string): Titled {
  let tree: Root;
  try {
    tree = parseMarkdown(markdown, true);
  } catch (thrown) {
    // Nested too deeply: the next reader says so.
    if (thrown instanceof RangeError) return { title: '', body: markdown, hadFrontMatter: false };
    throw thrown;
  }
  const heading = tree.children.find((node) => node.type === 'heading' && node.depth === 1);
  const front = tree.children.find((node) => node.type === 'yaml');
  const taken = [front, heading].filter((node) => node !== undefined).map((node) => spanOf(node));
  return {
    title: heading === undefined ? '' : wordsOf(heading),
    body: taken.reduce(withoutSpan, markdown),
    hadFrontMatter: front !== undefined,
  };
}

function wordsOf(heading: Nodes): string {
  const words: string[] = [];
  visit(heading, (node: Nodes) => {
    if (node.type === 'text' || node.type === 'inlineCode') words.push(node.value);
    if (node.type === 'image') words.push(node.alt ?? '');
    if (node.type === 'break') words.push(' ');
  });
  return words.join('').replaceAll(/\s+/g, ' ').trim();
}

function withoutSpan(text: string, { start, end }: Span): string {
  return text.slice(0, start) + text.slice(start, end).replace(/[^\r\n]/g, ' ') + text.slice(end);
}
