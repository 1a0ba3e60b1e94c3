/** The chapter that defines what numbers in words mean: generated from the reader's own tables, intervals included. */

import { allowedWords } from '../../words/directives/stated-report.ts';
import { HEDGES } from '../../words/stated/hedges.ts';
import { isUnread, readStated } from '../../words/stated/read.ts';
import { READINGS } from '../../words/stated/readings.ts';

const INTRO = `A number that the author says in words of his own is checked against the data and never replaced. What the words allow is an
interval of true values; the site is not printed while a figure lies outside it, and the author is warned where the figure's 95 %
interval reaches beyond. A bare number means what rounds to it, and the very number that the site prints of a figure is never wrong; the words before and after it widen, narrow or open that interval.
These meanings are common practice, no source: what counts is that they are written down, and the same for every sentence.`;

const CLAIMS = `A claim is a sentence with a condition on figures. It is judged on the 95 % interval of the difference between its two
sides, in which what both share cancels: it holds, it fails, or this data cannot tell. Only a claim that holds is printed, unless its
author has marked it as one that may stay untold. The note behind each claim gives the condition, both sides, and the outcome.`;

/** Forms of "just under" alone are dozens. */
const FORMS_SHOWN = 8;

/** In Markdown. */
export const HEDGES_CHAPTER = {
  id: 'numbers-in-words',
  title: 'Numbers in words',
  markdown: [
    INTRO,
    'Without a hedge:',
    list(READINGS.map(({ name, meaning, examples }) => [name, plain(meaning), `For example ${examples.map(example).join('; ')}.`])),
    'With one:',
    list(HEDGES.map((hedge) => [hedge.name, plain(hedge.meaning), `For example ${example(hedge.example)}.`, ...alsoSaid(hedge)])),
    CLAIMS,
  ].join('\n\n'),
} as const;

/** One item a meaning: its name, then sentences. Tables of so many words would not fit a phone. */
function list(items: readonly (readonly [name: string, ...sentences: string[]])[]): string {
  return items.map(([name, ...sentences]) => `- **${plain(name)}**: ${sentences.join(' ')}`).join('\n');
}

function alsoSaid({ name, before, after }: (typeof HEDGES)[number]): string[] {
  const others = [...before.filter((form) => form !== name), ...after.map((form) => `… ${form}`)];
  const more = others.length > FORMS_SHOWN ? ', and the like' : '';
  return others.length === 0 ? [] : [`Also said: ${plain(others.slice(0, FORMS_SHOWN).join(', ') + more)}.`];
}

/** A wording and the interval that the reader reads from it. Throws where it reads none: the page would be wrong. */
function example(wording: string): string {
  const read = readStated(wording);
  if (isUnread(read)) throw new Error(`the example "${wording}" is not read: ${read.unread}`);
  return plain(`“${wording}”: ${allowedWords(read, read.unit)}`);
}

/** Signs that Markdown would take for its own. */
function plain(text: string): string {
  return text.replace(/[|*_<>~]/g, '\\$&');
}
