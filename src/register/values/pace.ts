/** How fast a script is spoken: `pace: 150 words per minute`. */
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { cut } from './values.ts';

/** Words per minute where a script states none: common practice, no source. */
export const USUAL_PACE = 150;

const PACE = /^(\d{1,4}(?:\.\d+)?) words(?: per minute| ?\/ ?min)$/;

/** What a speaker can do, words per minute: outside of it a slip of the key is likelier. Common practice, no source. */
const SLOWEST = 60;
const FASTEST = 300;

/** Words per minute, or undefined after reporting what is wrong. */
export function paceOf(node: TextNode | undefined, report: Report): number | undefined {
  if (node === undefined) return undefined;
  const words = Number(PACE.exec(node.text)?.[1] ?? Number.NaN);
  if (words >= SLOWEST && words <= FASTEST) return words;
  const bare = /^\d+(?:\.\d+)?$/.test(node.text);
  report.error(bare ? 'number-without-unit' : 'bad-pace', node.place, `\`pace\` is \`${cut(node.text)}\``, {
    expected: `words per minute, ${SLOWEST} to ${FASTEST}, such as \`150 words per minute\``,
  });
  return undefined;
}
