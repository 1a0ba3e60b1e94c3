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
