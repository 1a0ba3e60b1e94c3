import { describe, expect, test } from 'vitest';
import { keepShort, widthOf } from '../../../src/commands/hold/short-lines.ts';

const LINE =
  'It peaked at 85 degrees, and that was the highest that any of the runs of this bench has shown so far, whoever held the probe.';
const HELD = LINE.replace('85 degrees', ':stated[85 degrees]{is="fast.peak_temperature"}');

describe('commands/hold/short-lines', () => {
  test('a line that a directive made longer breaks at a blank outside of it', () => {
    const text = keepShort(`${HELD}\nThe end.\n`, `${LINE}\nThe end.\n`, widthOf(`${LINE}\n`));
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(LINE.length);
    expect(text.replaceAll('\n', ' ')).toBe(`${HELD} The end. `);
    expect(text).toContain(':stated[85 degrees]{is="fast.peak_temperature"}');
  });

  test('what is too much goes to the head of the next line, so that no line is left half empty', () => {
    const prose = `${'At the end of the hour it had settled and nothing moved. '.repeat(12)}`.trim();
    const wrapped = prose.replace(/(.{1,79})(?: |$)/g, '$1\n');
    const held = wrapped.replace('hour', ':stated[hour]{is="fast.phase_duration"}');
    const lines = keepShort(held, wrapped, widthOf(wrapped)).trimEnd().split('\n');
    expect(lines.join(' ')).toBe(held.trimEnd().replaceAll('\n', ' '));
    for (const line of lines.slice(0, -1)) {
      expect(line.length).toBeLessThanOrEqual(79);
      expect(line.length).toBeGreaterThan(79 - 'nothing '.length - ':stated[hour]{is="fast.phase_duration"}'.length);
    }
  });

  test('it stays on a line of its own before another item, a quotation, a break that the author made, and where each sentence has its line', () => {
    const overFull = `${'words '.repeat(13)}and :stated[85 degrees]{is="fast.peak_temperature"} at the end`;
    for (const next of ['- another item', '> a quotation', '', '| a | row |', '12. an item'])
      expect(keepShort(`${overFull}\n${next}`, 'Words.\nand no', 80).split('\n').at(-1)).toBe(next);
    expect(keepShort(`${overFull}  \nnext`, 'Words', 80).split('\n').at(-1)).toBe('next');
    expect(keepShort(`${overFull}.\nNext one.`, 'A sentence.\nNext one.', 80).split('\n').at(-1)).toBe('Next one.');
    expect(keepShort(`${overFull}\nnext`, 'Words\nnext', 80).split('\n').at(-1)).toMatch(/ next$/);
  });

  test('lists and quotations go on below their words; CRLF stays', () => {
    const text = keepShort(`- ${HELD}\r\n> ${HELD}\r\n`, '', 100);
    const lines = text.split('\r\n');
    expect(lines[1]).toMatch(/^ {2}\S/);
    expect(lines.findLast((line) => line !== '')).toMatch(/^> \S/);
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
  });

  test('headings, tables, front matter and the paragraphs of an author who breaks no line stay on their line', () => {
    const front = `---\nsummary: ${HELD}\n---\n`;
    for (const whole of [front, `# ${HELD}\n`, `| ${HELD} |\n`]) expect(keepShort(whole, '', 100)).toBe(whole);
    expect(widthOf(`${LINE} ${LINE}\n`)).toBeUndefined();
    expect(keepShort(HELD, LINE, undefined)).toBe(HELD);
  });

  test('no line begins with what would begin another block', () => {
    const text = keepShort(`${'word '.repeat(19)}and 12. - then more words that go on for quite some time`, '', 100);
    for (const line of text.split('\n').slice(1)) expect(line).not.toMatch(/^(?:-|12\.)/);
  });
});
