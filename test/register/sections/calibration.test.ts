import { describe, expect, it } from 'vitest';
import { DIE, type Edit, METER, reading, report } from '../base.ts';

const soc = (keys: string) => [DIE, '    resolution: 0.1 K\n', `    resolution: 0.1 K\n${keys}`] as const;
const current = (keys: string) => [METER, '    resolution: 0.01 A\n', `    resolution: 0.01 A\n${keys}`] as const;
const factsOf = (id: string, ...edits: readonly Edit[]) => {
  const { register, problems } = reading(...edits);
  expect(problems).toEqual([]);
  return register.runs.get('larch-fast')?.context.instruments[id];
};

describe('register/sections/calibration', () => {
  it('reads a correction with its uncertainty: limits, so a rectangular distribution (JCGM 100:2008, 4.3.7)', () => {
    const correction = factsOf('on-die', soc('    correction: −0.3 ± 0.1 K\n'))?.correction?.temperature;
    expect(correction).toEqual({
      value: -0.3,
      unit: 'K',
      u: expect.closeTo(0.1 / Math.sqrt(3), 12),
      distribution: 'rectangular',
      text: '−0.3 ± 0.1 K',
    });
    const certificate = factsOf('inline-meter', current('    correction: 12 ± 4 mA (k=2)\n'))?.correction?.current;
    expect(certificate).toMatchObject({ value: expect.closeTo(0.012, 12), unit: 'A', u: expect.closeTo(0.002, 12) });
  });

  it('reads the ends of the accurate range: absolute temperatures, not differences', () => {
    expect(factsOf('on-die', soc('    accurate_from: 10 °C\n    accurate_to: 110 °C\n'))?.accurate).toEqual({
      temperature: { from: 10, to: 110 },
    });
    expect(factsOf('inline-meter', current('    accurate_from: 20 mA\n'))?.accurate).toEqual({ current: { from: 0.02 } });
  });

  it('adds nothing to an instrument that states neither', () => {
    expect(factsOf('on-die')).not.toHaveProperty('correction');
    expect(factsOf('on-die')).not.toHaveProperty('accurate');
  });

  it.each([
    ['    correction: −0.3 K\n', '`correction` is `−0.3 K`, without its uncertainty'],
    ['    correction: −0.3\n', '`correction` is `−0.3`, a number without a unit'],
    ['    correction: −0.3 ± 0.1 W\n', '`correction` is `−0.3 ± 0.1 W`, which is not a difference of temperatures'],
    ['    accurate_from: 10 W\n', '`accurate_from` is `10 W`, which is not a temperature'],
    ['    accurate_from: 90 °C\n    accurate_to: 20 °C\n', '`accurate_to` is `20 °C`'],
    ['  fan:\n    correction: 3 ± 1 K\n', '`correction` of fan'],
  ])('refuses %o', (keys, found) => {
    const own = report(soc(keys)).filter((line) => line.startsWith(DIE));
    expect(own).toHaveLength(1);
    expect(own[0]).toMatch(/^\S+:\d+:\d+: error: [a-z-]+: /);
    expect(own[0]).toContain(found);
  });
});
