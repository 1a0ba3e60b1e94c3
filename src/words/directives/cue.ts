/** `:::cue{at="3:15"}` … `:::` in a script: what is on screen at that time; without `at`, when the words before it are said. */
import type { Nodes } from 'mdast';
import type { PageElement } from '../page/page-node.ts';
import { placeAt, report, spanOf, type Writing } from '../page/writing.ts';
import type { WrittenDirective } from './read-directive.ts';

const TIME = /^(?:\d+:)?[0-5]?\d:[0-5]\d$/;

/** The section of a cue with its time in front, or null after reporting what is wrong with it. */
export function cue(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const start = spanOf(node).start;
  const fence = { start, end: read.end };
  const at = read.attributes.find(({ name }) => name === 'at');
  const shows = (read.attributes.find(({ name }) => name === 'shows')?.value ?? '').split(/\s+/).filter((id) => id !== '');
  if (node.type !== 'containerDirective') return null;
  if (writing.kind !== 'script') {
    report(writing, {
      rule: 'misplaced-directive',
      ...fence,
      found: 'a cue in a note',
      expected: 'cues in scripts',
      remedy: 'move it to content/scripts',
    });
    return null;
  }
  if (!isClosed(writing, node)) {
    const found = 'a cue that is never closed';
    report(writing, {
      rule: 'directive-unclosed',
      ...fence,
      found,
      expected: 'a line `:::` after it',
      remedy: 'it would take in the rest of the text',
    });
    return null;
  }
  if (!at) {
    writing.cues.push({ at: null, shows });
    return { tagName: 'section', properties: { className: ['cue'], ariaLabel: 'On screen' }, children: 'own' };
  }
  const span = { start: at.valueStart, end: at.valueStart + at.value.length };
  if (!TIME.test(at.value)) {
    report(writing, {
      rule: 'cue-time',
      ...span,
      found: `the time \`${at.value}\``,
      expected: 'minutes and seconds, such as `3:15` or `1:03:15`',
    });
    return null;
  }
  const time = seconds(at.value);
  if (time < (writing.cues.findLast((each) => each.at !== null)?.at ?? 0)) {
    report(writing, {
      rule: 'cue-time',
      ...span,
      found: `a cue at ${at.value} below a later one`,
      expected: 'cues in the order of their times',
    });
  }
  writing.cues.push({ at: time, shows });
  node.children.unshift({
    type: 'paragraph',
    data: { hProperties: { className: ['cue-time'] } },
    children: [{ type: 'text', value: at.value }],
  });
  return { tagName: 'section', properties: { className: ['cue'], ariaLabel: `On screen at ${at.value}` }, children: 'own' };
}

function seconds(time: string): number {
  return time.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
}

/** Whether the last line of a container is a fence of as many colons as its first, or more. */
function isClosed(writing: Writing, node: Nodes): boolean {
  const { start, end } = spanOf(node);
  const lines = writing.source.slice(start, end).split(/\r\n|\n|\r/);
  const open = /^:+/.exec(lines[0] as string)?.[0].length ?? 3;
  const close = /(?:^|[\s>])(:+)[ \t]*$/.exec(lines.at(-1) as string)?.[1]?.length ?? 0;
  return lines.length > 1 && close >= open && placeAt(writing, end).line > placeAt(writing, start).line;
}
