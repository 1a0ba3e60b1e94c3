/** What runs when a file of src/ does: the files that it imports at any distance, and their packages. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

export const SRC = join(import.meta.dirname, '../../src');
const STATEMENT = /^(?:import|export)\s+(?!type\b)(?:[^'";]*?\sfrom\s+)?'([^']+)'/gm;
const CALL = /\bimport\('([^']+)'\)/g;

export interface Imported {
  readonly files: ReadonlySet<string>;
  /** For each package or module of Node the file below src/ that wants it. */
  readonly packages: ReadonlyMap<string, string>;
}

/** Files and packages that a file imports when it runs; a list of types alone still runs the file. */
function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(STATEMENT), ...text.matchAll(CALL)].map(([, target]) => target!);
}

/** Everything that runs when an entry does. */
export function importedBy(entries: readonly string[]): Imported {
  const [files, queue] = [new Set(entries), [...entries]];
  const packages = new Map<string, string>();
  for (let file = queue.pop(); file !== undefined; file = queue.pop()) {
    for (const target of importsOf(file)) {
      const path = normalize(join(dirname(file), target));
      if (!target.startsWith('.')) packages.set(target, file.slice(SRC.length + 1));
      else if (!files.has(path)) {
        if (!existsSync(path)) throw new Error(`${file} imports ${target}, which is not there`);
        files.add(path);
        queue.push(path);
      }
    }
  }
  return { files, packages };
}
