/** Cases whose truth published intervals once missed: each holds it now, or is absent for the cause that there is. */
import { expect, test } from 'vitest';
import { isPresent } from '../../src/figures/figure.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import { declaredLate, onceMissed, saidOf } from './once-missed.ts';

test.each(onceMissed())('$name', ({ truth, figure, absent }) => {
  const said = saidOf(figure);
  if (!figure || absent || !isPresent(figure)) {
    expect(figure && !isPresent(figure) && figure.why, said).toMatch(absent ?? /\w/);
    const bound = figure && !isPresent(figure) ? figure.bound : undefined;
    if (bound && truth !== null)
      expect(bound.relation === '>' ? truth - bound.value : bound.value - truth, said).toBeGreaterThanOrEqual(0);
    return;
  }
  const [low, high] = figure.interval ?? interval95(figure.quantity)!;
  expect(low - 1e-9, said).toBeLessThanOrEqual(truth!);
  expect(high + 1e-9, said).toBeGreaterThanOrEqual(truth!);
});

test('ten readings have the interval of Student’s t on their scatter, or a wider one', () => {
  const [few] = onceMissed();
  expect(isPresent(few!.figure!) && interval95(few!.figure.quantity)).toEqual([expect.closeTo(1.81, 1), expect.closeTo(2.19, 1)]);
});

test('a load that is declared a minute late is warned of, with the seconds', () => {
  const [off, ...others] = declaredLate();
  expect(Math.abs(off! - 60)).toBeLessThanOrEqual(1);
  expect(others).toEqual([]);
});
