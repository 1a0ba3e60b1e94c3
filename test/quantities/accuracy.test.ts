import { describe, expect, test } from 'vitest';
import { type Accuracy, limitOf, parseAccuracy, standardOf } from '../../src/quantities/accuracy.ts';
import { isParseFailure } from '../../src/quantities/parse.ts';
import { expectClose } from './helpers.ts';

function read(text: string): Accuracy {
  const accuracy = parseAccuracy(text);
  if (isParseFailure(accuracy)) throw new Error(accuracy.failure);
  return accuracy;
}

describe('quantities/accuracy', () => {
  // Infrared cameras commonly state ± 2 °C or ± 2 % of reading, the larger: makers' articles.
  test('the larger of two limits', () => {
    const camera = read('± 2 °C or 2 %, the larger');
    expect(limitOf(camera, 60)).toBe(2);
    expect(limitOf(camera, 100)).toBe(2);
    expect(limitOf(camera, 200)).toBe(4);
    expect(limitOf(camera, -200)).toBe(4);
  });

  // JCGM 100:2008, 4.3.7: half width ÷ √3.
  test('a limit becomes a standard uncertainty', () => {
    expectClose(standardOf(read('± 0.5 °C'), 71.3).offset, 0.5 / Math.sqrt(3), 1e-12);
    expect(standardOf(read('± 0.5 °C'), 71.3).gain).toBe(0);
    expectClose(standardOf(read('± 0.5 °C (k=2)'), 71.3).offset, 0.25, 1e-12);
    expectClose(standardOf(read('± 0.5 °C (standard)'), 71.3).offset, 0.5, 1e-12);
    expectClose(standardOf(read('± 0.5 °C (95 %)'), 71.3).offset, 0.5 / 1.96, 1e-12);
  });

  test('the gain follows the reading and its sign, the digits the resolution', () => {
    const meter = read('0.5 % + 2 digits');
    expectClose(standardOf(meter, 10, 0.01).gain, 0.05 / Math.sqrt(3), 1e-12);
    expectClose(standardOf(meter, -10, 0.01).gain, -0.05 / Math.sqrt(3), 1e-12);
    expectClose(standardOf(meter, 10, 0.01).offset, 0.02 / Math.sqrt(3), 1e-12);
    expectClose(limitOf(meter, -10, 0.01), 0.07, 1e-12);
  });

  test('of the larger limit only that term counts', () => {
    const camera = read('± 2 °C or 2 %, the larger');
    expect(standardOf(camera, 60).gain).toBe(0);
    expectClose(standardOf(camera, 60).offset, 2 / Math.sqrt(3), 1e-12);
    expectClose(standardOf(camera, 200).gain, 4 / Math.sqrt(3), 1e-12);
    expect(standardOf(camera, 200).offset).toBe(0);
  });

  // JCGM 100:2008, F.2.2.1: the indication's resolution δ gives u = 0.29 δ.
  test('never below what the resolution allows', () => {
    expectClose(standardOf(read('± 0.1 °C'), 71, 1).offset, 0.2886751, 1e-6);
    expectClose(standardOf(read('0.1 %'), 0, 1).offset, 0.2886751, 1e-6);
  });
});
