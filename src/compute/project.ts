/** The project folder as stage 1 sees it: the author's files, and the paths below data/ by what they are. */
import { lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
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
  for (const name of listFiles(folder)) {
    const written = WRITTEN_BY_COMMANDS.some((prefix) => name.startsWith(prefix));
    if (written && !STATE.test(name)) continue;
    const path = `content/${name}`;
    const text = readText(join(folder, name), path, problems);
    if (text !== undefined) (written ? published : content).push({ path, text });
  }
  return { content, published, problems };
}

function listFiles(folder: string): string[] {
  let found: { name: string; parentPath: string; isDirectory(): boolean }[];
  try {
    found = readdirSync(folder, { recursive: true, withFileTypes: true });
  } catch {
    return [];
  }
  const names = found
    .filter((entry) => !entry.isDirectory() && !entry.name.startsWith('.'))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'));
  return names.sort(compareText);
}

function readText(path: string, shown: string, problems: Problem[]): string | undefined {
  const place = { file: shown, line: 1, column: 1 };
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(path));
  } catch (thrown) {
    if (thrown instanceof TypeError) {
      problems.push(error('not-utf8', place, 'this file is not valid UTF-8', { remedy: 'save it again as UTF-8' }));
    } else {
      const reason = (thrown as NodeJS.ErrnoException).code ?? String(thrown);
      problems.push(
        error('unreadable-file', place, `this file cannot be read (${reason})`, { remedy: 'check its permissions or remove it' }),
      );
    }
    return undefined;
  }
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
        return statSync(real).isDirectory() ? 'folder' : 'file';
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
