import { expect, test } from 'vitest';
import { shownFigure, stepText } from '../../../src/compute/contents/figure-text.ts';
import { exact } from '../../../src/quantities/uncertainty.ts';

test('compute/pages/shown: a step is printed as the logger made it, without the rounding of a difference', () => {
  const plain = (seconds: number) => stepText(seconds).replaceAll('\u00a0', ' ');
  // Rows a hundredth of a second apart, late in a log.
  expect(2399.99 - 2399.98).not.toBe(0.01);
  expect(plain(2399.99 - 2399.98)).toBe('10 ms');
  expect([0.5, 1, 2, 0.0333333].map(plain)).toEqual(['500 ms', '1 s', '2 s', '33.3333 ms']);
});

test('compute/contents/figure-text: the hottest of all places is told apart from that of one part', () => {
  const figure = {
    name: 'hottest_surface',
    quantity: exact(63, '°C'),
    of: { part: 'lid', spot_title: 'Whole lid' },
    from: { columns: [], rows: null },
  } as const;
  expect(shownFigure('hottest_surface', figure).detail).toBe('of all places, Whole lid');
  expect(shownFigure('hottest_surface.lid', figure).detail).toBe('of its lid, Whole lid');
});
