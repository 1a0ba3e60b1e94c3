/** What the rooms of src offer each other, read from the imports and exports of their files. */
import { globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A name that a file exports. */
export interface Export {
  readonly file: string;
  readonly name: string;
  readonly isType: boolean;
}

export interface Doors {
  /** By room, a folder of src: what files of other rooms import from it, a line a file. */
  readonly lists: ReadonlyMap<string, string>;
  /**
   * Functions and constants that no other file imports. Types are left out: they name what an exported function takes and gives, and its
   * callers need not say their names.
   */
  readonly dead: readonly Export[];
}

/** Stands for every name of a module: `import * as`, and an import when it is needed. */
const ALL = '*';
const EXPORTED = /^export\s+(?:async\s+)?(const|let|function\*?|class|interface|type)\s+(\w+)/gm;
const IMPORTED = /(?:import|export)\s+(?:type\s+)?(?:\w+,\s*)?(?:\{([^}]*)\}|(\*)(?:\s+as\s+\w+)?)\s+from\s+'(\.[^']+)'/g;
const NEEDED = /import\(\s*'(\.[^']+)'\s*\)(?:\.(\w+))?/g;

interface Import {
  readonly from: string;
  readonly to: string;
  readonly name: string;
}

/** Reads src, and who imports from it in test. */
export function readDoors(root: string): Doors {
  const files = globSync('{*.mjs,src/*.mjs,{src,test}/**/*.{ts,astro}}', { cwd: root }).sort();
  const texts = new Map(files.map((file) => [file, readFileSync(join(root, file), 'utf8')]));
  const imports = [...texts].flatMap(([file, text]) => importsOf(file, text));
  const exports = [...texts].flatMap(([file, text]) => exportsOf(file, text));
  const lists = new Map<string, string>();
  for (const room of new Set(exports.map(({ file }) => roomOf(file)))) lists.set(room, listOf(room, exports, imports));
  return { lists, dead: exports.filter((each) => !each.isType && !imports.some((other) => takes(other, each))) };
}

function importsOf(file: string, text: string): Import[] {
  const to = (path: string) => join(dirname(file), path);
  const named = [...text.matchAll(IMPORTED)].flatMap(([, names = '', all, path = '']) =>
    (all === undefined ? namesOf(names) : [ALL]).map((name) => ({ from: file, to: to(path), name })),
  );
  const needed = [...text.matchAll(NEEDED)].map(([, path = '', name = ALL]) => ({ from: file, to: to(path), name }));
  return [...named, ...needed];
}

/** `a, type b, c as d` as a, b, c. */
function namesOf(list: string): string[] {
  return list
    .split(',')
    .map((item) =>
      item
        .trim()
        .replace(/^type\s+/, '')
        .replace(/\s+as\s+.*$/s, ''),
    )
    .filter((name) => name !== '');
}

function exportsOf(file: string, text: string): Export[] {
  if (!file.startsWith('src/') || !file.endsWith('.ts') || roomOf(file) === 'pages') return [];
  return [...text.matchAll(EXPORTED)].map(([, kind = '', name = '']) => ({
    file,
    name,
    isType: kind === 'interface' || kind === 'type',
  }));
}

function roomOf(file: string): string {
  const [, room = '', inside] = file.split('/');
  return inside === undefined ? '.' : room;
}

function takes(one: Import, { file, name }: Export): boolean {
  return one.to === file && (one.name === name || one.name === ALL);
}

function listOf(room: string, exports: readonly Export[], imports: readonly Import[]): string {
  const outside = imports.filter(({ from }) => from.startsWith('src/') && roomOf(from) !== room);
  const offered = exports.filter((each) => roomOf(each.file) === room && outside.some((other) => takes(other, each)));
  const byFile = Map.groupBy(offered, ({ file }) => file);
  return [...byFile]
    .map(
      ([file, names]) =>
        `${file}: ${names
          .map(({ name }) => name)
          .sort()
          .join(', ')}\n`,
    )
    .join('');
}
