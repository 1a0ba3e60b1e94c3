/** Every rule by which a problem is told is asked for by name in a test: one that no test produces could say anything. */
import { globSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
const texts = (pattern: string) =>
  globSync(pattern, { cwd: ROOT })
    .map((path) => join(ROOT, path))
    .filter((path) => statSync(path).isFile() && statSync(path).size < 2 ** 20)
    .map((path) => readFileSync(path, 'utf8'));

/** What no author can bring about: a request that is checked gives the chart library nothing to warn of. It guards against a later version of it. */
const UNREACHABLE = [['plot', 'warning'].join('-')];

/** As code tells a problem: by a call with the rule as its first word, or with the rule named. */
const TOLD = /\b(?:error|warning|weight)\(\s*'([a-z0-9]+(?:-[a-z0-9]+)*)'|\brule: '([a-z0-9-]+)'/g;

test('every rule is named in a test', () => {
  const rules = new Set(
    texts('src/**/*.ts').flatMap((text) => [...text.matchAll(TOLD)].map(([, called, named]) => called ?? named!)),
  );
  expect(rules.size).toBeGreaterThan(180);
  // Between quotes or brackets, before a colon, or as the folder of its cases: `image` and `gap` are words of sentences, too.
  const named = texts('test/**/*.{ts,txt,json,md}').flatMap((text) => [
    ...text.matchAll(/['"`[ ]([a-z0-9]+(?:-[a-z0-9]+)*)['"`\]:]/g),
  ]);
  const folders = globSync('test/**/cases/*', { cwd: ROOT }).map((path) => path.split(/[\\/]/).at(-1)!.replace(/\..*$/, ''));
  const words = new Set([...named.map(([, word]) => word!), ...folders]);
  const lost = [...rules].filter((rule) => !words.has(rule));
  expect(lost).toEqual(UNREACHABLE);
});
