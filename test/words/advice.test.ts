/** What a newcomer writes first, and what the message then says. */
import { describe, expect, test } from 'vitest';
import { write } from '../../src/words/write.ts';
import { noteOf, reportOf, TWO } from './subjects.ts';

function told(text: string, subjects: typeof TWO = TWO): string {
  return reportOf(write(noteOf(text), subjects, { unheld: true }).problems);
}

describe('words/advice', () => {
  test.each(['fast.load_power', 'fast.load_power - rated.load_power', 'fast.score."aes-1t"'])(
    'an address in braces goes into brackets: %s',
    (address) => {
      const report = told(`It draws :value{${address}} then.`);
      expect(report).toContain(`1:16-${18 + address.length}: error [directive-label] \`${address}\` in braces`);
      expect(report).toContain(`remedy: the address goes into brackets: \`:value[${address}]\`\n`);
      expect(report.match(/error/g)).toHaveLength(1);
    },
  );

  test.each([
    ['::table{runs="rated fast" of="peak_temperature, load_power"}', 'of', 'of="peak_temperature load_power"'],
    ['::table{runs="rated,fast" of="peak_temperature"}', 'runs', 'runs="rated fast"'],
    ['::plot{kind=trace runs="rated" channels="soc, board"}', 'channels', 'channels="soc board"'],
    ['::table{runs="fast" of=\'load_power, score."aes-1t"\'}', 'of', 'of=\'load_power score."aes-1t"\''],
  ])('commas in a list: %s', (text, name, right) => {
    const at = text.indexOf(',') + 1;
    expect(told(text)).toBe(
      `1:${at}-${at + 1}: error [request-attribute] a comma in \`${name}\`\n  expected: names are separated by blanks, without commas\n  remedy: write \`${right}\`\n`,
    );
  });

  test.each([
    ['fast.peak_temperature > 50', '50 has no unit, and is compared with a value in °C', '> 50 °C'],
    ['fast.peak_temperature >= -50', '-50 has no unit, and is compared with a value in °C', '>= -50 °C'],
    ['5 < fast.load_power', '5 has no unit, and is compared with a value in W', '5 W'],
    ['fast.peak_temperature within 2 of 71 °C', '2 has no unit, and is compared with a value in K', '2 K'],
    ['fast.setting.clock between 2 and 3 GHz', '2 has no unit, and is compared with a value in GHz', '2 GHz'],
  ])('a bare number in a condition: %s', (is, found, right) => {
    const report = told(`It is :claim[so]{is="${is}"}.`);
    expect(report).toContain(`error [refused-arithmetic] ${found}\n`);
    expect(report).toContain(`remedy: write \`${right}\`\n`);
  });

  test('a ratio needs no unit', () => {
    expect(told(':claim[so]{is="fast.load_power / rated.load_power > 1"}')).toBe('');
  });

  test.each([
    ['fast.ssd.peak_temperature', 'peak_temperature.ssd'],
    ['fast."aes-1t".score', 'score."aes-1t"'],
    ['peak_temperature.fast', 'fast.peak_temperature'],
    ['peak_temperature.ssd.fast', 'fast.peak_temperature.ssd'],
  ])('an address in another order: %s', (address, right) => {
    expect(told(`:value[${address}]`)).toContain(`remedy: did you mean \`${right}\`?\n`);
  });

  test('a note without runs is told which lines to add', () => {
    expect(told(':value[stock.load_power]', new Map())).toContain(
      'remedy: add to the front matter (of a script too)\n      runs:\n        stock: name-of-a-file-in-content-runs\n',
    );
  });

  test.each([
    ['A :unheld 5 V supply', '`:unheld` without brackets'],
    ['It is :stated about 71 degrees', '`:stated` without brackets'],
    ['It is :value fast.load_power', '`:value` without brackets'],
  ])('a directive without brackets: %s', (text, found) => {
    expect(told(text)).toContain(`error [directive-label] ${found}\n`);
  });

  test.each(['A key :value store', 'Words\\:unheld here', '`:unheld 5`', 'a:unheld thing', 'We :claim it'])(
    'stays prose: %s',
    (text) => {
      expect(told(text)).toBe('');
    },
  );

  test('what to do about unheld numbers is said once a note', () => {
    const { problems } = write(noteOf('It draws 5 W, later 6 W.\n\nThen 7 W.'), TWO, { unheld: true });
    expect(problems.map(({ remedy, expected }) => [remedy === undefined, expected === undefined])).toEqual([
      [false, false],
      [true, true],
      [true, true],
    ]);
    const refused = write(noteOf('It draws 5 W, later 6 W.', { unheld: 'refuse' }), TWO).problems;
    expect(refused.every(({ remedy }) => remedy !== undefined)).toBe(true);
  });
});
