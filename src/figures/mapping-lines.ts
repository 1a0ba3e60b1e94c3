/** A mapping as lines of front matter: what a message offers to copy, and what `add` writes. */
import type { ProposedMapping } from './propose-mapping.ts';

/** The lines below `scores:`, `surface:` or `table:`, each with its own indent; what only the author knows stands behind a comment. */
export function mappingLines({ mapping, openTests, openWords, taken }: ProposedMapping): string[] {
  const { columns = [], words = {}, rows, layout, everyRow = {}, units = {}, tests = {} } = mapping;
  const below = (key: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [`${key}:`, ...lines.map((line) => `  ${line}`)];
  const pairs = (texts: Readonly<Record<string, string>>) =>
    Object.entries(texts).map(([key, value]) => `${scalar(key)}: ${scalar(value)}`);
  return [
    ...(layout === 'wide' ? ['layout: wide'] : []),
    ...below(
      'columns',
      columns.map(
        ({ name, heads }) =>
          `${name}: ${heads.length === 1 ? scalar(heads[0]!) : `[${heads.map((head) => JSON.stringify(head)).join(', ')}]`}`,
      ),
    ),
    ...(rows ? below('rows', [`${scalar(rows.column)}: ${scalar(rows.value)}`]) : []),
    ...below('units', pairs(units)),
    ...below(
      'every_row',
      pairs(everyRow).map((line) => `${line}${taken}`),
    ),
    ...withOpen(
      'words',
      pairs(words),
      openWords.map((word) => `${scalar(word)}: what it means, one of our outcomes`),
    ),
    ...withOpen(
      'tests',
      Object.entries(tests).map(
        ([title, { better, unit }]) => `${scalar(title)}: ${better}${unit === undefined ? '' : `, ${unit}`}`,
      ),
      openTests.map((title) => `${scalar(title)}: higher, points # or lower, and its own unit`),
    ),
  ];
}

/** A key with what is known below it, then what is left to the author; without the first the whole is a comment. */
function withOpen(key: string, known: readonly string[], open: readonly string[]): string[] {
  if (known.length + open.length === 0) return [];
  return [known.length > 0 ? `${key}:` : `# ${key}:`, ...known.map((line) => `  ${line}`), ...open.map((line) => `#   ${line}`)];
}

/** A YAML scalar: plain where nothing in it could be read otherwise. */
export function scalar(text: string): string {
  const plain = /^[\p{L}\d][\p{L}\d %./°()[\]+_,±µ·-]*$/u.test(text) && !/\s$|^(?:true|false|yes|no|null|none|on|off)$/i.test(text);
  return plain ? text : JSON.stringify(text);
}
