import { describe, expect, it } from 'vitest';
import { decode } from '../../../src/intake/sheet/decode.ts';
import { chooseDialect } from '../../../src/intake/sheet/dialect.ts';
import { linesOf } from '../../../src/intake/sheet/lines.ts';
import { fixture } from '../declare.ts';

const choose = (text: string) => chooseDialect(linesOf({ text, inBytes: null }));

describe('intake/sheet/dialect', () => {
  it.each([
    ['missing-field.csv', ',', '.'],
    ['semicolon-two-clocks.csv', ';', ','],
    ['quoted-decimal-comma.csv', ',', ','],
    ['two-line-header.csv', '\t', '.'],
    ['padded-repeated-headers.csv', ',', '.'],
    ['meter-preamble-scientific.csv', ',', '.'],
    ['matrix-commas.csv', ';', ','],
  ])('of %s', (name, delimiter, decimal) => {
    expect(choose(decode(fixture(name)).text)).toEqual({ delimiter, decimal });
  });

  it('takes a semicolon with a decimal point', () => {
    expect(choose('t;a, b;c\n0;1.5;2\n1;1.6;2\n')).toEqual({ delimiter: ';', decimal: '.' });
  });

  it('takes runs of blanks', () => {
    expect(choose('time   soc  board\n0      50.1 40\n1      51.2 41\n')).toEqual({ delimiter: ' ', decimal: '.' });
  });

  it('is not fooled by a date with a blank, nor by commas in quoted names', () => {
    expect(choose('time,soc\n2026-01-05 10:00:00,50\n2026-01-05 10:00:01,51\n').delimiter).toBe(',');
    expect(choose('t;"soc, left";"soc, right"\n0;50,5;51,5\n1;50,6;51,6\n')).toEqual({ delimiter: ';', decimal: ',' });
  });
});
