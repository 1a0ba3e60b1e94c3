import { describe, expect, test } from 'vitest';
import { nameOf } from '../../src/quantities/dimension.ts';
import { lookUp } from '../../src/quantities/unit-library.ts';
import { expectClose } from './helpers.ts';

describe('quantities/unit-library', () => {
  // NIST SP 811 (2008), Appendix B.8.
  test.each([
    ['psi', 'Pa', 6894.757],
    ['bar', 'Pa', 1e5],
    ['BTU', 'J', 1055.056],
    ['ft', 'm', 0.3048],
    ['lbf', 'N', 4.448222],
    ['hp', 'W', 745.6999],
    ['eV', 'J', 1.602176e-19],
    ['uF', 'F', 1e-6],
    ['kPa', 'Pa', 1000],
    ['g', 'kg', 1e-3],
  ])('%s in %s', (symbol, canonical, factor) => {
    const found = lookUp(symbol)!;
    expect(nameOf(found.dimension)).toBe(canonical);
    expectClose(found.factor, factor, 1e-6);
  });

  test.each(['link', 'drop', 'stick', 'degC', 'b', 'F', 'constructor', '', 'points'])('%j is not read as a unit', (symbol) => {
    expect(lookUp(symbol)).toBeUndefined();
  });
});
