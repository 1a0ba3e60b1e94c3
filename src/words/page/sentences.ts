/** The sentence that each held number stands in, as a reader has it: for telling what a change of the data changes in the words. */
import type { Element, ElementContent, Root } from 'hast';
import type { InSentence } from '../written.ts';
import { textOf } from './page-node.ts';

const BLOCKS = new Set([
  'p',
  'li',
  'td',
  'th',
  'dt',
  'dd',
  'h1',
  'h2',
  'h3',
  'h4',
  'h5',
  'h6',
  'figcaption',
  'caption',
  'blockquote',
]);

/** Stands for a held number in a pattern, and for the number itself. */
const HELD = '□';
const SELF = '■';

/** A stretch of text; `held` where it is a held number, counted from 1 over the page. */
interface Run {
  readonly text: string;
  readonly held?: number;
}

/** By number of the held number, counted from 0. A cell of a table stands with the head of its row. */
export function sentencesOf(page: Root): readonly InSentence[] {
  const found: InSentence[] = [];
  for (const runs of blocksOf(page)) {
    for (const sentence of split(runs)) {
      for (const { held } of sentence) {
        if (held !== undefined) found[held - 1] = { text: joined(sentence), pattern: joined(sentence, held) };
      }
    }
  }
  return found;
}

function joined(sentence: readonly Run[], self?: number): string {
  const masked = ({ text, held }: Run): string => (held === undefined ? text : held === self ? SELF : HELD);
  const words = sentence.map((run) => (self === undefined ? run.text : masked(run))).join('');
  return words.replaceAll(/[ \t\r\n]+/g, ' ').trim();
}

/** The text of each block, less that of blocks within it. */
function blocksOf(page: Root): Run[][] {
  const blocks: Run[][] = [];
  const within = (nodes: readonly (ElementContent | Root['children'][number])[], into: Run[], head: string): void => {
    for (const node of nodes) {
      if (node.type === 'text') into.push({ text: node.value });
      if (node.type !== 'element') continue;
      const held = node.properties.dataN;
      if (typeof held === 'string') into.push({ text: textOf(node), held: Number(held) });
      else if (!BLOCKS.has(node.tagName)) within(node.children, into, node.tagName === 'tr' ? headOf(node) : head);
      else {
        const own: Run[] = node.tagName === 'td' && head !== '' ? [{ text: `${head}: ` }] : [];
        blocks.push(own);
        within(node.children, own, head);
      }
    }
  };
  const loose: Run[] = [];
  blocks.push(loose);
  within(page.children, loose, '');
  return blocks;
}

function headOf(row: Element): string {
  const head = row.children.find((child): child is Element => child.type === 'element' && child.tagName === 'th');
  return head ? textOf(head).trim() : '';
}

/** A sentence ends at a full stop, question or exclamation mark (and what closes behind it) that a blank follows. */
const END = /[.!?…]["'”’)\]]*[ \t\r\n]+(?=["'“‘([]*[\p{Lu}\p{N}])/gu;

/** Splits a block's text into sentences; a held number is never split, and one may begin a sentence. */
function split(runs: readonly Run[]): Run[][] {
  const text = runs.map((run) => run.text).join('');
  const ends = [...text.matchAll(END)].map((match) => match.index + match[0].length);
  const sentences: Run[][] = [[]];
  let at = 0;
  for (const run of runs) {
    const stop = at + run.text.length;
    const cuts = run.held === undefined ? ends.filter((end) => end > at && end < stop) : [];
    const starts = [at, ...cuts];
    for (const [index, start] of starts.entries()) {
      if (ends.includes(start)) sentences.push([]);
      const part = run.text.slice(start - at, (starts[index + 1] ?? stop) - at);
      (sentences.at(-1) as Run[]).push({ ...run, text: part });
    }
    at = stop;
  }
  return sentences;
}
