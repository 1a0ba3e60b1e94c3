import { describe, expect, test } from 'vitest';
import { nearest } from '../../src/quantities/nearest.ts';

describe('quantities/nearest', () => {
  const names = ['temperature', 'current', 'clock', 'voltage'];

  test.each([
    ['temprature', 'temperature'],
    ['curent', 'current'],
    ['clokc', 'clock'],
    ['Voltage', 'voltage'],
  ])('%s is near %s', (word, name) => {
    expect(nearest(word, names)).toBe(name);
  });

  test.each(['pressure', '', 'x', 'cl'])('%j is near none', (word) => {
    expect(nearest(word, names)).toBeUndefined();
  });

  test('a single letter is never a slip of another', () => {
    expect(nearest('F', ['1', 'K'])).toBeUndefined();
  });

  test('the same letters in another case come before a slip', () => {
    expect(nearest('mhz', ['mHx', 'MHz'])).toBe('MHz');
  });
});
