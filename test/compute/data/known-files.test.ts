import { describe, expect, it } from 'vitest';
import { digestsJson, knownFiles } from '../../../src/compute/data/known-files.ts';
import type { DataFile } from '../../../src/compute/models/data-file.ts';

const file = (role: DataFile['role'], sha256: string, path: string | null, more: Partial<DataFile> = {}): DataFile => {
  const name = `${role}.csv`;
  return { role, what: `the ${role}`, name, path, sha256, bytes: 1, size: '1 B', rows: null, note: '', source: '', ...more };
};

const data = new Map([
  [
    'runs/a',
    [file('log', 'bb', null, { elsewhere: 'https://files.example/log.csv' }), file('cleaned', 'aa', 'runs/a/data/cleaned.csv')],
  ],
  ['attempts/t', [file('attempts', 'cc', 'devices/d/data/attempts.csv')]],
]);
const files = [
  { path: 'runs/a/data/cleaned.csv', blob: 'aa' },
  { path: 'runs/a/series.json', blob: 'dd', data: 'series as drawn' },
  { path: 'notes/n/ledger.json', blob: 'ee', data: 'ledger of every number' },
  { path: 'notes/n/plots/trace.svg', blob: 'ff' },
  { path: 'record-copies/c1/record.json', blob: 'gg', data: 'record copy' },
  { path: 'notes/n/n.zip', blob: 'hh', data: 'archive of its data' },
];
const titles = new Map([
  ['runs/a/', 'Run A'],
  ['devices/d/', 'Device D'],
]);
const known = knownFiles(data, files, titles, (subject) => (subject === 'attempts/t' ? 'devices/d/' : `${subject}/`));

describe('compute/data/known-files', () => {
  it('names every file of data once, with its page: offered, kept elsewhere, beside a page; drawings are none', () => {
    expect(known.map(({ sha256, what, of, path }) => [sha256, what, of.title, path])).toEqual([
      ['bb', 'the log', 'Run A', null],
      ['aa', 'the cleaned', 'Run A', 'runs/a/data/cleaned.csv'],
      ['cc', 'the attempts', 'Device D', 'devices/d/data/attempts.csv'],
      ['dd', 'series as drawn', 'Run A', 'runs/a/series.json'],
      ['ee', 'ledger of every number', 'notes/n/', 'notes/n/ledger.json'],
      ['gg', 'record copy', 'record-copies/c1/', 'record-copies/c1/record.json'],
      ['hh', 'archive of its data', 'notes/n/', 'notes/n/n.zip'],
    ]);
  });

  it('is JSON by digest, sorted, and a digest that several files have names them all', () => {
    const twice = [...known, { ...known[1]!, of: { title: 'Run B', path: 'runs/b/' }, path: 'runs/b/data/cleaned.csv' }];
    const json = digestsJson(twice);
    expect(Object.keys(json)).toEqual(['format', 'digests']);
    expect(Object.keys(json.digests)).toEqual(['aa', 'bb', 'cc', 'dd', 'ee', 'gg', 'hh']);
    expect(json.digests.aa!.map(({ of }) => of)).toEqual(['Run A', 'Run B']);
    expect(json.digests.bb).toEqual([
      { what: 'the log', of: 'Run A', page: 'runs/a/', path: null, elsewhere: 'https://files.example/log.csv' },
    ]);
  });
});
