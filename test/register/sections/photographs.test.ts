import { describe, expect, it } from 'vitest';
import { FAST, reading, report, SETUP } from '../base.ts';

/** The run with a setup that marks spots; the photograph is any file that the register's data has. */
const marked = (below: string) =>
  [
    [FAST, 'log: larch-2/fast-soak.csv\n', 'log: larch-2/fast-soak.csv\nsurface: larch-2/other.csv\n'],
    [SETUP, 'phases:\n', `surface:\n  photographs:\n${below}\nphases:\n`],
  ] as const;

describe('register/sections/photographs', () => {
  it('a run has the photographs of its setup, with spots by id and places in shares', () => {
    const [run, setup] = marked('    larch-2/other.csv:\n      Lid centre: 46 % by 44 %\n      base: 0 % by 100 %');
    expect(reading(run, setup).register.runs.get('larch-fast')?.photographs).toEqual(
      new Map([
        [
          'larch-2/other.csv',
          [
            { spot: 'lid-centre', at: { x: 0.46, y: 0.44 } },
            { spot: 'base', at: { x: 0, y: 1 } },
          ],
        ],
      ]),
    );
  });

  it.each([
    [
      '    larch-2/none.jpg:\n      base: 1 % by 2 %',
      'data-missing: `photographs` is `larch-2/none.jpg`, and data/ holds no such file',
    ],
    [
      '    larch-2/other.csv: base',
      'bad-place: no spots below `larch-2/other.csv` | expected `Lid centre: 46 % by 44 %`, a line for each spot',
    ],
    [
      '    larch-2/other.csv:\n      base: 46 by 44',
      'bad-place: `base` is at `46 by 44` | expected a place in the photograph: so many per cent from the left, by so many from the top: `46 % by 44 %`',
    ],
    [
      '    larch-2/other.csv:\n      Base: 1 % by 2 %\n      base: 1 % by 2 %',
      'bad-place: the spot `base` stands here twice | remove one',
    ],
    [
      '    larch-2/other.csv:\n      base: 46 by 44\n      lid: 1 % by 2 %\n      rim: 3 % by 4 %',
      'bad-place: `base` is at `46 by 44` | expected a place in the photograph: so many per cent from the left, by so many from the top: `46 % by 44 %`',
    ],
    ['    larch-2/other.csv:\n      "…": 1 % by 2 %', 'bad-place: `…` gives no id'],
  ])('refuses %o', (below, expected) => {
    const told = report(...marked(below));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain(expected);
  });
});
