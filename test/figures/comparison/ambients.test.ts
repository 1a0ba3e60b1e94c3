import { describe, expect, test } from 'vitest';
import { AMBIENT_RULE, ambientsDiffer } from '../../../src/figures/comparison/ambients.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { part } from './runs.ts';

/** An ambient with an offset that both share, and a scatter of its own. */
function ambient(value: number, own: number, shared = 0): Quantity {
  const parts = [part('instrument:room/temperature/offset', shared), part(`run:${value}/ambient`, own)];
  return { value, unit: '°C', parts: parts.filter(({ share }) => share !== 0) };
}

describe('figures/comparison/ambients', () => {
  test.each([
    ['less than 1 K, however sure', 22, 22.9, 0.01, false],
    // 1.96 · √2 · 0.3 K = 0.83 K (JCGM 100:2008, 5.1.2 and G.1.3)
    ['1.5 K, told apart', 22, 23.5, 0.3, true],
    // 1.96 · √2 · 0.6 K = 1.66 K
    ['1.5 K, within what they are uncertain by', 22, 23.5, 0.6, false],
    ['2.1 K, within what they are uncertain by', 22, 24.1, 2, true],
    ['the other way round', 24.1, 22, 2, true],
  ])('%s', (_, a, b, u, differ) => {
    expect(ambientsDiffer(ambient(a, u), ambient(b, u))).toBe(differ);
  });

  test('what the thermometer is wrong by in both is not between them', () => {
    expect(ambientsDiffer(ambient(22, 0.1, 3), ambient(23.5, 0.1, 3))).toBe(true);
    expect(ambientsDiffer(ambient(22, 3), ambient(23.5, 3))).toBe(false);
  });

  test('of unknown uncertainty only what lies more than 2 K apart differs', () => {
    const unknown = (value: number): Quantity => ({ value, unit: '°C', parts: null });
    expect(ambientsDiffer(unknown(22), unknown(23.9))).toBe(false);
    expect(ambientsDiffer(unknown(22), unknown(24.1))).toBe(true);
  });

  test('the rule is printed with the numbers that it goes by', () => {
    expect(AMBIENT_RULE).toContain('more than 1 K apart');
    expect(AMBIENT_RULE).toContain('more than 2 K apart');
  });
});
