/** How things are named, and which name was probably meant when one is unknown. */
import { ID_RULE, idFromWords, isId, TAKEN_WORD } from '../../intake/ids.ts';
import { compareText } from '../../problem.ts';

export { ID_RULE, idFromWords, isId };

const SNAKE = /^[a-z][a-z0-9]*(?:_[a-z0-9]+)*$/;
const PHASE = /^[a-z][a-z0-9]*(?:[_-][a-z0-9]+)*$/;

export const SNAKE_RULE =
  'snake_case: lower-case letters and digits, in words joined by single underscores, beginning with a letter';

/** Tells whether a text can name a channel, a free setting, an alias. */
export function isSnakeName(text: string): boolean {
  return SNAKE.test(text) && text !== TAKEN_WORD;
}

/** Tells whether a text can name a phase; `cool-down` is usual, so a hyphen is allowed. */
export function isPhaseName(text: string): boolean {
  return PHASE.test(text) && text !== TAKEN_WORD;
}

/** The snake_case name that words would have; '' when nothing is left. */
export function snakeFromWords(words: string): string {
  return idFromWords(words.replace(/([a-z0-9])([A-Z])/g, '$1 $2')).replaceAll('-', '_');
}

/**
 * The candidate that an unknown word was probably meant to be, or undefined when none is near.
 *
 * Case and the choice between `-`, `_` and blank don't count. Near is: at most one edit in three letters (insertion, deletion, change,
 * swap of neighbours), or a beginning of three letters or more that only one candidate has. Ties go to the first in code-unit order.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  const plain = plainForm(word);
  const sorted = [...new Set(candidates)].sort(compareText);
  let best: { readonly name: string; readonly distance: number } | undefined;
  for (const name of sorted) {
    const form = plainForm(name);
    const limit = Math.max(1, Math.floor(Math.max(plain.length, form.length) / 3));
    if (Math.abs(plain.length - form.length) > limit) continue;
    const distance = editDistance(plain, form);
    if (distance <= limit && distance < Math.max(plain.length, form.length) && (!best || distance < best.distance))
      best = { name, distance };
  }
  return best?.name ?? onlyBeginning(plain, sorted);
}

function onlyBeginning(plain: string, candidates: readonly string[]): string | undefined {
  if (plain.length < 3) return undefined;
  const fitting = candidates.filter((name) => plainForm(name).startsWith(plain));
  return fitting.length === 1 ? fitting[0] : undefined;
}

/** Long words are cut: a name has no hundred letters, and the distance costs their product. */
function plainForm(name: string): string {
  return name
    .slice(0, 100)
    .toLowerCase()
    .replace(/[-_ ]+/g, '_');
}

/** Number of single edits between two words: insertion, deletion, change, swap of neighbours (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, before[j - 2]! + 1);
      row.push(cost);
    }
    before = above;
    above = row;
  }
  return above[b.length]!;
}

/** `did you mean …?`-remedy, or nothing. */
export function meant(word: string, candidates: Iterable<string>): { readonly remedy?: string } {
  const name = nearest(word, candidates);
  return name === undefined ? {} : { remedy: `did you mean \`${name}\`?` };
}

/** `` `a`, `b` or `c` `` */
export function oneOf(names: readonly string[], joint = 'or'): string {
  const quoted = names.map((name) => `\`${name}\``);
  if (quoted.length < 2) return quoted.join('');
  return `${quoted.slice(0, -1).join(', ')} ${joint} ${quoted.at(-1)}`;
}
