import { describe, expect, test } from 'vitest';
import { type Evaluated, evaluate } from '../../../src/words/expression/expression.ts';
import { TWO } from '../subjects.ts';

const PLACE = { file: 'content/notes/note.md', line: 7, column: 20 };

function value(text: string): Evaluated {
  const evaluated = evaluate(text, TWO, PLACE);
  if ('problems' in evaluated) throw new Error(JSON.stringify(evaluated.problems));
  return evaluated;
}

describe('words/expression/expression', () => {
  // Precedence and grouping as everyday arithmetic has them; the operands are literals, so that the values are exact.
  test.each([
    ['2 + 3 * 4', 14, '1'],
    ['(2 + 3) * 4', 20, '1'],
    ['2 - 3 - 4', -5, '1'],
    ['24 / 3 / 4', 2, '1'],
    ['-2 * 3', -6, '1'],
    ['- (2 + 3)', -5, '1'],
    ['2*3 + 8/4', 8, '1'],
    ['min(3 W, 2000 mW, 5 W)', 2, 'W'],
    ['max(3 W, 2000 mW)', 3, 'W'],
    ['mean(1 s, 1 min)', 30.5, 's'],
    ['abs(2 K - 5 K)', 3, 'K'],
    ['6 J / 3 s', 2, 'W'],
    ['1.5e3 mW', 1.5, 'W'],
    ['50 %', 0.5, '1'],
    ['30 °C - 20 °C', 10, 'K'],
    ['-5 °C + 7 K', 2, '°C'],
    ['3 K/W * 2 W', 6, 'K'],
    ['5 min', 300, 's'],
    ['600 points / 300 points', 2, '1'],
  ])('%s', (text, number, unit) => {
    const { quantity } = value(text);
    expect(Math.abs(quantity.value - number)).toBeLessThanOrEqual(1e-12 * Math.abs(number));
    expect(quantity.parts).toEqual([]);
    expect(quantity.unit).toBe(unit);
  });

  test('addresses: bare, by the detail of the bare figure, by key, with a quoted name, facts', () => {
    const keys = [
      'fast.peak_temperature',
      'fast.peak_temperature.soc',
      'fast.peak_temperature.ssd',
      'fast.score."aes-1t"',
      '"fast".ambient',
      'fast.device.throttle_at',
    ];
    expect(keys.map((key) => value(key).held[0]?.address)).toEqual([
      'peak_temperature',
      'peak_temperature',
      'peak_temperature.ssd',
      'score.aes-1t',
      'ambient',
      'device.throttle_at',
    ]);
    expect(value('fast.ambient').held[0]).toEqual({ alias: 'fast', subject: 'larch-fast', address: 'ambient' });
  });

  test('each figure holds once, in the order of the expression', () => {
    const { held } = value('(fast.load_power - rated.load_power) / rated.load_power');
    expect(held.map(({ alias, address }) => `${alias}.${address}`)).toEqual(['fast.load_power', 'rated.load_power']);
  });

  test('a ratio of different places is allowed, and forgets them', () => {
    expect(value('fast.load_power.wall / fast.load_power - rated.load_power.wall / rated.load_power').at).toEqual([]);
  });

  test('all problems of an expression come together, at their own columns', () => {
    const evaluated = evaluate('fats.load_power - rated.laod_power', TWO, PLACE);
    const problems = 'problems' in evaluated ? evaluated.problems : [];
    expect(problems.map(({ rule, place }) => [rule, place.line, place.column, place.endColumn])).toEqual([
      ['unknown-alias', 7, 20, 24],
      ['unknown-figure', 7, 44, 54],
    ]);
  });

  test('a long expression, or a deep one, is refused and not thrown', () => {
    for (const text of ['('.repeat(990), `${'('.repeat(490)}1${')'.repeat(490)}`, '1 + '.repeat(400)]) {
      const evaluated = evaluate(text, TWO, PLACE);
      expect('problems' in evaluated || evaluated.quantity.value === 1).toBe(true);
    }
  });
});
