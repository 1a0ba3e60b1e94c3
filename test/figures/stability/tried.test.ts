import { describe, expect, test } from 'vitest';
import { readAttempts } from '../../../src/figures/stability/read-attempts.ts';
import { triedFacts } from '../../../src/figures/stability/tried.ts';

const TABLE = `clock,voltage_offset,outcome,note
2.0 GHz,0 mV,passed,a
2.2 GHz,0 mV,passed,b
2.4 GHz,0 mV,hung under load,c
2.6 GHz,40 mV,hung at boot,d
2.6 GHz,80 mV,throttled,e
`;

describe('figures/stability/tried', () => {
  test('counts attempts and how they ended; kinds of hanging also together', () => {
    const { ladder } = readAttempts(new TextEncoder().encode(TABLE), 'data/x.csv', 'no-1');
    expect([...triedFacts(ladder)].map(([key, { value, unit }]) => [key, value, unit])).toEqual([
      ['tried', 5, '1'],
      ['outcome."hung at boot"', 1, '1'],
      ['outcome."hung under load"', 1, '1'],
      ['outcome.throttled', 1, '1'],
      ['outcome.passed', 2, '1'],
      ['outcome.hung', 2, '1'],
    ]);
  });

  test('a table that cannot be read has none', () => {
    expect(triedFacts(null).size).toBe(0);
  });
});
