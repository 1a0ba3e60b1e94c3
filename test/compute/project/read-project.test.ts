import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dataFiles, readProject } from '../../../src/compute/project/read-project.ts';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-project-'));
  mkdirSync(join(root, 'content', 'runs'), { recursive: true });
  mkdirSync(join(root, 'content', 'published'), { recursive: true });
  mkdirSync(join(root, 'data', 'bench'), { recursive: true });
});
afterEach(() => rmSync(root, { recursive: true }));

describe('compute/project/read-project: readProject', () => {
  it('reads what authors write, in one order, and leaves out what commands write', () => {
    writeFileSync(join(root, 'content', 'runs', 'b.md'), 'B');
    writeFileSync(join(root, 'content', 'runs', 'a.md'), 'A');
    writeFileSync(join(root, 'content', 'published', 'x.json'), '{}');
    mkdirSync(join(root, 'content', 'archives'));
    writeFileSync(join(root, 'content', 'archives', 'x.json'), '{}');
    writeFileSync(join(root, 'content', 'runs', '.hidden'), '');
    expect(readProject(root)).toEqual({
      content: [
        { path: 'content/runs/a.md', text: 'A' },
        { path: 'content/runs/b.md', text: 'B' },
      ],
      published: [{ path: 'content/published/x.json', text: '{}' }],
      copies: [],
      archives: [{ path: 'content/archives/x.json', text: '{}' }],
      config: '',
      problems: [],
    });
  });

  it('reads record copies to the byte, and names what lies beside them', () => {
    const folder = join(root, 'content', 'record-copies');
    mkdirSync(join(folder, 'old'), { recursive: true });
    writeFileSync(join(folder, 'a.json'), '{"a":"\uFFFD"}');
    writeFileSync(join(folder, 'b.json'), Buffer.from([0x7b, 0xff, 0x7d]));
    writeFileSync(join(folder, 'old', 'c.txt'), 'not read');
    writeFileSync(join(folder, 'd.json'), Buffer.alloc(64 * 2 ** 20 + 1, 0x20));
    const { copies, problems } = readProject(root);
    expect(copies).toEqual([
      { path: 'content/record-copies/a.json', text: '{"a":"\uFFFD"}' },
      { path: 'content/record-copies/old/c.txt', text: '' },
    ]);
    expect(problems.map(({ rule, place, found }) => [rule, place.file, found])).toEqual([
      ['record-copy', 'content/record-copies/b.json', 'this record copy is not UTF-8 text'],
      ['record-copy', 'content/record-copies/d.json', 'this file is larger than any record copy'],
    ]);
  });

  it('says so where there is no folder, instead of taking the project for an empty one', () => {
    rmSync(join(root, 'content'), { recursive: true });
    const { content, problems } = readProject(root);
    expect(content).toEqual([]);
    expect(problems).toMatchObject([
      { severity: 'error', rule: 'unreadable-file', place: { file: 'content', line: 1, column: 1 } },
    ]);
  });

  it('follows a link to a file of content/ and no other', () => {
    writeFileSync(join(root, 'content', 'runs', 'a.md'), 'A');
    writeFileSync(join(root, 'secret.md'), 'S');
    symlinkSync(join(root, 'content', 'runs', 'a.md'), join(root, 'content', 'runs', 'b.md'));
    symlinkSync(join(root, 'secret.md'), join(root, 'content', 'runs', 'c.md'));
    symlinkSync('/etc', join(root, 'content', 'etc'));
    mkdirSync(join(root, 'content', '.editor'));
    writeFileSync(join(root, 'content', '.editor', 'x.md'), '');
    const { content, problems } = readProject(root);
    expect(content.map(({ path }) => path)).toEqual(['content/runs/a.md', 'content/runs/b.md']);
    expect(problems.map(({ rule, place }) => [rule, place.file])).toEqual([
      ['link-outside', 'content/etc'],
      ['link-outside', 'content/runs/c.md'],
    ]);
  });

  it('locates a file that cannot be read instead of failing', () => {
    symlinkSync(join(root, 'nowhere'), join(root, 'content', 'runs', 'gone.md'));
    const { content, problems } = readProject(root);
    expect(content).toEqual([]);
    expect(problems).toMatchObject([
      { severity: 'error', rule: 'unreadable-file', place: { file: 'content/runs/gone.md', line: 1, column: 1 } },
    ]);
  });
});

describe('compute/project/read-project: dataFiles', () => {
  it('tells files, folders, what is missing, and what leaves data/', () => {
    writeFileSync(join(root, 'data', 'bench', 'a.csv'), '');
    writeFileSync(join(root, 'secret.csv'), '');
    symlinkSync(join(root, 'secret.csv'), join(root, 'data', 'link.csv'));
    symlinkSync(join(root, 'data', 'bench'), join(root, 'data', 'alias'));
    symlinkSync(root, join(root, 'data', 'up'));
    symlinkSync('/no/such/place', join(root, 'data', 'dangling.csv'));
    const data = dataFiles(root);
    expect(data.kind('bench/a.csv')).toBe('file');
    expect(data.kind('alias/a.csv')).toBe('file');
    expect(data.kind('bench')).toBe('folder');
    expect(data.kind('bench/b.csv')).toBe('missing');
    expect(data.kind('../secret.csv')).toBe('outside');
    expect(data.kind('bench/../../secret.csv')).toBe('outside');
    expect(data.kind('/etc/hosts')).toBe('outside');
    expect(data.kind('link.csv')).toBe('outside');
    expect(data.kind('up/secret.csv')).toBe('outside');
    expect(data.kind('dangling.csv')).toBe('outside');
  });
});
