import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, test } from 'vitest';

const SRC = join(import.meta.dirname, '../../src');
const STATEMENT = /^(?:import|export)\s+(?!type\b)(?:[^'";]*?\sfrom\s+)?'([^']+)'/gm;
const CALL = /\bimport\('([^']+)'\)/g;

/** Files and packages that a file imports when it runs; a list of types alone still runs the file. */
function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(STATEMENT), ...text.matchAll(CALL)].map(([, target]) => target!);
}

/** Everything that runs when an entry does: for each package or module of Node the file that wants it. */
function packagesOf(entries: readonly string[]): Map<string, string> {
  const [seen, queue] = [new Set(entries), [...entries]];
  const packages = new Map<string, string>();
  for (let file = queue.pop(); file !== undefined; file = queue.pop()) {
    for (const target of importsOf(file)) {
      const path = normalize(join(dirname(file), target));
      if (!target.startsWith('.')) packages.set(target, file.slice(SRC.length + 1));
      else if (!seen.has(path)) {
        if (!existsSync(path)) throw new Error(`${file} imports ${target}, which is not there`);
        seen.add(path);
        queue.push(path);
      }
    }
  }
  return packages;
}

describe('what runs in the reader’s browser', () => {
  const entries = globSync(join(SRC, 'browser/*.ts'));

  test('imports nothing of Node, and of the packages only those that are made for browsers, too', () => {
    expect(entries.length).toBeGreaterThan(3);
    const packages = packagesOf(entries);
    expect([...packages].filter(([name]) => name.startsWith('node:'))).toEqual([]);
    const known = ['minisearch', 'unitmath/es/UnitMath.js', 'vega', 'vega-interpreter', 'vega-lite'];
    expect([...packages].filter(([name]) => !known.includes(name))).toEqual([]);
  });

  test('a plot drawn to a PNG would be found out, at whatever distance', () => {
    expect(packagesOf([join(SRC, 'plots/draw.ts')]).get('node:url')).toBe('plots/png.ts');
  });
});
