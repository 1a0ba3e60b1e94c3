import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openMemory } from '../../../src/compute/store/memo.ts';
import { openStore, type Store } from '../../../src/compute/store/store.ts';

let root: string;
let store: Store;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-memory-'));
  store = openStore(root);
});
afterEach(() => rmSync(root, { recursive: true }));

it('makes anew what any input has changed of, and nothing else', () => {
  const made: string[] = [];
  const ask = (code: string, what: string, inputs: unknown) =>
    openMemory(store, code).of(what, inputs, () => {
      made.push(`${code} ${what}`);
      return { code, what };
    });
  expect(ask('a', 'one', [1])).toEqual({ code: 'a', what: 'one' });
  expect(ask('a', 'one', [1])).toEqual({ code: 'a', what: 'one' });
  expect(made).toEqual(['a one']);
  ask('b', 'one', [1]);
  ask('a', 'two', [1]);
  ask('a', 'one', [2]);
  expect(made).toEqual(['a one', 'b one', 'a two', 'a one']);
});

it('makes anew what has lost a blob, and names the keys of all that was asked for', () => {
  let made = 0;
  const make = () => {
    made += 1;
    return store.keep('text');
  };
  const memory = openMemory(store, 'code');
  const blob = memory.of('text', null, make, (text) => [text]);
  memory.of('text', null, make, (text) => [text]);
  expect(made).toBe(1);
  writeFileSync(store.pathOf(blob), 'damaged');
  memory.of('text', null, make, (text) => [text]);
  expect(made).toBe(2);
  store.prune(new Set(memory.keys), new Set([blob]));
  memory.of('text', null, make, (text) => [text]);
  expect(made).toBe(2);
});
