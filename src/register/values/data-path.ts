/** Paths below data/: plain, inside, and naming a file that is there. */

import type { DataFiles } from '../register.ts';
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { cut } from './values.ts';

/** A checked path, or undefined with a problem at the value. */
export function dataPathOf(node: TextNode | undefined, key: string, data: DataFiles, report: Report): string | undefined {
  if (node === undefined) return undefined;
  const path = node.text;
  const fault = faultOf(path);
  if (fault !== undefined) {
    report.error(fault.rule, node.place, `\`${key}\` is \`${cut(path)}\`, ${fault.found}`, {
      expected: 'a plain path below data/, such as `larch-2/fast-soak.csv`',
    });
    return undefined;
  }
  const kind = data.kind(path);
  if (kind === 'file') return path;
  if (kind === 'outside') {
    report.error('data-outside', node.place, `\`${key}\` is \`${cut(path)}\`, which leads out of data/`, {
      remedy: 'copy the file below data/',
    });
  } else if (kind === 'folder') {
    report.error('data-folder', node.place, `\`${key}\` is \`${cut(path)}\`, which is a folder`, {
      expected: 'the path of a file',
    });
  } else {
    report.error('data-missing', node.place, `\`${key}\` is \`${cut(path)}\`, and data/ holds no such file`, {
      remedy: remedyFor(path, data),
    });
  }
  return undefined;
}

function faultOf(path: string): { readonly rule: 'data-outside' | 'data-path'; readonly found: string } | undefined {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  if (/[\u0000-\u001F\u007F]/.test(path)) return { rule: 'data-path', found: 'which holds a control character' };
  if (/^(?:\/|~|[A-Za-z]:)/.test(path)) return { rule: 'data-outside', found: 'a path that does not begin at data/' };
  if (path.includes('\\')) return { rule: 'data-path', found: 'which holds a backslash' };
  const parts = path.split('/');
  if (parts.includes('..')) return { rule: 'data-outside', found: 'which climbs out of a folder' };
  if (parts.includes('') || parts.includes('.')) return { rule: 'data-path', found: 'which holds an empty step' };
  return undefined;
}

/** The likely slips that can be told by asking: `data/` written again, the ending, the case; else how far the path leads. */
function remedyFor(path: string, data: DataFiles): string {
  const guesses = [path.replace(/^data\//, ''), `${path}.csv`, path.toLowerCase(), path.replace(/\.[^./]*$/, '.csv')];
  const near = guesses.find((guess) => guess !== path && guess !== '' && data.kind(guess) === 'file');
  if (near !== undefined) return `did you mean \`${near}\`?`;
  const parts = path.split('/');
  for (let length = parts.length - 1; length > 0; length--) {
    const folder = parts.slice(0, length).join('/');
    if (data.kind(folder) === 'folder') return `data/${folder}/ is there, \`${parts[length]}\` in it is not: check the name`;
  }
  return parts.length > 1 ? `there is no folder data/${parts[0]}/: check the name` : 'check the name';
}
