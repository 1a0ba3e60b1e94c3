import { describe, expect, test } from 'vitest';
import { FAST, reading, report } from '../base.ts';

const LOG = 'log: larch-2/fast-soak.csv';
const with_ = (text: string) => [FAST, LOG, `log: none\nreadings:\n${text}`] as const;

describe('register/sections/readings', () => {
  test('a value, several, or one that was read several times; the phase by name or by the time', () => {
    const { register, problems } = reading(
      with_(`  - quantity: current
    value: 0.62 A
    phase: idle
    at: board input
    instrument: inline-meter
  - quantity: temperature
    value: [71.2 °C, 71.4 °C]
    at_time: 64 min
    shows: settled
    step: 0.2 K
  - quantity: power
    value: 310 mW
    times: 5
    phase: load
    name: plug`),
    );
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    const { context, logs, channels } = register.runs.get('larch-fast')!;
    expect([logs, channels]).toEqual([[], []]);
    expect(context.readings).toMatchObject([
      {
        quantity: 'current',
        values: [0.62],
        times: 1,
        phase: 'idle',
        at: 'board input',
        instrument: 'inline-meter',
        lastDigit: 0.01,
      },
      { quantity: 'temperature', values: [71.2, 71.4], times: 2, phase: 'load', shows: 'settled', step: 0.2 },
      { quantity: 'power', values: [0.31], times: 5, name: 'plug', lastDigit: 0.001 },
    ]);
  });

  test('a display that shows the same again was read again: nothing is refused, and nothing left out', () => {
    const { register, problems } = reading(
      with_(
        '  - quantity: temperature\n    value: [71.2 °C, 71.4 °C, 71.2 °C]\n    phase: load\n    shows: settled\n    step: 0.2 K',
      ),
    );
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(register.runs.get('larch-fast')!.context.readings).toMatchObject([{ values: [71.2, 71.4, 71.2], times: 3 }]);
  });

  test.each([
    ['  - quantity: current\n    value: 0.62', '`value` is `0.62`, a number without a unit'],
    ['  - quantity: current\n    value: 0.62 V\n    phase: load', '`value` is `0.62 V`, which is not a current'],
    [
      '  - quantity: temperature\n    value: 40 °C\n    phase: cool-down',
      'no figure is made of a temperature of the phase `cool-down`',
    ],
    ['  - quantity: power\n    value: 4 W', 'no figure is made of a power without a phase'],
    ['  - quantity: power\n    value: 4 W\n    at_time: 3 h', 'the time of a reading is in no declared phase'],
    ['  - quantity: power\n    value: 4 W\n    phase: load\n    instrument: nobody', 'a reading is by `nobody`'],
    ['  - quantity: power\n    value: [4 W, 5 W]\n    times: 3\n    phase: load', '`times` is `3`'],
    [
      '  - quantity: power\n    value: 4 W\n    phase: load\n  - quantity: power\n    value: 5 W\n    phase: load',
      'a second power of the same phase',
    ],
    ['  - quantity: power\n    value: 9.50 ± 0.30 W\n    phase: load', 'a display shows no `±`'],
    ['  - quantity: power\n    value: 4 W\n    phase: load\n    name: soc', 'a reading is named `soc`, as a channel or a phase is'],
    ['  - quantity: power\n    value: 4 W\n    phase: load\n    name: idle', 'a reading is named `idle`'],
    ['  - quantity: warmth\n    value: 4 W', '`quantity` is `warmth`'],
  ])('located, with what to do: %s', (text, found) => {
    const told = report(with_(text)).filter((each) => each.includes(found));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^content\/runs\/larch-fast\.md:\d+:\d+: error: .* \| /);
  });
});
