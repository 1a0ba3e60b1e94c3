import { describe, expect, test } from 'vitest';
import { isPresent } from '../../../src/figures/figure.ts';
import { figuresJson } from '../../../src/figures/figures-json.ts';
import { attemptsHead } from '../../../src/figures/stability/attempts-json.ts';
import type { PassCriterion } from '../../../src/figures/stability/ladder.ts';
import { readAttempts } from '../../../src/figures/stability/read-attempts.ts';
import { stabilityFigures } from '../../../src/figures/stability/stability.ts';
import { printQuantity } from '../../../src/quantities/print.ts';

const PASSING: PassCriterion = { test: 'integer mix', duration: 3600, ambient: '22.5 ± 1.0 °C' };
const HEAD = 'clock,voltage_offset,outcome,note';

function read(rows: readonly string[], { specimen = 'no-1', passing = PASSING as Partial<PassCriterion>, head = HEAD } = {}) {
  return readAttempts(new TextEncoder().encode([head, ...rows, ''].join('\n')), 'data/larch-2/attempts.csv', specimen, passing);
}

const ladderOf = (...rows: string[]) => read(rows).ladder;

/** The whole of a figure in one line: value in GHz or the absence, and what it says besides. */
function told(figures: ReturnType<typeof stabilityFigures>, address: string): string {
  const figure = figures.get(address);
  if (!figure) return 'none';
  const of = JSON.stringify(figure.of ?? {});
  if (isPresent(figure)) return `${figure.quantity.value / 1e9} ${of}`;
  return `${figure.absent} ${figure.bound ? `${figure.bound.relation} ${figure.bound.value / 1e9} ` : ''}${of}`;
}

describe('stability', () => {
  const figures = stabilityFigures([
    ladderOf(
      '2.0 GHz,0 mV,passed,',
      '2.2 GHz,0 mV,passed,',
      '2.4 GHz,0 mV,restarted,after 8 min',
      '2600 MHz,0.06 V,hung under load,',
      '2.4 GHz,60 mV,passed,',
      '2.6 GHz,-20 mV,no boot,',
      '2.6 GHz,80 mV,throttled,',
      '2.4 GHz,100 mV,passed,',
    ),
  ]);

  test.each([
    [
      'highest_passed_clock',
      '2.4 {"voltage_offset":"60 mV","basis":"1 specimen, 1 × 60 min","test":"integer mix","ambient":"22.5 ± 1.0 °C"}',
    ],
    [
      'highest_passed_clock.0 mV',
      '2.2 {"voltage_offset":"0 mV","basis":"1 specimen, 1 × 60 min","test":"integer mix","ambient":"22.5 ± 1.0 °C"}',
    ],
    ['lowest_failed_clock.0 mV', '2.4 {"voltage_offset":"0 mV","outcome":"restarted","attempts":1}'],
    // Two spellings of one offset are one offset.
    ['lowest_failed_clock.60 mV', '2.6 {"voltage_offset":"60 mV","outcome":"hung under load","attempts":1}'],
    ['highest_passed_clock.-20 mV', 'none-passed < 2.6 {"voltage_offset":"-20 mV"}'],
    ['lowest_failed_clock.-20 mV', '2.6 {"voltage_offset":"-20 mV","outcome":"no boot","attempts":1}'],
    // Throttled is not passed: the clock was not held.
    ['highest_passed_clock.80 mV', 'none-passed < 2.6 {"voltage_offset":"80 mV"}'],
    ['lowest_failed_clock.80 mV', '2.6 {"voltage_offset":"80 mV","outcome":"throttled","attempts":1}'],
    ['lowest_failed_clock.100 mV', 'none-failed > 2.4 {"voltage_offset":"100 mV"}'],
    ['highest_passed_clock.40 mV', 'none'],
  ])('%s', (address, expected) => {
    expect(told(figures, address)).toBe(expected);
  });

  test('a clock is printed with the digits it was written with, of several spellings the finest', () => {
    const tried = stabilityFigures([ladderOf('2 GHz,0 mV,passed,', '2.0 GHz,0 mV,passed,', '3 GHz,0 mV,no boot,')]);
    const printed = ['highest_passed_clock', 'lowest_failed_clock.0 mV'].map((address) => {
      const figure = tried.get(address)!;
      return isPresent(figure) ? printQuantity(figure.quantity).text : figure.absent;
    });
    expect(printed).toEqual(['2.0\u00a0GHz', '3\u00a0GHz']);
  });

  test('a setting that passed once and hung once did not pass; one that passed twice says so', () => {
    const twice = stabilityFigures([
      ladderOf('2.0 GHz,0 mV,passed,', '2.0 GHz,0 mV,passed,', '2.2 GHz,0 mV,passed,', '2.2 GHz,0 mV,hung under load,'),
    ]);
    expect(told(twice, 'highest_passed_clock')).toMatch(/^2 .*"1 specimen, 2 × 60 min"/);
    expect(told(twice, 'lowest_failed_clock.0 mV')).toBe('2.2 {"voltage_offset":"0 mV","outcome":"hung under load","attempts":2}');
  });

  test('a hang below a clock that passed is told with it', () => {
    const broken = stabilityFigures([ladderOf('2.0 GHz,0 mV,hung at boot,', '2.2 GHz,0 mV,passed,')]);
    expect(told(broken, 'highest_passed_clock')).toMatch(/^2\.2 .*"failed_below":"2(\.0)?.GHz: hung at boot"/);
  });

  test('two specimens: passed on each that tried it', () => {
    const other = read(['2.2 GHz,0 mV,passed,', '2.4 GHz,0 mV,hung under load,'], {
      specimen: 'no-2',
      passing: { ...PASSING, duration: 1800 },
    }).ladder;
    const both = [ladderOf('2.2 GHz,0 mV,passed,', '2.4 GHz,0 mV,passed,'), other];
    expect(told(stabilityFigures(both), 'highest_passed_clock')).toMatch(/^2\.2 .*"2 specimens, 1 × 60 min, 1 × 30 min"/);
    const published = figuresJson(
      { device: 'larch-2', ...attemptsHead(both.map((ladder, index) => ({ id: `ladder-${index}`, ladder, sha256: 'x' }))) },
      stabilityFigures(both),
    ) as {
      figures: Record<string, { value: number }>;
      specimens: Record<string, { figures: Record<string, { value: number }> }>;
    };
    expect(published.figures.highest_passed_clock!.value).toBe(2.2e9);
    expect(published.specimens['no-1']!.figures.highest_passed_clock!.value).toBe(2.4e9);
  });

  test('absent without a row, and where passing is not defined; a row may define it', () => {
    expect(told(stabilityFigures([ladderOf()]), 'highest_passed_clock')).toMatch(/^no-readings/);
    const bare = read(['2.0 GHz,0 mV,passed,'], { passing: { test: 'integer mix' } }).ladder;
    expect(told(stabilityFigures([bare]), 'highest_passed_clock')).toMatch(/^no-condition/);
    const own = read(['2.0 GHz,0 mV,passed,,30 min,23 °C'], {
      passing: { test: 'integer mix' },
      head: `${HEAD},duration,ambient`,
    }).ladder;
    expect(told(stabilityFigures([own]), 'highest_passed_clock')).toMatch(/"1 specimen, 1 × 30 min".*"23 °C"/);
  });
});

describe('stability/read-attempts', () => {
  const problems = (rows: readonly string[], head = HEAD) =>
    read(rows, { head }).problems.map(({ rule, place, found, expected, remedy }) =>
      [`${place.line}:${place.column} ${rule}: ${found}`, expected, remedy].filter(Boolean).join(' | '),
    );

  test('a whole table has none', () => {
    expect(problems(['2.0 GHz,0 mV,passed,"a, b"', '2.2 GHz,20 mV,Hung at boot,'])).toEqual([]);
  });

  test('each wrong cell is located, and its row left out', () => {
    expect(
      problems([
        '2.0,0 mV,passed,',
        '2.0 GHz,,passed,',
        '2.0 GHz,0 mV,hanged at boot,',
        '0 GHz,0 mV,passed,',
        '2.0 V,0 mV,passed,',
      ]),
    ).toEqual([
      '2:1 attempts-clock: `clock` is `2.0`: 2.0 has no unit | a value such as 2.6 GHz',
      '3:9 attempts-voltage-offset: no `voltage_offset` | a value such as 40 mV',
      '4:14 attempts-outcome: `outcome` is `hanged at boot` | one of no boot, hung at boot, hung under load, wrong results, restarted, throttled, passed | did you mean `hung at boot`?',
      '5:1 attempts-clock: `clock` is `0 GHz` | a clock above 0',
      '6:1 attempts-clock: `clock` is `2.0 V` | a value such as 2.6 GHz',
    ]);
    expect(read(['2.0,0 mV,passed,', '2.2 GHz,0 mV,passed,']).ladder.attempts).toHaveLength(1);
  });

  test('units may stand in the header; a missing column is an error, a foreign one a warning', () => {
    const { ladder } = read(['2000,40,passed,'], { head: 'clock [MHz],voltage_offset [mV],outcome,note' });
    expect(ladder.attempts[0]).toMatchObject({ clock: 2e9, offset: 0.04 });
    expect(problems(['2.0 GHz,passed,'], 'clock,outcome,notes')).toEqual([
      '1:1 attempts-column: nothing reads the column `notes` | columns clock, voltage_offset, outcome, note, test, duration, ambient | did you mean `note`?',
      '1:1 attempts-column: no column `voltage_offset` | name the columns clock, voltage_offset, outcome in the first line',
    ]);
  });
});
