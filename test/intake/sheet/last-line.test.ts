import { describe, expect, it } from 'vitest';
import { inspect } from '../../../src/intake/inspect.ts';
import type { LogDeclaration } from '../../../src/intake/log.ts';
import { read } from '../../../src/intake/read.ts';
import { readTable } from '../../../src/intake/table.ts';
import { brief, bytes, channel, declare } from '../declare.ts';

const log = (cells: readonly string[], last: string, more: Partial<LogDeclaration> = {}, end = '') => {
  const rows = [...cells, last].map((cell, row) => `${row},${cell}`).join('\n');
  return read(bytes(`t_s,soc_c\n${rows}${end}`), declare([channel('soc', 'temperature', 'soc_c')], more), 'data/a.csv');
};
/** Whether the last of the rows is kept. */
const keeps = (cells: readonly string[], last: string) => log(cells, last).log!.rows === cells.length + 1;

describe('intake/sheet/last-line', () => {
  it('sets a last line without a line end aside, with a word, since 5 may have been 51', () => {
    const cut = log(['50.0', '50.5', '51.0', '51.25'], '5');
    expect(cut.log).toMatchObject({
      rows: 4,
      setAside: [{ line: 6, reason: 'no line end follows the last line, so its last cell may be cut off', text: '4,5' }],
    });
    expect(brief(cut)).toEqual(['data/a.csv:6:1 warning last-cell-cut']);
    expect(cut.problems[0]!.remedy).toContain('`last_line: whole`');
  });

  it.each([
    ['decimals', ['50.1', '50.2', '101.0'], '99.8', '99'],
    ['decimals with a comma in quotes', ['"50,1"', '"50,2"', '"51,0"'], '"49,8"', '"49'],
    ['a unit', ['50 °C', '50.5 °C', '51 °C'], '50.25 °C', '50.25 °'],
    ['digits', ['501', '502', '503'], '504', '50'],
    ['a sign and digits', ['-50', '-51', '-52'], '-53', '-5'],
  ])('keeps a last line that ends as all others do, by %s, and not what is left of it', (_, cells, whole, cut) => {
    expect(keeps(cells, whole)).toBe(true);
    expect(keeps(cells, cut)).toBe(false);
  });

  it.each([
    ['integers of any length', ['99', '100', '101'], '10'],
    ['decimals that are not padded', ['50', '50.5', '50.25'], '50.7'],
    ['too few other rows to tell', ['50.0', '51.0'], '52.0'],
    ['one row that ends otherwise', ['50.0', '51.0', '52.00', '53.0'], '54.0'],
  ])('takes nothing as whole from %s', (_, cells, last) => expect(keeps(cells, last)).toBe(false));

  it('reads the missing readings of other rows as no evidence against decimals', () => {
    expect(keeps(['50.1', 'NA', '50.2', '', '51.0'], '99.8')).toBe(true);
  });

  it('knows a carriage return at the very end as the end of a line', () => {
    expect(log(['50', '51.5\r', '52\r', '53\r'], '5', {}, '\r').log!.rows).toBe(5);
  });

  it('believes the author that the line is whole, and keeps what he knows to be cut out without a warning', () => {
    const whole = log(['50', '51.5', '100'], '10', { lastLine: 'whole' });
    expect(whole.log).toMatchObject({ rows: 4, setAside: [] });
    expect(whole.problems).toEqual([]);
    const known = { fromLine: 5, toLine: 5, reason: 'The logger was stopped.', place: { file: 'a.md', line: 1, column: 1 } };
    const cut = log(['50', '51.5', '100'], '10', { known: [known] });
    expect(cut.log!.rows).toBe(3);
    expect(cut.problems).toEqual([]);
  });

  it('looks neither at a footer nor at a file that ends with a line end', () => {
    expect(log(['50', '51.5', '100'], '10', {}, '\n').problems).toEqual([]);
    const footer = read(
      bytes('t_s,soc_c\n0,50\n1,51\n2,52\nlogging stopped'),
      declare([channel('soc', 'temperature', 'soc_c')]),
      'data/a.csv',
    );
    expect(footer.log!.rows).toBe(3);
  });

  it('is told before anything is declared', () => {
    expect(inspect(bytes('t_s,soc_c\n0,50\n1,51.5\n2,5'), 'data/a.csv')).toMatchObject({ rows: 2, setAside: 1 });
  });

  it('is an error in a table only where its last number lacks what all others end with: a table may well end without a line end', () => {
    const table = (last: string, end = '') =>
      readTable(bytes(`test,value\naes,1.25\nzip,2.00\nmix,3.50\n${last}${end}`), 'data/s.csv');
    expect(table('sum,10.75').problems).toEqual([]);
    for (const cut of ['sum,10.7', 'sum,10.', 'sum,10'])
      expect(table(cut)).toMatchObject({
        rows: [{ line: 2 }, { line: 3 }, { line: 4 }],
        problems: [{ severity: 'error', rule: 'last-cell-cut', place: { line: 5, column: 1 } }],
      });
    expect(table('sum,10', '\n').rows).toHaveLength(4);
    const ending = (...cells: string[]) =>
      readTable(bytes(`clock,note\n${cells.map((cell) => `2 GHz,${cell}`).join('\n')}`), 'data/n.csv');
    // Words, numbers of any length, too few others: no evidence.
    expect(ending('ok', 'ok then not', 'o').problems).toEqual([]);
    expect(ending('980', '1013', '99', '10').problems).toEqual([]);
    expect(ending('1.25', '2.00', '3').problems).toEqual([]);
  });
});
