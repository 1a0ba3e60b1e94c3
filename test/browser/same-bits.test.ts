import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { importedBy, SRC } from './imports.ts';

/**
 * Functions whose result ECMAScript leaves to the engine (ECMA-262, 21.3.2: "implementation-approximated"): Node and a browser differ in
 * the last bit of some. Square roots, products and whole powers are none of them in the engines that there are.
 */
const APPROXIMATED = /\bMath\.(?:a?(?:cos|sin|tan)h?|atan2|cbrt|expm?1?|hypot|log(?:10|1p|2)?|pow)\b/g;

function approximated(files: Iterable<string>): string[] {
  return [...files].flatMap((file) => {
    const code = readFileSync(file, 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, '');
    return [...code.matchAll(APPROXIMATED)].map(([name]) => `${file.slice(SRC.length + 1)}: ${name}`);
  });
}

test('what compares runs takes no function from the engine whose last bit is the engine’s', () => {
  const { files } = importedBy([join(SRC, 'browser/compare/engine.ts')]);
  expect(files.size).toBeGreaterThan(40);
  expect(approximated(files)).toEqual([]);
});

test('one that is taken would be found', () => {
  expect(approximated([join(SRC, 'statistics/exponential-rise.ts')])).toContain('statistics/exponential-rise.ts: Math.exp');
});
