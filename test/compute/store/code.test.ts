import { appendFileSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { type CodeDigests, codeDigests } from '../../../src/compute/store/code.ts';

const PROJECT = fileURLToPath(new URL('../../..', import.meta.url));
let copy: string;
let before: CodeDigests;

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'soakproof-code-'));
  mkdirSync(join(copy, 'src'));
  for (const path of ['src', 'package-lock.json']) cpSync(join(PROJECT, path), join(copy, path), { recursive: true });
  before = codeDigests(join(copy, 'src'));
});

afterAll(() => rmSync(copy, { recursive: true, force: true }));

/** Kinds of results that a change of one file makes anew. */
function madeAnewBy(path: string): string[] {
  const last = codeDigests(join(copy, 'src'));
  appendFileSync(join(copy, 'src', path), '\n');
  const now = codeDigests(join(copy, 'src'));
  return Object.keys(now).filter((kind) => now[kind as keyof CodeDigests] !== last[kind as keyof CodeDigests]);
}

/** Plots and series read a log again where it is not stored. */
const OF_RUNS = ['run', 'series', 'plots', 'compared', 'figures', 'all'];

describe('compute/store/code', () => {
  it('gives the same digests wherever the code lies', () => {
    expect(codeDigests()).toEqual(before);
  });

  it('works without a lock file: by what npm installed, or by what is asked for, and tells other packages apart', () => {
    const folder = mkdtempSync(join(inject('scratch'), 'no-lock-'));
    cpSync(join(copy, 'src'), join(folder, 'src'), { recursive: true });
    const all = () => codeDigests(join(folder, 'src')).all;
    const bare = all();
    writeFileSync(join(folder, 'package.json'), '{ "dependencies": { "vega": "6.4.0" } }');
    const asked = all();
    mkdirSync(join(folder, 'node_modules'));
    writeFileSync(join(folder, 'node_modules', '.package-lock.json'), '{ "packages": {} }');
    expect(new Set([bare, asked, all(), before.all]).size).toBe(4);
  });

  it('makes anew what hangs on a changed file, and nothing else', () => {
    expect(madeAnewBy('compute/steps/runs/flag-warnings.ts')).toEqual(OF_RUNS);
    expect(madeAnewBy('compute/steps/runs/range-warnings.ts')).toEqual(OF_RUNS);
    expect(madeAnewBy('figures/stability/ladder.ts')).toContain('attempts');
    expect(madeAnewBy('figures/stability/ladder.ts')).not.toContain('comparisons');
    expect(madeAnewBy('words/write.ts')).toEqual(['words', 'all']);
    expect(madeAnewBy('compute/comparison/fairness.ts')).not.toContain('run');
    expect(madeAnewBy('quantities/print.ts')).toEqual(expect.arrayContaining(['run', 'words', 'plots', 'compared', 'all']));
    expect(madeAnewBy('components/Caution.astro')).toEqual([]);
  });
});
