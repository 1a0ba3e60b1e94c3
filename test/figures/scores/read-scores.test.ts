import { describe, expect, test } from 'vitest';
import { readScores } from '../../../src/figures/scores/read-scores.ts';

const FILE = 'data/larch/scores.csv';
const read = (text: string, zone?: string) => readScores(new TextEncoder().encode(text), FILE, zone);

/** Problems as their first lines say them. */
function told(text: string, zone?: string): string[] {
  return read(text, zone).problems.map(
    ({ severity, rule, place, found, expected, remedy }) =>
      `${place.line}:${place.column} ${severity} ${rule}: ${[found, expected, remedy].filter(Boolean).join(' | ')}`,
  );
}

const HEAD = 'test,repeat,value,unit,better,start,end\n';

describe('figures/scores/read-scores', () => {
  test('rows become tests with repeats, in canonical units, with their windows', () => {
    const { scores, problems } = read(
      `${HEAD}"Grid, all cores",1,89.31,sweeps/s,higher,2026-03-11T15:00:00Z,2026-03-11T16:01:51+01:00\n"Grid, all cores",2,88.5,sweeps/s,higher,310 s,7 min\nSort,a,54.120,ms,lower,,\n`,
    );
    expect(problems).toEqual([]);
    expect(scores).toEqual({
      file: FILE,
      tests: [
        {
          id: 'grid-all-cores',
          title: 'Grid, all cores',
          unit: 'sweeps/s',
          better: 'higher',
          repeats: [
            {
              name: '1',
              value: 89.31,
              step: 0.01,
              line: 2,
              window: { start: { kind: 'instant', epoch: 1773241200 }, end: { kind: 'instant', epoch: 1773241311 } },
            },
            {
              name: '2',
              value: 88.5,
              step: 0.1,
              line: 3,
              window: { start: { kind: 'elapsed', seconds: 310 }, end: { kind: 'elapsed', seconds: 420 } },
            },
          ],
        },
        {
          id: 'sort',
          title: 'Sort',
          unit: 's',
          better: 'lower',
          repeats: [{ name: 'a', value: 0.05412, step: 1e-6, line: 4, window: null }],
        },
      ],
    });
  });

  test('repeats are numbered where the table does not', () => {
    const { scores, problems } = read('test,value,unit,better\ncopy,1,points,higher\ncopy,2,points,higher\n');
    expect(problems).toEqual([]);
    expect(scores.tests[0]!.repeats.map(({ name }) => name)).toEqual(['1', '2']);
  });

  test('decimal commas and semicolons', () => {
    expect(read('test;value;unit;better\ncopy;1,25;GB/s;higher\n').scores.tests[0]!.repeats[0]).toMatchObject({
      value: 1.25,
      step: 0.01,
    });
  });

  test('a cell that says that there was no result is kept as one', () => {
    const { scores, problems } = read('test,value,unit,better\ncopy,NA,points,higher\ncopy,,points,higher\ncopy,3,points,higher\n');
    expect(problems).toEqual([]);
    expect(scores.tests[0]!.repeats.map(({ value }) => value)).toEqual([Number.NaN, Number.NaN, 3]);
  });

  test('a civil time is in the zone of the log, and in none where the log declares none', () => {
    const row = 'test,value,unit,better,start,end\ncopy,1,points,higher,2026-07-01 12:00:00,2026-07-01 12:01:00\n';
    const window = (zone?: string) => read(row, zone).scores.tests[0]!.repeats[0]!.window;
    expect(window('Europe/Vienna')).toEqual({
      start: { kind: 'instant', epoch: 1782900000 },
      end: { kind: 'instant', epoch: 1782900060 },
    });
    expect(window()).toEqual({ start: { kind: 'local' }, end: { kind: 'local' } });
  });

  test('the direction is never guessed', () => {
    expect(told('test,value,unit\ncopy,1,s\n')).toEqual([
      '1:1 error score-column: no column `better` | test, value, unit and better, and where known repeat, start, end, clock, power, id | write `higher` or `lower` in every row: which direction is good is never guessed',
    ]);
    expect(told('test,value,unit,better\ncopy,1,s,\nsort,2,s,more\n')).toEqual([
      '2:10 error score-direction: no direction of `copy` | `higher` or `lower`: which is better',
      '3:10 error score-direction: the direction `more` of `sort` | `higher` or `lower`: which is better',
    ]);
    expect(told('test,value,unit,better\ncopy,1,s,lower\ncopy,2,s,higher\n')).toEqual([
      '3:10 error score-direction: `copy` is higher-is-better here | `lower` as above',
    ]);
  });

  test('ids: from words, from the table, and never two alike', () => {
    const own = read('test,id,value,unit,better\nÄ-Mix 2×,a-mix,1,points,higher\n');
    expect([own.problems, own.scores.tests[0]!.id]).toEqual([[], 'a-mix']);
    expect(read('test,value,unit,better\nÉtude №3,1,points,higher\n').scores.tests[0]!.id).toBe('etude-no3');
    expect(told('test,value,unit,better\nCopy 1,1,points,higher\ncopy-1,2,points,higher\n')).toEqual([
      '3:1 error score-id: `copy-1` has the id `copy-1`, as `Copy 1` in line 2 has | an id of its own | add a column `id` that tells the two apart',
    ]);
    expect(told('test,value,unit,better\n×××,1,points,higher\n')).toEqual([
      '2:1 error score-id: `×××` gives no id | a column `id`',
    ]);
    expect(told('test,id,value,unit,better\nCopy,Co py,1,points,higher\n')).toEqual([
      '2:6 error score-id: `Copy` gives no id | a column `id`',
    ]);
    expect(told('test,id,value,unit,better\nCopy,a,1,points,higher\nCopy,b,1,points,higher\n')).toEqual([
      '3:6 error score-id: `Copy` has the id `b` here | `a` as above',
    ]);
  });

  test('values, units, repeats', () => {
    expect(told('test,value,unit,better\ncopy,fast,points,higher\n')).toEqual([
      '2:6 error score-value: the value `fast` | a number, or an empty cell where there was no result',
    ]);
    expect(told('test,value,unit,better\ncopy,1,,higher\nsort,1,°C,higher\ncopy,1,s,lower\ncopy,1,ms,lower\n')).toEqual([
      '2:8 error score-unit: no unit of `copy` | a unit, `points`, or `1`',
      '3:8 error score-unit: the unit `°C` | a unit that counts from zero, or a word',
      '5:8 error score-unit: `copy` is in `ms` here | `s` as above',
    ]);
    expect(told('test,repeat,value,unit,better\ncopy,1,5,points,higher\ncopy,1,6,points,higher\n,3,6,points,higher\n')).toEqual([
      '3:6 error score-repeat: repeat 1 of `copy` a second time | one row a repeat: line 2 has it',
      '4:1 error score-test: a row without the name of its test | a name',
    ]);
  });

  test('windows', () => {
    const row = (start: string, end: string) => `test,value,unit,better,start,end\ncopy,1,points,higher,${start},${end}\n`;
    expect(told(row('2026-03-11T15:00:00Z', '2026-03-11T14:00:00Z'))).toEqual([
      '2:43 error score-window: the repeat ends before it starts | an `end` after its `start`',
    ]);
    expect(told(row('10 s', '2026-03-11T14:00:00Z'))).toEqual([
      '2:27 error score-window: `start` and `end` are on two scales | one way of telling time',
    ]);
    expect(told(row('10 s', ''))).toEqual(['2:27 error score-window: no `end` | both `start` and `end`, or neither']);
    expect(told(row('310', '320 s'))).toEqual([
      '2:22 error score-window: the time `310` | a date and clock time such as 2026-03-14T11:00:00Z, or a time since the first row such as 310 s',
    ]);
    expect(told('test,value,unit,better,start\ncopy,1,points,higher,3 s\n')).toEqual([
      '1:1 error score-window: a column `start` without `end` | both, or neither',
    ]);
  });

  test('a column that is nearly one that is read is told', () => {
    expect(told('test,value,unit,better,Repeats\ncopy,1,points,higher,1\n')).toEqual([
      '1:1 warning score-column: the column `Repeats` is not read | did you mean `repeat`?',
    ]);
    expect(told('test,value,unit,Betters\ncopy,1,points,higher\n')[0]).toContain('rename `Betters` to `better`');
    expect(told('test,value,unit,better,note\ncopy,1,points,higher,warm\n')).toEqual([]);
  });

  test('an empty file, and rows that do not fit, are located and never thrown', () => {
    expect(told('')[0]).toMatch(/^1:1 error empty-file/);
    expect(told('test,value,unit,better\ncopy,1,points\n')).toEqual([expect.stringMatching(/^2:1 error field-count/)]);
  });
});
