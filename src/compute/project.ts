/** The project folder as stage 1 sees it: the author's files, and the paths below data/ by what they are. */
import { type Dirent, lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { compareText, error, type Problem } from '../problem.ts';
import type { DataFiles } from '../register/read.ts';
import type { ContentFile } from '../register/register.ts';

export interface Project {
  readonly content: readonly ContentFile[];
  /** Files of content/published/: published states. */
  readonly published: readonly ContentFile[];
  readonly problems: readonly Problem[];
}

/** Folders of content/ that commands write and the register does not read. */
const WRITTEN_BY_COMMANDS = ['published/', 'record-copies/'];
const STATE = /^published\/[^/]+\.json$/;

/** Reads every file of content/ that the author writes, and the published states. What cannot be read is a problem, not a crash. */
export function readProject(root: string): Project {
  const folder = join(root, 'content');
  const problems: Problem[] = [];
  const content: ContentFile[] = [];
  const published: ContentFile[] = [];
  for (const name of listFiles(folder, problems)) {
    const written = WRITTEN_BY_COMMANDS.some((prefix) => name.startsWith(prefix));
    if (written && !STATE.test(name)) continue;
    const path = `content/${name}`;
    const text = readText(join(folder, name), path, problems);
    if (text !== undefined) (written ? published : content).push({ path, text });
  }
  return { content, published, problems };
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
