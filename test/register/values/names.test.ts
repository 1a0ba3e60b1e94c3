import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  editDistance,
  idFromWords,
  isId,
  isPhaseName,
  isSnakeName,
  meant,
  nearest,
  oneOf,
  snakeFromWords,
} from '../../../src/register/values/names.ts';

const KEYS = ['temperature', 'ambient', 'clock', 'current', 'throttle_flag'];

describe('register/values/names', () => {
  it.each([
    // Worked examples of edit distance that textbooks repeat: kitten/sitting 3 (from memory), and a swap of neighbours as one edit.
    ['kitten', 'sitting', 3],
    ['flaw', 'lawn', 2],
    ['ca', 'ac', 1],
    ['abc', '', 3],
    ['', '', 0],
    ['same', 'same', 0],
  ])('editDistance(%s, %s) = %i', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it('is a symmetric distance that is zero for equal words only', () => {
    const word = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const distance = editDistance(a, b);
        expect(distance).toBe(editDistance(b, a));
        expect(distance === 0).toBe(a === b);
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(distance).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
    );
  });

  it.each([
    ['temprature', 'temperature'],
    ['Temperature', 'temperature'],
    ['throttle flag', 'throttle_flag'],
    ['throttle-flag', 'throttle_flag'],
    ['temp', 'temperature'],
    ['clokc', 'clock'],
    ['voltage', undefined],
    ['x', undefined],
    ['', undefined],
  ])('nearest(%s) = %s', (word, expected) => {
    expect(nearest(word, KEYS)).toBe(expected);
  });

  it('does not depend on the order of the candidates', () => {
    expect(nearest('faxt', ['fast', 'fact'])).toBe('fact');
    expect(nearest('faxt', ['fact', 'fast'])).toBe('fact');
    expect(nearest('larch', ['larch-2', 'larch-3'])).toBe('larch-2');
  });

  it('prefers the candidate with the same case and separators aside over a nearer ending', () => {
    expect(nearest('LARCH_2', ['larch-2', 'larch-3'])).toBe('larch-2');
  });

  it('gives one of the candidates or nothing, also for long words', () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.string()), (word, names) => {
        const found = nearest(word, names);
        expect(found === undefined || names.includes(found)).toBe(true);
      }),
    );
    expect(nearest('a'.repeat(50_000), ['a'])).toBeUndefined();
  });

  it.each([
    ['larch-2', true],
    ['2', true],
    ['Larch', false],
    ['larch--2', false],
    ['-larch', false],
    ['larch_2', false],
    ['', false],
    ['constructor', false],
  ])('isId(%s) = %s', (text, expected) => {
    expect(isId(text)).toBe(expected);
  });

  it('tells names of channels and phases', () => {
    expect(['soc', 'cpu_0', 'a1'].every(isSnakeName)).toBe(true);
    expect(['Soc', '5v', 'a__b', 'a-b', '_a', 'a_', '', 'constructor', '__proto__'].some(isSnakeName)).toBe(false);
    expect(['cool-down', 'cool_down', 'idle'].every(isPhaseName)).toBe(true);
    expect(['cool down', '1st', '-a'].some(isPhaseName)).toBe(false);
  });

  it('makes ids and names of words', () => {
    expect(idFromWords('  Wärme: Kern 1/2 ')).toBe('warme-kern-1-2');
    expect(idFromWords('AES (1T)')).toBe('aes-1t');
    expect(idFromWords('°')).toBe('');
    expect(snakeFromWords('boardInput current')).toBe('board_input_current');
  });

  it('says what was meant, and lists names', () => {
    expect(meant('clok', KEYS)).toEqual({ remedy: 'did you mean `clock`?' });
    expect(meant('nothing near', KEYS)).toEqual({});
    expect(oneOf(['a'])).toBe('`a`');
    expect(oneOf(['a', 'b', 'c'])).toBe('`a`, `b` or `c`');
    expect(oneOf([])).toBe('');
  });
});
