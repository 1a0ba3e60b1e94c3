/** Numbers with a unit that stand in the prose and that nothing holds. */
import type { Nodes, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import { warning } from '../../problem.ts';
import { readUnit } from '../../quantities/units.ts';
import { placeAt, spanOf, type Writing } from '../writing.ts';

const NUMBER_WITH_UNIT =
  /(?<![\p{L}\p{N}_.,:/-])[-−+~≈]?(\d+(?:[.,]\d+)?)[ \u00A0\u202F]?([°℃]C?|[A-Za-zµμΩ%]+(?:\/[A-Za-z]+)?)(?![\p{L}\p{N}_°])/gu;

/** Units of this trade's figures; others (an inch, a bit) are no measured number here. */
const MEASURED = new Set(['°C', 'K', 's', 'Hz', 'A', 'V', 'W', 'J', '1', 'K/W']);

/** Warns of each. Code, quotations of our directives and front matter are not prose. */
export function reportUnheld(writing: Writing, tree: Root): void {
  visit(tree, (node: Nodes) => {
    if (node.type === 'textDirective') return SKIP;
    if (node.type !== 'text') return undefined;
    const { start, end } = spanOf(node);
    for (const match of writing.source.slice(start, end).matchAll(NUMBER_WITH_UNIT)) reportOne(writing, start + match.index, match);
    return undefined;
  });
}

function reportOne(writing: Writing, at: number, match: RegExpMatchArray): void {
  const unit = readUnit(match[2] as string);
  if (!unit || !MEASURED.has(unit.canonical)) return;
  const place = placeAt(writing, at);
  const more = { expected: 'a figure that holds it', remedy: 'print it with `:value`, or hold the words with `:claim`' };
  writing.problems.push(
    warning(
      'unheld-number',
      { ...place, endLine: place.line, endColumn: place.column + match[0].length },
      `\`${match[0]}\`, which nothing holds`,
      more,
    ),
  );
}
