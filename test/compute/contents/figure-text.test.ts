import { expect, test } from 'vitest';
import { stepText } from '../../../src/compute/contents/figure-text.ts';

test('compute/pages/shown: a step is printed as the logger made it, without the rounding of a difference', () => {
  const plain = (seconds: number) => stepText(seconds).replaceAll('\u00a0', ' ');
  // Rows a hundredth of a second apart, late in a log.
  expect(2399.99 - 2399.98).not.toBe(0.01);
  expect(plain(2399.99 - 2399.98)).toBe('10 ms');
  expect([0.5, 1, 2, 0.0333333].map(plain)).toEqual(['500 ms', '1 s', '2 s', '33.3333 ms']);
});
