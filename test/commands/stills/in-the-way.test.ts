import { expect, it } from 'vitest';
import { inTheWay } from '../../../src/commands/stills/in-the-way.ts';
import { error, warning } from '../../../src/problem.ts';

it('draws a script’s pictures whatever is wrong with other drafts, and none where its own note, a run or the project is wrong', () => {
  const at = (file: string) => ({ file, line: 1, column: 1 });
  const own = ['content/scripts/short.md', 'content/notes/spoken.md'];
  const others = ['content/scripts/other.md', 'content/notes/other.md'];
  const ground = ['content/runs/fast.md', 'astro.config.mjs'];
  const problems = [...own, ...others, ...ground].map((file) => error('x', at(file), 'wrong'));
  problems.push(warning('x', at(own[0]!), 'odd'));
  expect(inTheWay(problems, own).map(({ place }) => place.file)).toEqual([...own, ...ground]);
});
