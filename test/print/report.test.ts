import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasErrors, report } from '../../src/print/report.ts';
import { error, warning } from '../../src/problem.ts';

let root: string;
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-report-'));
  writeFileSync(join(root, 'note.md'), 'first\nthe chip reached 74 °C\n');
});
afterAll(() => rmSync(root, { recursive: true }));

describe('print/report', () => {
  it('says nothing where there is nothing to say', () => {
    expect(report(root, [])).toBe('');
  });

  it('prints place and sentence first, then the line, a mark under the words, what was expected, what to do', () => {
    const place = { file: 'note.md', line: 2, column: 18, endLine: 2, endColumn: 23 };
    const problem = error('stated-number', place, 'stated 74 °C, the data says 71.3 °C', {
      expected: '71 °C',
      remedy: 'write "71 degrees"',
    });
    expect(report(root, [problem])).toBe(
      [
        'note.md:2:18: error: stated 74 °C, the data says 71.3 °C [stated-number]',
        '> 2 | the chip reached 74 °C',
        '    |                  ^^^^^',
        '  expected: 71 °C',
        '  to do: write "71 degrees"',
        '',
        '1 error, 0 warnings',
        '',
      ].join('\n'),
    );
  });

  it('tells problems with a weight in one list at the end, the weightiest first', () => {
    const at = (column: number) => ({ file: 'note.md', line: 2, column });
    const narrow = (column: number, found: string, weight: number) => ({
      ...warning('stated-narrow', at(column), found, { remedy: 'say less' }),
      weight,
    });
    const text = report(root, [narrow(1, 'a', 0.1), error('x', at(2), 'b'), narrow(3, 'c', 0.4)]);
    expect(text.split('\n').filter((line) => !/^[> ]+\d* \|/.test(line))).toEqual([
      'note.md:2:2: error: b [x]',
      '',
      'True of the data, but within its uncertainty of being false, the least certain first:',
      'note.md:2:3: warning: c [stated-narrow]',
      '    say less',
      'note.md:2:1: warning: a [stated-narrow]',
      '    say less',
      '',
      '1 error, 2 warnings',
      '',
    ]);
  });

  it('shows of a very long line the part around the mark', () => {
    const line = `${'so the chip warmed '.repeat(40)}and reached 74 °C at once${', and so on'.repeat(40)}`;
    writeFileSync(join(root, 'long.md'), `one\n${line}\n`);
    const column = line.indexOf('74 °C') + 1;
    const place = { file: 'long.md', line: 2, column, endLine: 2, endColumn: column + 5 };
    const [, shown = '', mark = '', end] = report(root, [error('stated-number', place, 'stated 74 °C')]).split('\n');
    expect(shown).toMatch(/^> 2 \| … .{60}74 °C at once, and so on.* …$/);
    expect(mark.indexOf('^')).toBe(shown.indexOf('74 °C'));
    expect(mark.trimStart().replace('|', '').trim()).toBe('^^^^^');
    expect(end).toBe('');
    writeFileSync(join(root, 'short.md'), `${'x'.repeat(400)}`);
    const first = report(root, [error('a', { file: 'short.md', line: 1, column: 1 }, 'b')]).split('\n');
    expect(first[1]).toBe(`> 1 | ${'x'.repeat(80)} …`);
    expect(first[2]).toBe('    | ^');
  });

  it('does without the line of a file that is not there', () => {
    const problem = warning('gone', { file: 'gone.md', line: 3, column: 1 }, 'this file is gone');
    expect(report(root, [problem])).toBe('gone.md:3:1: warning: this file is gone [gone]\n\n0 errors, 1 warning\n');
    expect(hasErrors([problem])).toBe(false);
  });
});
