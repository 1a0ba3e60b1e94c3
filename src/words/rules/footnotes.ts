/** A footnote that nothing refers to is not printed; its words would be lost without a word. */
import type { Nodes, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import { warning } from '../../problem.ts';
import { placeAt, spanOf, type Writing } from '../page/writing.ts';

/** Warns of footnotes that no `[^name]` refers to. */
export function reportLostFootnotes(writing: Writing, tree: Root): void {
  const mentioned = new Set<string>();
  visit(tree, 'footnoteReference', (node: Nodes) => {
    if (node.type === 'footnoteReference') mentioned.add(node.identifier);
  });
  visit(tree, 'footnoteDefinition', (node: Nodes) => {
    if (node.type !== 'footnoteDefinition' || mentioned.has(node.identifier)) return;
    const name = node.label ?? node.identifier;
    const more = { expected: `\`[^${name}]\` in the text`, remedy: 'it is not printed; refer to it or remove it' };
    writing.problems.push(
      warning('lost-footnote', placeAt(writing, spanOf(node).start), `a footnote \`${name}\` that nothing refers to`, more),
    );
  });
}
