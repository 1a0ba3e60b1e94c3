import { describe, expect, test } from 'vitest';
import { splitCoverage, standardOfHalfWidth } from '../../src/quantities/coverage.ts';

describe('quantities/coverage', () => {
  // JCGM 100:2008, Table G.1.
  test.each([
    ['(68.27 %)', 1],
    ['(90 %)', 1.645],
    ['(95 %)', 1.96],
    ['(95.45 %)', 2],
    ['(99 %)', 2.576],
    ['(99.73%)', 3],
    ['(k=2)', 2],
    ['(k = 2.13)', 2.13],
  ])('%s is k = %d', (text, k) => {
    expect(splitCoverage(`1 V ${text}`)).toEqual({ rest: '1 V', coverage: { k } });
  });

  test('standard, nothing, and what is neither', () => {
    expect(splitCoverage('1 V (standard)')).toEqual({ rest: '1 V', coverage: 'standard' });
    expect(splitCoverage('1 V')).toEqual({ rest: '1 V' });
    expect(splitCoverage('1 W/(m²·K)')).toEqual({ rest: '1 W/(m²·K)' });
    expect(splitCoverage('42 ± 1 dB(A)')).toEqual({ rest: '42 ± 1 dB(A)' });
    expect(splitCoverage('42 ± 1 dB(A) (k=2)')).toEqual({ rest: '42 ± 1 dB(A)', coverage: { k: 2 } });
    expect(splitCoverage('42 ± 1 dB(Q)')).toEqual({ rest: '42 ± 1 dB', unread: '(Q)' });
    expect(splitCoverage('1 V (k=-1)')).toEqual({ rest: '1 V', unread: '(k=-1)' });
    expect(splitCoverage('1 V (95)')).toEqual({ rest: '1 V (95)' });
    expect(splitCoverage('1 V (120 %)')).toEqual({ rest: '1 V', unread: '(120 %)' });
  });

  test('half widths', () => {
    expect(standardOfHalfWidth(3, 'standard')).toBe(3);
    expect(standardOfHalfWidth(3, { k: 2 })).toBe(1.5);
    expect(standardOfHalfWidth(Math.sqrt(3), 'rectangular')).toBe(1);
  });
});
