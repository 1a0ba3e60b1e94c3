/** The text of a retest's run, made from that of the run that it follows; and the runs that other files name. */

import type { OwnPhase } from './own-phases.ts';

/** What a retest says otherwise. Paths are below data/. */
export interface Retest {
  readonly follows: string;
  readonly title: string;
  readonly date: string;
  readonly log: string;
  readonly scores?: string | undefined;
  readonly surface?: string | undefined;
  readonly image?: string | undefined;
  /** Where those of the old run do not fit the new log. */
  readonly phases?: readonly OwnPhase[] | 'untold' | undefined;
}

/** A key of the front matter with all of its lines. */
interface Section {
  readonly key: string;
  readonly lines: readonly string[];
}

/** What lines of the old log, its displays or its page were about. */
const OF_THE_OLD = new Set(['known', 'repairs', 'readings', 'was', 'follows']);

/** The run's file: what the old one states, less what was about its own log. */
export function retestText(old: string, retest: Retest): string {
  const phases = retest.phases === undefined || retest.phases === 'untold' ? [] : retest.phases;
  const lines = sectionsOf(old).flatMap(({ key, lines: own }) => {
    if (key === 'title') return [`title: ${quoted(retest.title)}`, `follows: ${retest.follows}`];
    if (key === 'date') return [`date: ${retest.date}`];
    if (key === 'log') return withPath(own, retest.log);
    if (key === 'scores' || key === 'surface') {
      const path = retest[key];
      return path === undefined ? [] : withImage(withPath(own, path), retest.image);
    }
    // Remarks below the phases belong to the key that follows.
    if (key === 'phases' && phases.length > 0) return own.filter((line) => line.startsWith('#'));
    return OF_THE_OLD.has(key) ? [] : own;
  });
  const own = phases.length === 0 ? [] : ['phases:', ...phases.map(({ name, stretch }) => `  ${name}: ${stretch}`)];
  return `---\n${[...lines, ...own].join('\n')}\n---\n`;
}

function sectionsOf(text: string): Section[] {
  const [, head = ''] = /^\uFEFF?---[ \t]*\r?\n([\s\S]*?)^---[ \t]*\r?$/m.exec(text) ?? [];
  const sections: { key: string; lines: string[] }[] = [];
  for (const line of head.replace(/\r?\n$/, '').split(/\r?\n/)) {
    const key = /^([A-Za-z_]\w*)[ \t]*:/.exec(line)?.[1];
    if (key !== undefined) sections.push({ key, lines: [line] });
    else sections.at(-1)?.lines.push(line);
  }
  return sections;
}

/** `log: a.csv`, or `log:` with `file: a.csv` below, with another path. */
function withPath([first = '', ...below]: readonly string[], path: string): string[] {
  if (!/:[ \t]*(?:#.*)?$/.test(first)) return [first.replace(/:.*$/, `: ${path}`)];
  const kept = below.filter((line) => !/^[ \t]+(?:redacted|elsewhere)[ \t]*:/.test(line));
  return [first, ...kept.map((line) => line.replace(/^([ \t]+file[ \t]*:).*$/, `$1 ${path}`))];
}

/** The old run's thermal image is none of the new one's. */
function withImage(lines: readonly string[], path: string | undefined): string[] {
  return lines.flatMap((line) => {
    const [key] = /^[ \t]+image[ \t]*:/.exec(line) ?? [];
    if (key === undefined) return [line];
    return path === undefined ? [] : [`${key} ${path}`];
  });
}

function quoted(title: string): string {
  return /: |\s#|^["'[{&*!|>%@`-]/.test(title) ? `"${title.replaceAll(/["\\]/g, '\\$&')}"` : title;
}

/** Keys under which a file names runs. */
const NAMING = new Set(['runs', 'repeats']);

function runWord(id: string): RegExp {
  return new RegExp(`(?<![\\w-])${id}(?![\\w-])(?![ \\t]*:)`, 'g');
}

/** Whether a file names a run. */
export function namesRun(text: string, id: string): boolean {
  return sectionsOf(text).some(({ key, lines }) => NAMING.has(key) && lines.some((line) => runWord(id).test(line)));
}

/** The file with another run in the place of one; every other byte stays. */
export function withRun(text: string, id: string, by: string): string {
  const at = text.search(/^---[ \t]*\r?$/m);
  const close = text.slice(at + 3).search(/^---[ \t]*\r?$/m) + at + 3;
  let naming = false;
  const head = text
    .slice(0, close)
    .split('\n')
    .map((line) => {
      const key = /^([A-Za-z_]\w*)[ \t]*:/.exec(line)?.[1];
      if (key !== undefined) naming = NAMING.has(key);
      return naming ? line.replace(runWord(id), by) : line;
    });
  return head.join('\n') + text.slice(close);
}
