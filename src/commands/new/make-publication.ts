/** Makes a publication in a folder: writes what is not there, and nothing over what is. */
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { toolFolder } from '../../compute/store/places.ts';
import { idFromWords } from '../../register/values/names.ts';
import { addFiles, type Output } from '../add/add-files.ts';
import { noteSkeleton } from './note-skeleton.ts';
import { packageText, publicationFiles } from './publication-files.ts';

export interface NewPublication {
  readonly root: string;
  /** Logs and tables, as paths of the machine. */
  readonly logs: readonly string[];
  readonly commands: readonly string[];
}

/** The exit code: 0 where all was written, 1 where a file could not be read or added. */
export function makePublication({ root, logs, commands }: NewPublication, output: Output): 0 | 1 {
  const missing = logs.filter((path) => !statSync(path, { throwIfNoEntry: false })?.isFile());
  for (const path of missing) output.err(`There is no file ${path}.\n`);
  if (missing.length > 0) return 1;
  mkdirSync(root, { recursive: true });
  const before = textOf(join(root, 'package.json'));
  try {
    const text = packageText(before, { name: idFromWords(basename(root)) || 'publication', commands, ...toolOf(root) });
    if (text !== before) writeFileSync(join(root, 'package.json'), text);
  } catch {
    output.err('package.json is there, and is no JSON object. Mend it or move it away, then run the same command again.\n');
    return 1;
  }
  for (const [path, text] of publicationFiles()) writeMissing(root, path, text);
  output.out(`${relative('.', root) || 'This folder'} is a publication: examples/ has a file of each kind to copy from.\n`);
  return logs.length === 0 ? 0 : addLogs(root, logs, output);
}

/** Puts logs below data/, in the folder that they come from by name, writes their runs, and a note that shows them. */
function addLogs(root: string, logs: readonly string[], output: Output): 0 | 1 {
  const code = addFiles(
    root,
    logs.map((path) => placed(root, path)),
    output,
  );
  const runs = readdirSync(join(root, 'content', 'runs')).flatMap((name) => (name.endsWith('.md') ? [name.slice(0, -3)] : []));
  const date = runs.map((id) => /^date: (\d{4}-\d{2}-\d{2})/m.exec(textOf(join(root, 'content', 'runs', `${id}.md`)) ?? '')?.[1]);
  const last = date
    .filter((each) => each !== undefined)
    .sort()
    .at(-1);
  if (runs.length > 0 && writeMissing(root, 'content/notes/first-note.md', noteSkeleton(runs.sort(), last)))
    output.out('wrote content/notes/first-note.md; a draft that names the runs\n');
  return code;
}

/** The path below data/ of a log: its own where it is there already, else that of a copy. */
function placed(root: string, path: string): string {
  const data = join(root, 'data');
  const from = resolve(path);
  if (from.startsWith(data + sep)) return relative(root, from);
  const folder = idFromWords(basename(dirname(from))) || 'logs';
  const to = join('data', folder, basename(from));
  mkdirSync(join(root, 'data', folder), { recursive: true });
  if (!existsSync(join(root, to))) copyFileSync(from, join(root, to));
  return to;
}

function writeMissing(root: string, path: string, text: string): boolean {
  const target = join(root, path);
  if (existsSync(target)) return false;
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, text, { flag: 'wx', ...(text.startsWith('#!') ? { mode: 0o755 } : {}) });
  return true;
}

function textOf(path: string): string | undefined {
  return existsSync(path) ? readFileSync(path, 'utf8') : undefined;
}

/** How a publication depends on the tool that makes it: as the folder does in which that is installed, else by its packed file or version. */
function toolOf(root: string): { readonly tool: string; readonly allowScripts: Readonly<Record<string, boolean>> } {
  const { version, allowScripts } = JSON.parse(readFileSync(join(toolFolder(), 'package.json'), 'utf8'));
  const [above, name] = [resolve(toolFolder(), '..'), 'package.json'];
  const installed = basename(above) === 'node_modules' ? textOf(join(above, '..', name)) : undefined;
  const said = (JSON.parse(installed ?? '{}') as { dependencies?: { soakproof?: string } }).dependencies?.soakproof;
  const file = said?.startsWith('file:')
    ? resolve(above, '..', said.slice('file:'.length))
    : resolve(toolFolder(), `soakproof-${version}.tgz`);
  const isFile = said === undefined ? existsSync(file) : said.startsWith('file:');
  return { tool: isFile ? `file:${relative(root, file).split(sep).join('/')}` : (said ?? version), allowScripts };
}
