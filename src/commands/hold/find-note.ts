/** A note as typed -> its path below the project folder. */
import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { meant } from '../../register/names.ts';

const FOLDERS = ['notes', 'scripts'];

/** The path of a note or script named by its path, or by its name alone; or what is wrong. */
export function findNote(root: string, typed: string): { readonly file: string } | { readonly refused: string } {
  const asTyped = relative(root, resolve(root, typed)).split(sep).join('/');
  const candidates = [
    asTyped,
    `content/${asTyped}`,
    ...FOLDERS.map((folder) => `content/${folder}/${asTyped.replace(/\.md$/, '')}.md`),
  ];
  const found = candidates.find((file) => /^content\/(?:notes|scripts)\/[^/]+\.md$/.test(file) && existsSync(join(root, file)));
  if (found) return { file: found };
  const all = FOLDERS.flatMap((folder) => notesIn(root, folder));
  const { remedy } = meant(typed, all);
  return { refused: `there is no note ${typed}${remedy ? `: ${remedy}` : all.length > 0 ? `; there are ${all.join(', ')}` : ''}` };
}

function notesIn(root: string, folder: string): string[] {
  const directory = join(root, 'content', folder);
  if (!existsSync(directory)) return [];
  return readdirSync(directory)
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => `content/${folder}/${name}`);
}
