import { describe, expect, test } from 'vitest';
import { holds } from '../../../src/words/stated/holds.ts';
import { readStated, type Stated } from '../../../src/words/stated/read.ts';
import { readCases } from './corpus.ts';

const read = (text: string, unit?: string) => readStated(text, unit) as Stated;

describe('words/stated/holds', () => {
  test.each([
    ['58 degrees', 57.5, 'holds'],
    ['58 degrees', 57.49, 'fails'],
    ['58 degrees', 58.49, 'holds'],
    ['58 degrees', 58.5, 'fails'],
    ['2.10 amps', 2.095, 'holds'],
    ['2.10 amps', 2.105, 'fails'],
    ['under 60 degrees', 60, 'fails'],
    ['at most 60 degrees', 60, 'holds'],
    ['at least 60 degrees', 60, 'holds'],
    ['over 60 degrees', 60, 'fails'],
    ['exactly 2.6 GHz', 2.6e9, 'holds'],
    ['exactly 2.6 GHz', 2.6001e9, 'fails'],
    ['30 percent faster', 1.295, 'holds'],
    ['30 percent faster', 1.305, 'fails'],
    ['minus 5 degrees', -5.5, 'fails'],
    ['minus 5 degrees', -4.5, 'holds'],
  ])('"%s" of %d: %s', (text, value, verdict) => {
    expect(holds(read(text), value, null)).toBe(verdict);
  });

  test('ends are those of decimals, whatever arithmetic made of the value', () => {
    const digits = read('0.3 V');
    expect(0.1 + 0.15).toBe(0.25);
    expect(holds(digits, 0.15 + 0.1, null)).toBe('holds');
    const noisy = 1.1 * 3;
    expect(noisy).not.toBe(3.3);
    expect(holds(read('at most 3.3 V'), noisy, null)).toBe('holds');
    expect(holds(read('under 3.3 V'), 3.3 - 4e-16, null)).toBe('fails');
    expect(holds(read('exactly 3.3 V'), noisy, null)).toBe('holds');
    for (let tenths = 1; tenths < 1000; tenths++) {
      const stated = read(`${(tenths / 10).toFixed(1)} W`);
      expect(holds(stated, Number(`${tenths / 10 - 0.05}`), null)).toBe('holds');
      expect(holds(stated, Number(`${tenths / 10 + 0.05}`), null)).toBe('fails');
    }
  });

  test('holds narrowly where the 95 % interval reaches beyond what the words allow', () => {
    const stated = read('58 degrees');
    expect(holds(stated, 58.1, [57.9, 58.3])).toBe('holds');
    expect(holds(stated, 58.1, [57.4, 58.8])).toBe('holds narrowly');
    expect(holds(stated, 58.1, [57.6, 58.5])).toBe('holds narrowly');
    expect(holds(stated, 58.6, [58.2, 59])).toBe('fails');
    expect(holds(read('under 60 degrees'), 59.9, [59.6, 60.2])).toBe('holds narrowly');
    expect(holds(stated, 58.1, [58.1, 58.1])).toBe('holds');
  });

  test('takes the size where words give the direction', () => {
    const cooler = read('6 degrees cooler');
    expect(holds(cooler, -6.2, [-6.4, -6])).toBe('holds');
    expect(holds(cooler, 6.2, [6, 6.4])).toBe('holds');
    expect(holds(cooler, -6.2, [-7, -5.4])).toBe('holds narrowly');
    expect(holds(cooler, -7, null)).toBe('fails');
    expect(holds(read('6 degrees warmer'), -6.2, null)).toBe('fails');
  });

  test('numbers too large for their own halves still hold themselves', () => {
    expect(holds(read('9007199254740993'), Number('9007199254740993'), null)).toBe('holds');
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('%d fails', (value) => {
    expect(holds(read('over 60 degrees'), value, null)).toBe('fails');
  });

  test('at each end of every phrase of the corpus: a hair inside holds, a hair outside fails, the end itself as its bracket says', () => {
    let judged = 0;
    for (const { phrase, lower, upper, lowerClosed, upperClosed, bySize } of readCases()) {
      const stated = read(phrase);
      const hair = (end: number) => Math.max(Math.abs(end), 1e-6) * 1e-9;
      const ends = [
        { end: lower, inside: 1, closed: lowerClosed },
        { end: upper, inside: -1, closed: upperClosed },
      ];
      for (const { end, inside, closed } of ends.filter((each) => Number.isFinite(each.end))) {
        const verdict = (value: number) => [phrase, value, holds(stated, value, null)];
        const within = lower === upper ? end : end + inside * hair(end);
        expect(verdict(within)).toEqual([phrase, within, 'holds']);
        expect(verdict(end - inside * hair(end))).toEqual([phrase, end - inside * hair(end), 'fails']);
        expect(verdict(end)).toEqual([phrase, end, closed ? 'holds' : 'fails']);
        if (bySize) expect(verdict(-within)).toEqual([phrase, -within, 'holds']);
        judged += 3;
      }
    }
    expect(judged).toBeGreaterThan(2000);
  });
});
