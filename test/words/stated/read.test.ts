import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findStated, inUnit, isUnread, readStated, type Stated } from '../../../src/words/stated/read.ts';
import { readCases, unreadCases } from './corpus.ts';

const CASES = readCases();

/** Equal but for the last digits of a double. */
function near(actual: number, expected: number): boolean {
  return actual === expected || Math.abs(actual - expected) <= 1e-12 * Math.max(Math.abs(expected), 1e-9);
}

function read(text: string, wanted?: string): Stated {
  const result = readStated(text, wanted);
  if (isUnread(result)) throw new Error(`"${text}": ${result.unread}`);
  return result;
}

function unreadOf(text: string, wanted?: string) {
  const result = readStated(text, wanted);
  if (!isUnread(result)) throw new Error(`"${text}" was read as ${result.lower} to ${result.upper} ${result.unit}`);
  return result;
}

describe('words/stated/read', () => {
  test('"without" denies what follows it, and not the number behind a verb', () => {
    expect(read('the highest clock that passed without added voltage was 2.2 GHz').nominal).toBe(2.2e9);
    expect(unreadOf('without reaching 60 degrees').unread).toBe('"without" before a number');
  });

  test('a range is named by its middle, a number with ± by itself, one number by itself', () => {
    expect(read('between 60 and 70 °C').nominal).toBe(65);
    expect(read('60 °C ± 4 K').nominal).toBe(60);
    expect(read('about 60 °C').nominal).toBe(60);
  });

  test.each([
    ['88.7 sweeps per second', 'sweeps/s'],
    ['8.2 gigabytes a second', 'GB/s'],
    ['233.6 MB per second', 'MB/s'],
    ['88 sweeps each second', 'sweeps/s'],
    ['12.7 sweeps per joule', 'sweeps/J'],
  ])("%s is in the score's own unit %s", (phrase, unit) => {
    expect(read(phrase, unit).unit).toBe(unit);
    expect(isUnread(readStated(phrase, 'runs/s'))).toBe(true);
    expect(isUnread(readStated(phrase.replace(/(\d )\w/, '$1x'), unit))).toBe(true);
  });

  test.each([
    ['8.2 GB/s', 'Gb/s'],
    ['8.2 gb/s', 'GB/s'],
    ['8.2 pb/s', 'PB/s'],
    ['8.2 tasks/mW', 'tasks/MW'],
    ['8.2 gigabytes per second', 'GiB/s'],
    ['8.2 gigabits per second', 'GB/s'],
  ])('%s is not in %s', (phrase, unit) => {
    expect(isUnread(readStated(phrase, unit))).toBe(true);
  });

  test('words of a unit count in any case, sizes by their own names', () => {
    expect(read('8.2 gibibytes per second', 'GiB/s').unit).toBe('GiB/s');
    expect(read('8.2 gigabits per second', 'Gb/s').unit).toBe('Gb/s');
    expect(read('88.7 Sweeps per second', 'sweeps/s').unit).toBe('sweeps/s');
    expect(read('1,250 Points', 'points').unit).toBe('points');
  });

  test("the author's own unit is read in any case, a symbol where its case tells no other known unit", () => {
    const same = [
      ['8.2 mpix/s', 'MPix/s'],
      ['8.2 GFlops', 'GFLOPS'],
      ['8.2 KB/s', 'kB/s'],
      ['8.2 Sub-Runs/s', 'sub-runs/s'],
      ['8.2 tasks/kwh', 'tasks/kWh'],
    ] as const;
    expect(same.map(([phrase, unit]) => read(phrase, unit).unit)).toEqual(same.map(([, unit]) => unit));
  });

  test('a count of one that stands alone is read, and within other words it is none', () => {
    const alone = ['once', 'only once', 'one', 'one of them', 'a single throttle event'];
    expect(alone.map((words) => read(words).nominal)).toEqual([1, 1, 1, 1, 1]);
    expect(unreadOf('once it has settled').unread).toBe('no number in these words');
    expect(unreadOf('a single fan').unread).toBe('no number in these words');
  });

  test('the corpus has more than 300 different phrases', () => {
    expect(new Set(CASES.map(({ phrase }) => phrase)).size).toBe(CASES.length);
    expect(CASES.length).toBeGreaterThan(300);
  });

  test.each(CASES)('$phrase', (expected) => {
    const { lower, upper, lowerClosed, upperClosed, unit, bySize, difference } = read(expected.phrase);
    expect({ unit, lowerClosed, upperClosed, bySize }).toEqual({
      unit: expected.unit,
      lowerClosed: expected.lowerClosed,
      upperClosed: expected.upperClosed,
      bySize: expected.bySize,
    });
    expect([lower, upper, near(lower, expected.lower), near(upper, expected.upper)]).toEqual([lower, upper, true, true]);
    expect(difference).toBe(unit === 'K');
  });

  test.each(unreadCases())('cannot be read: %s', (phrase, reason) => {
    const { unread, offset, expected } = unreadOf(phrase);
    expect(unread).toContain(reason);
    expect(offset).toBeGreaterThanOrEqual(0);
    expect(offset).toBeLessThanOrEqual(phrase.length);
    expect(expected).not.toBe('');
  });
});

describe('words/stated/read: the phrase in its text', () => {
  test.each([
    ['it settles at about 71 degrees, later', 'about 71 degrees'],
    ['runs 30 percent faster than before', '30 percent faster'],
    ['for an hour and 20 minutes in all', 'an hour and 20 minutes'],
    ['stays between 69 and 72 °C throughout', 'between 69 and 72 °C'],
    ['the load drew 20 watts or more', '20 watts or more'],
  ])('%s', (text, phrase) => {
    const { start, end } = read(text);
    expect(text.slice(start, end)).toBe(phrase);
  });

  test('points at what is wrong', () => {
    expect(unreadOf('it is not 58 degrees').offset).toBe('it is '.length);
    expect(unreadOf('it draws 2,5 W').offset).toBe('it draws '.length);
    expect(unreadOf('58 degrees and 71 degrees').offset).toBe('58 degrees and '.length);
    expect(unreadOf('only a few degrees').offset).toBe('only '.length);
  });
});

describe('words/stated/read: the unit of the figure', () => {
  test('of several numbers takes the only one that fits', () => {
    expect(read('about 71 degrees after an hour', '°C').nominal).toBe(71);
    expect(read('about 71 degrees after an hour', 's').nominal).toBe(3600);
    expect(unreadOf('about 71 degrees after an hour', 'W').unread).toContain('no number that fits');
    expect(unreadOf('from 58 degrees, then 71 degrees', '°C').unread).toContain('more than one number');
  });

  test('takes degrees as a difference where the figure is one', () => {
    expect(read('about 48 degrees', 'K')).toMatchObject({ lower: 47, upper: 49, unit: 'K', difference: true });
    expect(read('9 °F', 'K')).toMatchObject({ nominal: 5, unit: 'K' });
    expect(unreadOf('6 kelvin', '°C').unread).toContain('a value in K where the data has a value in °C');
    expect(unreadOf('6 degrees warmer', '°C').unread).toContain('a value in K');
  });

  test('refuses a number without a unit where the figure has one, and a unit of another kind', () => {
    expect(unreadOf('about 71', '°C').unread).toBe('a number without a unit');
    expect(unreadOf('71 watts', '°C').unread).toContain('a value in W');
    expect(unreadOf('71 degrees', '1').expected).toContain('percent');
  });

  test("takes a score's own word after the number", () => {
    expect(read('about 1,250 points', 'points')).toMatchObject({ unit: 'points', nominal: 1250 });
    expect(unreadOf('1,250 marks', 'points').unread).toBe('a number without a unit');
    expect(unreadOf('1,250 pointsmen', 'points').unread).toBe('a number without a unit');
  });

  test('leaves what fits as it was', () => {
    const stated = read('58 degrees');
    expect(inUnit(stated, '°C')).toBe(stated);
  });
});

describe('words/stated/read: anything', () => {
  const WORDS =
    'a an and half quarter third two twenty hundred thousand point five of to between from about under not never 58 2.5 1,200 , . - – ± : / % ½ ° °C degrees hours minutes W times percent faster less cooler below zero by or more x 10 ⁻³'.split(
      ' ',
    );

  test('nothing throws, and every place lies in the text', () => {
    const texts = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.array(fc.constantFrom(...WORDS), { maxLength: 9 }).map((words) => words.join(' ')),
      fc.array(fc.constantFrom(...WORDS), { maxLength: 6 }).map((words) => words.join('')),
    );
    fc.assert(
      fc.property(texts, (text) => {
        for (const found of findStated(text)) {
          if (isUnread(found)) {
            expect(found.offset).toBeLessThan(text.length);
            continue;
          }
          expect(found.start).toBeLessThan(found.end);
          expect(found.end).toBeLessThanOrEqual(text.length);
          expect(found.lower).toBeLessThanOrEqual(found.upper);
          expect(Number.isFinite(found.nominal)).toBe(true);
        }
      }),
      { numRuns: 3000, seed: 4 },
    );
  });

  test('no reading leaves out a number of the text: two numbers are never read as one unless a range or a time binds them', () => {
    const amount = fc.integer({ min: 1, max: 999 }).map(String);
    const unit = fc.constantFrom('degrees', 'W', 'GHz', 'amps', 'percent');
    const joint = fc.constantFrom(', ', ' and ', ' then ', ' at ', ' of ', ' or ', ' with ');
    fc.assert(
      fc.property(amount, unit, joint, amount, unit, (a, ua, between, b, ub) => {
        expect(isUnread(readStated(`${a} ${ua}${between}${b} ${ub}`))).toBe(true);
      }),
      { numRuns: 300, seed: 4 },
    );
  });
});
