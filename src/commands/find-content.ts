/** A file of content/ as typed -> its path below the project folder. */
import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { meant } from '../register/values/names.ts';

/** The path of a file in one of some folders of content/, named by its path, or by its name alone; or what is wrong. */
export function findContent(
  root: string,
  typed: string,
  folders: readonly string[],
  noun: string,
): { readonly file: string } | { readonly refused: string } {
  const asTyped = relative(root, resolve(root, typed)).split(sep).join('/');
  const candidates = [
    asTyped,
    `content/${asTyped}`,
    ...folders.map((folder) => `content/${folder}/${asTyped.replace(/\.md$/, '')}.md`),
  ];
  const found = candidates.find((file) => isIn(folders, file) && existsSync(join(root, file)));
  if (found) return { file: found };
  const all = folders.flatMap((folder) => filesIn(root, folder));
  const { remedy } = typed.includes('/') ? meant(typed, all) : meant(typed, all.map(nameOf));
  return {
    refused: `there is no ${noun} ${typed}${remedy ? `: ${remedy}` : all.length > 0 ? `; there are ${all.join(', ')}` : ''}`,
  };
}

function nameOf(file: string): string {
  return file.slice(file.lastIndexOf('/') + 1, -'.md'.length);
}

function isIn(folders: readonly string[], file: string): boolean {
  const [top, folder = '', name = '', ...rest] = file.split('/');
  return top === 'content' && folders.includes(folder) && name.endsWith('.md') && rest.length === 0;
}

function filesIn(root: string, folder: string): string[] {
  const directory = join(root, 'content', folder);
  if (!existsSync(directory)) return [];
  return readdirSync(directory)
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => `content/${folder}/${name}`);
}
