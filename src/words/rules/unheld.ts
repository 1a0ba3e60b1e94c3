/** Numbers with a unit that stand in the prose and that nothing holds. */
import type { Root } from 'mdast';
import { warning } from '../../problem.ts';
import { readUnit } from '../../quantities/units.ts';
import { placeAt, type Writing } from '../writing.ts';
import { proseSpans } from './prose-spans.ts';

const NUMBER_WITH_UNIT =
  /(?<![\p{L}\p{N}_.,:/-])[-−+~≈]?(\d+(?:[.,]\d+)?)(?:&nbsp;|[ \u00A0\u202F])?([°℃]C?|[A-Za-zµμΩ%]+(?:\/[A-Za-z]+)?)(?![\p{L}\p{N}_°])/gu;

/** Units of this trade's figures; others (an inch, a bit) are no measured number here. */
const MEASURED = new Set(['°C', 'K', 's', 'Hz', 'A', 'V', 'W', 'J', '1', 'K/W']);

/** Warns of each. Code, quotations of our directives and front matter are not prose. */
export function reportUnheld(writing: Writing, tree: Root): void {
  for (const { start, end } of proseSpans(tree)) {
    for (const match of writing.source.slice(start, end).matchAll(NUMBER_WITH_UNIT)) reportOne(writing, start + match.index, match);
  }
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
