/** What a kind of chart has besides its planner, which `tsc` asks for: a folder, a test, its name in both guides. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { PLOT_KINDS } from '../../src/register/requests.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const textOf = (path: string) => readFileSync(join(ROOT, path), 'utf8');
/** The rows of the guide's table of directives that say which charts there are. */
const rows = textOf('src/guide/numbers-in-words.md')
  .split('\n')
  .filter((line) => line.startsWith('| `::plot{'))
  .join('\n');

test.each(PLOT_KINDS)('plots: %s has a folder, a test, and its name in the guide and in the page of the room', (kind) => {
  expect(existsSync(join(ROOT, 'src/plots', kind, 'plan.ts')) || existsSync(join(ROOT, 'src/plots', kind, 'of-logs.ts'))).toBe(
    true,
  );
  expect(['plan.test.ts', 'of-logs.test.ts'].some((name) => existsSync(join(ROOT, 'test/plots', kind, name)))).toBe(true);
  expect(rows).toMatch(new RegExp(`\`${kind}\`|kind=${kind} `));
  expect(textOf('src/plots/README.md')).toContain(`\`${kind}\``);
});
