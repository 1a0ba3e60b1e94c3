/** Which files of the code a module needs: its own, and all that it imports, however far away. Types alone are no need: nothing is left of them at run time. */
import { readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { compareText } from '../../problem.ts';

/** Paths in quotes of `import … from`, `export … from`, `import '…'`; of `import('…')`; of a worker or file beside the module. */
const SPECIFIERS = [
  /^(?:import|export)\s+(?!type\s)(?:[^'";]*?\sfrom\s+)?'(\.{1,2}\/[^']+)'/gm,
  /\bimport\('(\.{1,2}\/[^']+)'\)/g,
  /\bnew URL\('(\.{1,2}\/[^']+\.(?:ts|json|sh))', import\.meta\.url\)/g,
];

/** Files below a folder of code, read once: their paths are relative to it, with forward slashes. */
export interface Code {
  /** The entries and all that they need, sorted. Throws where a file is missing. */
  neededBy(entries: readonly string[]): readonly string[];
  text(path: string): string;
}

/** The code of a folder. Imports that lead out of it (packages, package.json) are left out. */
export function openCode(folder: string): Code {
  const texts = new Map<string, string>();
  const imports = new Map<string, readonly string[]>();
  const text = (path: string) => known(texts, path, () => readFileSync(join(folder, path), 'utf8'));
  const importsOf = (path: string) => known(imports, path, () => (path.endsWith('.ts') ? importedBy(path, text(path)) : []));
  return {
    text,
    neededBy(entries) {
      const needed = new Set<string>(entries);
      // A set hands out what is added while it is walked through.
      for (const path of needed) for (const imported of importsOf(path)) needed.add(imported);
      return [...needed].sort(compareText);
    },
  };
}

function importedBy(path: string, text: string): string[] {
  const named = SPECIFIERS.flatMap((pattern) => [...text.matchAll(pattern)].map((match) => match[1]!));
  return named
    .map((specifier) =>
      relative('.', join(dirname(path), specifier))
        .split(sep)
        .join('/'),
    )
    .filter((imported) => !imported.startsWith('../'));
}

function known<T>(cache: Map<string, T>, path: string, make: () => T): T {
  const found = cache.get(path);
  if (found !== undefined) return found;
  const made = make();
  cache.set(path, made);
  return made;
}
