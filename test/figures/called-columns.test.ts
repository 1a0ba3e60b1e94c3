import { describe, expect, it } from 'vitest';
import { mappingLines } from '../../src/figures/mapping-lines.ts';
import { proposeMapping } from '../../src/figures/propose-mapping.ts';
import { readScores } from '../../src/figures/scores/read-scores.ts';
import { readAttempts } from '../../src/figures/stability/read-attempts.ts';
import { readSurface } from '../../src/figures/surface/read-surface.ts';
import { readTable } from '../../src/intake/table.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const PLACE = { file: 'content/runs/x.md', line: 9, column: 3 };
const SCORES =
  'test,value,unit,better,Try,MHz\nCopy,10,MB/s,higher,1,1900\nCopy,11,MB/s,higher,2,1900\nCopy,12,MB/s,higher,1,2100\n';

describe('figures/called-columns', () => {
  it('is an error where rows of several settings would be pooled, and is none where `rows` tells whose are read', () => {
    const { problems } = readScores(bytes(SCORES), 'data/s.csv');
    expect(problems.filter(({ rule }) => rule === 'table-rows')).toMatchObject([
      { severity: 'error', remedy: expect.stringContaining('`rows:` and below it `MHz: 1900`') },
    ]);
    const rows = { column: 'MHz', value: '1900', place: PLACE };
    const told = readScores(bytes(SCORES), 'data/s.csv', undefined, { rows });
    expect(told.problems).toEqual([]);
    expect(told.scores.tests[0]!.repeats).toHaveLength(2);
    const spots =
      'spot,part,material,contact,reading [°C],Run\nLid,Case,steel,touched,40,a\nSide,Case,steel,touched,41,a\nLid,Case,steel,touched,42,b\n';
    expect(readSurface(bytes(spots), 'data/s.csv').problems.map(({ rule }) => rule)).toContain('table-rows');
  });

  it('warns only where each row has its own value, as of a voltage that was measured', () => {
    const { problems, scores } = readScores(
      bytes('test,value,unit,better,voltage\nCopy,1,s,lower,0.91\nCopy,2,s,lower,0.92\n'),
      'data/s.csv',
    );
    expect(problems).toMatchObject([{ severity: 'warning', rule: 'table-rows' }]);
    expect(scores.tests[0]!.repeats).toHaveLength(2);
  });

  it('does not take an offset of every row where a column may hold it, and proposes that column', () => {
    const tried = 'clock [GHz],mV offset,outcome\n2.4,-50,passed\n2.6,-50,no boot\n';
    const { problems } = readAttempts(bytes(tried), 'data/a.csv', 'no-1', undefined, { everyRow: { voltage_offset: '0 mV' } });
    expect(problems).toMatchObject(
      expect.arrayContaining([expect.objectContaining({ severity: 'error', rule: 'table-every-row' })]),
    );
    for (const head of ['mV offset', 'Undervolt (mV)', 'core mV', 'Offset'])
      expect(
        mappingLines(proposeMapping(readTable(bytes(tried.replace('mV offset', head)), 'data/a.csv'), 'attempts')).join('\n'),
      ).toMatch(/^columns:\n {2}voltage_offset: /);
  });

  it('knows how people number repeats, and a column of clocks as that of settings', () => {
    for (const head of ['Try', 'attempt no', 'run #', 'iteration']) {
      const lines = mappingLines(proposeMapping(readTable(bytes(SCORES.replace('Try', head)), 'data/s.csv'), 'scores')).join('\n');
      expect(lines).toMatch(/repeat: /);
      expect(lines).toMatch(/rows:\n {2}MHz: 1900/);
    }
  });
});
