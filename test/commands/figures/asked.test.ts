import { expect, it } from 'vitest';
import { together } from '../../../src/commands/figures/asked.ts';
import type { Run } from '../../../src/register/register.ts';

it('commands/figures/asked: runs that share an alias in two notes both stay, by their ids; one run asked for twice is one', () => {
  const run = (id: string) => ({ id }) as Run;
  const of = (...runs: [string, Run][]) => ({ runs: new Map(runs), comparisons: new Map(), attempts: new Map() });
  const { runs } = together([of(['slow', run('a')], ['fast', run('b')]), of(['slow', run('c')], ['fast', run('b')])]);
  expect([...runs].map(([name, { id }]) => [name, id])).toEqual([
    ['a', 'a'],
    ['fast', 'b'],
    ['c', 'c'],
  ]);
});
