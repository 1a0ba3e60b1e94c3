/** A citation for BibTeX and what reads its files. */
import { type Name, namesOf, type Reference } from './reference.ts';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * An entry `@misc` with a final newline, in UTF-8. Names that their author did not set apart stand in braces, so that they stay whole.
 * Source: O. Patashnik, "BibTeXing", 1988 (entry types and fields; braces); `url` and the day are as in the manual of biblatex.
 */
export function bibtex(reference: Reference): string {
  const { key, title, publisher, date, url, version } = reference;
  const names = namesOf(reference).map(named).join(' and ');
  const fields: [string, string][] = [
    ...(names === '' ? [] : [['author', `{${names}}`] as [string, string]]),
    ['title', `{{${escaped(title)}}}`],
    ...(publisher === '' ? [] : [['howpublished', `{${escaped(publisher)}}`] as [string, string]]),
    ['year', `{${date.slice(0, 4)}}`],
    ['month', MONTHS[Number(date.slice(5, 7)) - 1]!],
    ['date', `{${date}}`],
    ['url', `{${url}}`],
    ['note', `{${escaped(version)}}`],
  ];
  return `@misc{${key},\n${fields.map(([field, value]) => `  ${field} = ${value},\n`).join('')}}\n`;
}

function named(name: Name): string {
  return 'literal' in name ? `{${escaped(name.literal)}}` : `${escaped(name.family)}, ${escaped(name.given)}`;
}

/**
 * The ten characters that TeX takes for itself. Source: D. E. Knuth, "The TeXbook", chapter 7. Braces go by name: BibTeX counts them
 * even behind a backslash, so that a lone one would take the rest of the file along.
 */
const SPECIAL: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '{': '\\textbraceleft{}',
  '}': '\\textbraceright{}',
  $: '\\$',
  '&': '\\&',
  '#': '\\#',
  _: '\\_',
  '%': '\\%',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
};

function escaped(text: string): string {
  return text.replace(/[\\{}$&#_%~^]/g, (character) => SPECIAL[character]!);
}
