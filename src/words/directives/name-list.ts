/** Lists of names in attributes, which blanks separate. */
import { error } from '../../problem.ts';
import { placeAt, type Writing } from '../page/writing.ts';
import type { WrittenDirective } from './read-directive.ts';

const LISTS = new Set(['of', 'runs', 'channels']);
const QUOTED = /"[^"]*"/g;

/** Whether the lists of a directive do without commas; each that has one is reported at its first. */
export function withoutCommas(writing: Writing, { attributes }: WrittenDirective): boolean {
  const wrong = attributes.flatMap(({ name, value, valueStart }) => {
    const at = value.replace(QUOTED, (quoted) => '"'.repeat(quoted.length)).indexOf(',');
    return LISTS.has(name) && at >= 0 ? [{ name, value, at: valueStart + at }] : [];
  });
  for (const { name, value, at } of wrong) {
    const place = placeAt(writing, at);
    const more = {
      expected: 'names are separated by blanks, without commas',
      remedy: `write \`${name}=${inQuotes(spaced(value))}\``,
    };
    writing.problems.push(
      error('request-attribute', { ...place, endLine: place.line, endColumn: place.column + 1 }, `a comma in \`${name}\``, more),
    );
  }
  return wrong.length === 0;
}

function spaced(value: string): string {
  const parts = value.match(/"[^"]*"|[^",]+|,/g) ?? [];
  return parts
    .map((part) => (part === ',' ? ' ' : part))
    .join('')
    .replace(/ {2,}/g, ' ')
    .trim();
}

function inQuotes(value: string): string {
  return value.includes('"') ? `'${value}'` : `"${value}"`;
}
