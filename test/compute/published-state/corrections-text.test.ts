import { describe, expect, it } from 'vitest';
import { correctionsAsText } from '../../../src/compute/published-state/corrections-text.ts';

describe('compute/published-state/corrections-text', () => {
  it('says what a number is, was and is, when it is said, and why once for all of one reason', () => {
    const one = {
      id: 'c-1',
      label: 'peak temperature of fast',
      was: '71.3 °C',
      is: '72.1 °C',
      cue: '1:05',
      sentence: 'It hit 71.3 °C.',
    };
    const other = { id: 'c-2', label: '', was: 'hotter', is: '70 °C against 71 °C', cue: undefined, sentence: '' };
    const text = correctionsAsText('A faster Larch', [
      { since: '2026-05-02', reason: 'The probe was read twice.', numbers: [one, other] },
      { since: '2026-04-02', reason: 'The log was cut.', numbers: [other] },
    ]);
    expect(text).toBe(
      [
        'Corrections to "A faster Larch"',
        '',
        '2026-05-02 at 1:05: peak temperature of fast, 71.3 °C is now 72.1 °C.',
        'It said: It hit 71.3 °C.',
        '2026-05-02: hotter is now 70 °C against 71 °C.',
        'Why: The probe was read twice.',
        '',
        '2026-04-02: hotter is now 70 °C against 71 °C.',
        'Why: The log was cut.',
        '',
      ].join('\n'),
    );
  });
});
