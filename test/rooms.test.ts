/** The page of each room of src: it is there where a folder holds more than can be seen at once, and it names what is there. */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const SRC = join(import.meta.dirname, '..', 'src');
/** A folder of more files than this needs a page, its own or that of the folder above. */
const MOST = 12;

const files = globSync('**/*.{ts,astro,mjs}', { cwd: SRC });
const pages = globSync('**/README.md', { cwd: SRC });
const folders = new Set(files.flatMap((file) => dirnames(file)));

function dirnames(path: string): string[] {
  const parent = dirname(path);
  return parent === '.' ? [] : [parent, ...dirnames(parent)];
}

function textOf(folder: string): string | null {
  const path = join(SRC, folder, 'README.md');
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}

/** A file of src by its name or the end of its path, one of the project by its whole path, or one beside the folder of the page. */
function isThere(folder: string, path: string): boolean {
  const named = files.some((file) => `/src/${file}`.endsWith(`/${path}`));
  return named || existsSync(join(SRC, '..', path)) || existsSync(join(SRC, folder, path));
}

describe('the page of a room', () => {
  it('is there for each folder with many files, or the folder above explains it', () => {
    const large = [...folders].filter((folder) => files.filter((file) => dirname(file) === folder).length > MOST);
    expect(large.length).toBeGreaterThan(5);
    expect(large.filter((folder) => textOf(folder) === null && textOf(dirname(folder)) === null)).toEqual([]);
  });

  it('names every folder below it, and no file that is not there', () => {
    for (const page of pages) {
      const folder = dirname(page);
      const text = textOf(folder)!;
      const below = [...folders].filter((each) => dirname(each) === folder).map((each) => each.slice(folder.length + 1));
      // Of commands, the folder of a command has its name.
      const unnamed = below.filter((name) => !text.includes(`\`${name}`) && !text.includes(`/${name}`) && folder !== 'commands');
      expect(unnamed, page).toEqual([]);
      const named = [...text.matchAll(/`([\w./-]+\.(?:ts|astro|mjs))`/g)].map(([, path]) => path!);
      expect(
        named.filter((path) => !isThere(folder, path)),
        page,
      ).toEqual([]);
    }
  });
});
