import { describe, expect, test } from 'vitest';
import { supportedTimeConstants } from '../../src/statistics/supported-time-constants.ts';
import { expectAllNear } from './near.ts';
import { autoregressive, gaussian, stepped } from './noise.ts';

const t = Float64Array.from({ length: 900 }, (_, i) => 4 * i);

/** How often 0, 1 and 2 time constants were found in 40 responses with a fast part of this size. */
function counts(fast: number, memory: number): [number, number, number] {
  const normal = gaussian(fast + 100 * memory);
  const found: [number, number, number] = [0, 0, 0];
  for (let run = 0; run < 40; run++) {
    const noise = autoregressive(900, memory, normal);
    const y = t.map((at, i) => 70 - fast * Math.exp(-at / 60) - 30 * Math.exp(-at / 700) + 0.3 * noise[i]!);
    found[supportedTimeConstants(t, stepped(y, 0.5)).count]++;
  }
  return found;
}

describe('statistics/supported-time-constants', () => {
  test('a plain second part is found, in white noise and in slow noise', () => {
    expect(counts(12, 0)).toEqual([0, 0, 40]);
    expect(counts(12, 0.9)[2]).toBeGreaterThanOrEqual(38);
  });

  test('none is invented where there is none, slow noise or not', () => {
    expect(counts(0, 0)[2]).toBeLessThanOrEqual(1);
    expect(counts(0, 0.9)[2]).toBeLessThanOrEqual(1);
  });

  test('an exact sum of two: both parts, and the criterion that prefers them', () => {
    const found = supportedTimeConstants(
      t,
      t.map((at, i) => 70 - 15 * Math.exp(-at / 60) - 30 * Math.exp(-at / 700) + 1e-3 * Math.sin(97 * i)),
    );
    expect(found.count).toBe(2);
    expect(found.gain).toBeGreaterThan(4);
    if ('failed' in found.two) throw new Error(found.two.failed);
    expectAllNear([...found.two.amplitudes, ...found.two.timeConstants], [15, 30, 60, 700], 1e-3);
  });

  test('no step: none', () => {
    const noise = autoregressive(900, 0.5, gaussian(1));
    expect(supportedTimeConstants(t, noise)).toMatchObject({ count: 0, gain: Number.NaN });
    expect(supportedTimeConstants([0, 1], [1, 2])).toMatchObject({
      count: 0,
      one: { failed: '2 readings are too few, 5 are needed' },
    });
  });
});
