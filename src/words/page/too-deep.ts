/** Text nested so deeply that the stack ends is reported, not thrown at the author. */
import { error } from '../../problem.ts';
import { toHtml } from './markdown.ts';
import { element } from './page-node.ts';
import { placeAt, type Writing } from './writing.ts';

/** The result of a step, or null after reporting that the stack ended. Other faults are thrown on. */
export function withinDepth<T>(writing: Writing, step: () => T): T | null {
  try {
    return step();
  } catch (thrown) {
    if (!(thrown instanceof RangeError) || !/stack/.test(thrown.message)) throw thrown;
    const more = { expected: 'at most about a hundred levels', remedy: 'look for a line of `>`, `[` or `-` that was not meant' };
    writing.problems.push(error('nested-too-deeply', placeAt(writing, 0), 'Markdown nested too deeply to be read', more));
    return null;
  }
}

/** The whole text as it was written, for a page that shows its problem. */
export function asText(writing: Writing): string {
  return toHtml({ type: 'root', children: [element('pre', {}, [writing.source.replaceAll('\0', '\uFFFD')])] });
}
