/** Names that come of the names of files: a run's id and title, those of its logs. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { idFromWords } from '../../register/values/names.ts';
import { endingOf, stemOf } from './ending.ts';

/** An id from the name of a file below data/. */
export function idOf(path: string): string {
  return idFromWords(stemOf(path)) || 'run';
}

/** An id from the file's name, or with its folder's before it where that is taken. */
export function freeId(root: string, path: string): string | undefined {
  const ids = [idOf(path), idFromWords(path.slice(0, path.length - endingOf(path).length))];
  return ids.find((id) => !existsSync(join(root, 'content', 'runs', `${id}.md`)));
}

/** A title of words from a file's name, without its folders and its ending: a point or a stroke in them belongs to them. */
export function titleOf(name: string): string {
  const words = name.replace(/[-_]+/g, ' ').trim() || 'Run';
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Names of a run's logs: the word of the file's name that the others lack. */
export function distinctNames(paths: readonly string[]): string[] {
  const all = paths.map((path) => idOf(path).split('-'));
  return all.map((words, at) => {
    const own = words.filter((word) => all.every((other, k) => k === at || !other.includes(word)));
    const name = own.join('_').replace(/^(?=\d)/, 'log_');
    return name === '' ? `log_${at + 1}` : name;
  });
}
