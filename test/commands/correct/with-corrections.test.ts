import { describe, expect, test } from 'vitest';
import { withCorrections } from '../../../src/commands/correct/with-corrections.ts';

const ENTRY = ['- number: fast.peak_temperature', '  now: 72 °C'];

describe('commands/correct/with-corrections', () => {
  test('a note without corrections gets them at the end of its front matter', () => {
    expect(withCorrections('---\r\ntitle: A\r\n---\r\n\r\nText\r\n', ENTRY)).toBe(
      '---\r\ntitle: A\r\ncorrections:\r\n  - number: fast.peak_temperature\r\n    now: 72 °C\r\n---\r\n\r\nText\r\n',
    );
  });

  test('others stay before the new one, which is indented as they are', () => {
    const before = '---\ncorrections:\n- number: a.b\n  now: 1 W\n  since: 2026-05-02\n  reason: x\nlicence: CC0-1.0\n---\n';
    expect(withCorrections(before, ENTRY)).toBe(
      '---\ncorrections:\n- number: a.b\n  now: 1 W\n  since: 2026-05-02\n  reason: x\n- number: fast.peak_temperature\n  now: 72 °C\nlicence: CC0-1.0\n---\n',
    );
  });
});
