import { describe, expect, test } from 'vitest';
import { riseOver, statedBase } from '../../../src/plots/data/rise-over-ambient.ts';
import { channel, logOf, subject } from '../subjects.ts';

const rated = subject('rated');
const soc = channel('soc', 'temperature', '°C', [30, 50], 0.1);

describe('plots/data/rise-over-ambient', () => {
  test('over the stated ambient', () => {
    expect([...riseOver({ ...rated, log: logOf([0, 1], [soc], 1) }, soc)!]).toEqual([8, 28]);
    expect(statedBase(rated)).toBe(22);
  });

  test('over the ambient that was measured at that time', () => {
    const log = logOf([0, 1], [soc, channel('room', 'ambient', '°C', [20, 25], 0.1)], 1);
    expect([...riseOver({ ...rated, log }, soc)!]).toEqual([10, 25]);
  });

  test('none without an ambient', () => {
    expect(riseOver(subject('bare', { noAmbient: true }), soc)).toBeNull();
  });
});
