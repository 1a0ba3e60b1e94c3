import { describe, expect, it } from 'vitest';
import { ATTEMPTS, reading, report } from '../base.ts';

const passed = (text: string) =>
  [ATTEMPTS, 'table: larch-2/attempts.csv\n', `table: larch-2/attempts.csv\npassed:\n${text}\n`] as const;
const read = (text: string) => reading(passed(text)).register.attempts.get('larch-settings')?.passed;

describe('register/files/attempts', () => {
  it('says what passing means, in canonical units, the ambient as it was written', () => {
    expect(read('  test: integer mix\n  duration: 60 min\n  ambient: 22.5 ± 1.0 °C')).toEqual({
      test: 'integer mix',
      duration: 3600,
      ambient: '22.5 ± 1.0 °C',
    });
  });

  it('may leave a part to the table, or all of it', () => {
    expect(read('  test: integer mix')).toEqual({ test: 'integer mix' });
    expect(reading().register.attempts.get('larch-settings')).not.toHaveProperty('passed');
  });

  it.each([
    ['  duration: 60', '7:13: error: number-without-unit: `duration` is `60`, a number without a unit'],
    ['  duration: 0 min', '7:13: error: bad-quantity: `duration` is `0 min`'],
    ['  ambient: 22 K/W', '7:12: error: wrong-unit: `ambient` is `22 K/W`, which is not a temperature'],
    ['  tset: integer mix', '7:3: error: unknown-key: `passed` has no key `tset`'],
  ])('refuses %o', (text, expected) => {
    const told = report(passed(text)).map((each) => each.split(' | ')[0]!.replace('content/attempts/larch-settings.md:', ''));
    expect(told).toEqual([expected]);
  });
});
