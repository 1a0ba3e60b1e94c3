/** The project folder as stage 1 sees it: the author's files, and the paths below data/ by what they are. */
import { type Dirent, lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { compareText, error, type Problem } from '../../problem.ts';
import type { ContentFile, DataFiles } from '../../register/register.ts';

export interface Project {
  readonly content: readonly ContentFile[];
  /** Files of content/published/: published states. */
  readonly published: readonly ContentFile[];
  /** Files of content/record-copies/: record copies, and what does not belong there. */
  readonly copies: readonly ContentFile[];
  /** Files of content/archives/: where what was unpacked here came from. */
  readonly archives: readonly ContentFile[];
  /** Text of astro.config.mjs, which says the site's name and address; '' where there is none. */
  readonly config: string;
  readonly problems: readonly Problem[];
}

/** Folders of content/ that commands write and the register does not read. */
const PUBLISHED = 'published/';
const COPIES = 'record-copies/';
const ARCHIVES = 'archives/';
const STATE = /^(?:published|archives)\/[^/]+\.json$/;

/** Where a site states its name and address. */
export const CONFIG = 'astro.config.mjs';

/** A record copy holds some hundred kB a run; what is far larger is none, and would only fill the memory. */
const LARGEST_COPY = 64 * 2 ** 20;

/** Reads every file of content/: the author's, published states, record copies. What cannot be read is a problem, not a crash. */
export function readProject(root: string): Project {
  const folder = join(root, 'content');
  const problems: Problem[] = [];
  const project = {
    content: [] as ContentFile[],
    published: [] as ContentFile[],
    copies: [] as ContentFile[],
    archives: [] as ContentFile[],
  };
  for (const name of listFiles(folder, problems)) {
    const kind = kindOf(name);
    if ((kind === 'published' || kind === 'archives') && !STATE.test(name)) continue;
    const path = `content/${name}`;
    const text = (kind === 'copies' ? readExact : readText)(join(folder, name), path, problems);
    if (text !== undefined) project[kind].push({ path, text });
  }
  return { ...project, config: configOf(root), problems };
}

function kindOf(name: string): 'content' | 'published' | 'copies' | 'archives' {
  if (name.startsWith(PUBLISHED)) return 'published';
  if (name.startsWith(ARCHIVES)) return 'archives';
  return name.startsWith(COPIES) ? 'copies' : 'content';
}

/** A folder without one is no site yet, and can be checked all the same. */
function configOf(root: string): string {
  try {
    return readFileSync(join(root, CONFIG), 'utf8');
  } catch {
    return '';
  }
}

/** The text of a record copy, of which every byte counts. Other files are named and not read. */
function readExact(path: string, shown: string, problems: Problem[]): string | undefined {
  if (!path.endsWith('.json')) return '';
  const place = { file: shown, line: 1, column: 1 };
  const remedy = 'bring back what was committed, or remove it';
  if ((statSync(path, { throwIfNoEntry: false })?.size ?? 0) > LARGEST_COPY) {
    problems.push(error('record-copy', place, 'this file is larger than any record copy', { expected: '64 MB at most', remedy }));
    return undefined;
  }
  const text = readText(path, shown, problems);
  if (text === undefined || Buffer.from(text).equals(readFileSync(path))) return text;
  problems.push(error('record-copy', place, 'this record copy is not UTF-8 text', { remedy }));
  return undefined;
}

/** Files below content/ in one order. Hidden ones are nobody's; links are followed to files of the folder alone. */
function listFiles(folder: string, problems: Problem[], below = ''): string[] {
  let entries: Dirent[];
  try {
    entries = readdirSync(join(folder, below), { withFileTypes: true });
  } catch (thrown) {
    problems.push(unreadable(`content/${below}`.replace(/\/$/, ''), thrown));
    return [];
  }
  const shown = entries.filter(({ name }) => !name.startsWith('.')).sort((a, b) => compareText(a.name, b.name));
  return shown.flatMap((entry) => {
    const name = below + entry.name;
    if (entry.isDirectory()) return listFiles(folder, problems, `${name}/`);
    if (entry.isFile() || (entry.isSymbolicLink() && staysInside(folder, name, problems))) return [name];
    return [];
  });
}

function staysInside(folder: string, name: string, problems: Problem[]): boolean {
  try {
    const real = realpathSync(join(folder, name));
    if (real.startsWith(realpathSync(folder) + sep) && statSync(real).isFile()) return true;
    const place = { file: `content/${name}`, line: 1, column: 1 };
    const found = 'this symbolic link leads to no file of content/';
    problems.push(error('link-outside', place, found, { remedy: 'put the file itself here, or remove the link' }));
  } catch (thrown) {
    problems.push(unreadable(`content/${name}`, thrown));
  }
  return false;
}

function readText(path: string, shown: string, problems: Problem[]): string | undefined {
  try {
    // What is not UTF-8 goes on with marks in its place, so that the register can say where.
    return new TextDecoder('utf-8', { ignoreBOM: true }).decode(readFileSync(path));
  } catch (thrown) {
    problems.push(unreadable(shown, thrown));
    return undefined;
  }
}

function unreadable(file: string, thrown: unknown): Problem {
  const code = (thrown as NodeJS.ErrnoException).code ?? String(thrown);
  const found = code === 'ENOENT' ? 'there is nothing here' : `this cannot be read (${code})`;
  const remedy =
    file === 'content'
      ? 'a project has its files in content/: run the command in its folder'
      : 'check its permissions or remove it';
  return error('unreadable-file', { file, line: 1, column: 1 }, found, { remedy });
}

/** Looks paths below data/ up: what leaves the folder, also through a symbolic link, is `outside`. */
export function dataFiles(root: string): DataFiles {
  const folder = join(root, 'data');
  return {
    kind(path) {
      if (path.startsWith('/') || path.includes('\\') || path.split('/').includes('..')) return 'outside';
      try {
        const real = realpathSync(join(folder, path));
        if (real !== realpathSync(folder) && !real.startsWith(realpathSync(folder) + sep)) return 'outside';
        const found = statSync(real);
        // A pipe or device would keep the reader waiting for ever.
        return found.isDirectory() ? 'folder' : found.isFile() ? 'file' : 'missing';
      } catch {
        return leavesThroughLink(folder, path) ? 'outside' : 'missing';
      }
    },
  };
}

/** A dangling symbolic link is neither a file nor simply missing: it points somewhere that is not data. */
function leavesThroughLink(folder: string, path: string): boolean {
  try {
    return lstatSync(join(folder, path)).isSymbolicLink();
  } catch {
    return false;
  }
}
