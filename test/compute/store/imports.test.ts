import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { ENTRIES } from '../../../src/compute/store/code.ts';
import { openCode } from '../../../src/compute/store/imports.ts';

const SRC = fileURLToPath(new URL('../../../src/', import.meta.url));

/** Who imports whom below a folder of code when Node itself loads modules, by its own hook for resolving: pairs of paths. */
function loadedBy(folder: string, entries: readonly string[]): (readonly [from: string, to: string])[] {
  const script = `
    import { registerHooks } from 'node:module';
    const pairs = [];
    registerHooks({
      resolve(specifier, context, next) {
        const found = next(specifier, context);
        pairs.push([context.parentURL, found.url]);
        return found;
      },
    });
    for (const entry of process.argv.slice(1)) await import(entry);
    process.stdout.write(JSON.stringify(pairs), () => process.exit(0));`;
  const urls = entries.map((entry) => pathToFileURL(join(folder, entry)).href);
  const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script, ...urls], {
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  expect(stderr).toBe('');
  const own = pathToFileURL(folder).href;
  const pairs = (JSON.parse(stdout) as [string, string][]).filter((pair) => pair.every((url) => url.startsWith(own)));
  return pairs.map(([from, to]) => [from.slice(own.length), to.slice(own.length)] as const);
}

/** The entries and all that is loaded for them, sorted. */
function closure(entries: readonly string[], pairs: readonly (readonly [from: string, to: string])[]): string[] {
  const needed = new Set(entries);
  for (const path of needed) for (const [from, to] of pairs) if (from === path) needed.add(to);
  return [...needed].sort();
}

describe('compute/store/imports', () => {
  const kinds = Object.entries(ENTRIES).filter(([kind]) => kind !== 'all');
  const code = openCode(SRC);
  // Loaded only where there is work to do, and so by no import that Node sees.
  const pairs = loadedBy(SRC, [...kinds.flatMap(([, entries]) => entries), 'compute/chain.ts']);

  it.each(kinds)('names for %s exactly the files that Node loads', (_kind, entries) => {
    expect(code.neededBy(entries)).toEqual(closure(entries, pairs));
  });

  it('names for all of stage 1 whatever Node loads for any part of it', () => {
    const all = new Set(code.neededBy(ENTRIES.all));
    expect(pairs.flat().filter((path) => !all.has(path))).toEqual([]);
  });

  it('follows every form of import but those of types', () => {
    const folder = mkdtempSync(join(tmpdir(), 'soakproof-imports-'));
    const write = (path: string, text: string) => {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    };
    write(
      'a/entry.ts',
      [
        "import { join } from 'node:path';",
        "import type { T } from './type-only.ts';",
        "export type { U } from './type-only.ts';",
        'import {',
        '  type V,',
        '  value,',
        "} from '../b/several-lines.ts';",
        "import './effect.ts';",
        "export { x } from './again.ts';",
        "const later = () => import('./later.ts');",
        "const worker = new URL('./worker.ts', import.meta.url);",
        "const outside = new URL('../../package.json', import.meta.url);",
        "import table from './table.json' with { type: 'json' };",
        "const script = new URL('./script.sh', import.meta.url);",
      ].join('\n'),
    );
    for (const name of ['effect', 'again', 'later', 'worker']) write(`a/${name}.ts`, "import './entry.ts';");
    write('a/table.json', '{}');
    write('a/script.sh', '');
    write('b/several-lines.ts', "export * from './far.ts';");
    write('b/far.ts', '');
    expect(openCode(folder).neededBy(['a/entry.ts'])).toEqual([
      'a/again.ts',
      'a/effect.ts',
      'a/entry.ts',
      'a/later.ts',
      'a/script.sh',
      'a/table.json',
      'a/worker.ts',
      'b/far.ts',
      'b/several-lines.ts',
    ]);
    expect(() => openCode(folder).neededBy(['a/none.ts'])).toThrow('ENOENT');
    rmSync(folder, { recursive: true });
  });
});
