/** Quantities and paths. */
import { DEVICE, FAST, METER, SETUP } from '../base.ts';
import type { Case } from './case.ts';

const withLog = (text: string) => [FAST, 'log: larch-2/fast-soak.csv', `log:${text}`] as const;

export const MEASURED: readonly Case[] = [
  {
    rule: 'number-without-unit',
    bad: [[SETUP, '22.4 ± 0.5 °C', '22']],
    report: [
      'content/setups/open-bench.md:6:12: error: number-without-unit: `ambient` is `22`, a number without a unit | expected a temperature with its unit | write the unit after the number, for instance `ambient: 22.4 °C`',
    ],
    ok: [[SETUP, '22.4 ± 0.5 °C', '72 °F']],
  },
  {
    rule: 'number-without-unit',
    bad: [[FAST, 'clock: 2.6 GHz', 'clock: "2.60"']],
    report: [
      'content/runs/larch-fast.md:6:10: error: number-without-unit: `clock` is `2.60`, a number without a unit | expected a clock with its unit | write the unit after the number, for instance `clock: 2.6 GHz`',
    ],
    ok: [[FAST, 'clock: 2.6 GHz', 'clock: "2.60 GHz"']],
  },
  {
    rule: 'number-without-unit',
    bad: [[FAST, 'voltage_offset: 40 mV', 'memory_clock: 3200']],
    report: [
      'content/runs/larch-fast.md:7:17: error: number-without-unit: `memory_clock` is `3200`, a number without a unit | expected a clock with its unit | write the unit after the number, for instance `memory_clock: 2.6 GHz`',
    ],
    ok: [[FAST, 'voltage_offset: 40 mV', 'threads: 4']],
  },
  {
    rule: 'number-without-unit',
    bad: [[SETUP, '  workload', '  airflow: 2\n  workload']],
    report: [
      'content/setups/open-bench.md:7:12: error: number-without-unit: `airflow` is `2`, a number without a unit | expected words, or a number with its unit | write the unit after the number, for instance `airflow: 1.5 m/s`',
    ],
    ok: [[SETUP, '  workload', '  firmware: 1.10\n  airflow: still air\n  workload']],
  },
  {
    rule: 'number-without-unit',
    bad: [[METER, '0.5 % + 2 digits', '± 0.5']],
    report: [
      'content/instruments/inline-meter.md:6:15: error: number-without-unit: `accuracy` is `± 0.5`, a number without a unit | expected limits as a data sheet states them, such as `0.5 % + 2 digits` or `± 0.01 A`',
    ],
    ok: [],
  },
  {
    rule: 'wrong-unit',
    bad: [[SETUP, '22.4 ± 0.5 °C', '22.4 ± 0.5 V']],
    report: [
      'content/setups/open-bench.md:6:12: error: wrong-unit: `ambient` is `22.4 ± 0.5 V`, which is not a temperature | expected a temperature, such as 22.4 °C',
    ],
    ok: [[SETUP, '22.4 ± 0.5 °C', '295.6 K']],
  },
  {
    rule: 'wrong-unit',
    bad: [[METER, '0.01 A', '0.01 V']],
    report: [
      'content/instruments/inline-meter.md:7:17: error: wrong-unit: `resolution` is `0.01 V`, which is not a current | expected a current, such as 0.01 A',
    ],
    ok: [[METER, '0.01 A', '10 mA']],
  },
  {
    rule: 'bad-quantity',
    bad: [[FAST, '2.6 GHz', '2.6 Ghz']],
    report: ['content/runs/larch-fast.md:6:14: error: bad-quantity: `clock` is `2.6 Ghz`: unknown unit Ghz | did you mean GHz?'],
    ok: [[FAST, '2.6 GHz', '2600 MHz']],
  },
  {
    rule: 'bad-quantity',
    bad: [[FAST, '2.6 GHz', '-2.6 GHz']],
    report: ['content/runs/larch-fast.md:6:10: error: bad-quantity: `clock` is `-2.6 GHz` | expected a clock above 0 Hz'],
    ok: [],
  },
  {
    rule: 'bad-quantity',
    bad: [[DEVICE, '85 °C', '-300 °C']],
    report: [
      'content/devices/larch-2.md:7:8: error: bad-quantity: `soc` is `-300 °C`: -300 °C is below absolute zero | expected a temperature above −273.15 °C',
    ],
    ok: [],
  },
  {
    rule: 'bad-quantity',
    bad: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    format: iso8601\n    unit: s')],
    report: [
      'content/runs/larch-fast.md:12:11: error: bad-quantity: `unit` does not go with the format `iso8601` | remove this line; hours, minutes and seconds are named by the format',
    ],
    ok: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    format: elapsed\n    unit: s')],
  },
  {
    rule: 'quantity-as-words',
    bad: [[FAST, 'voltage_offset: 40 mV', 'fan_profile: 3 blades']],
    report: [
      'content/runs/larch-fast.md:7:16: warning: quantity-as-words: `fan_profile` is kept as words: `3 blades` has no unit that is known | correct the unit, or put the value in quotes if it is words',
    ],
    ok: [[FAST, 'voltage_offset: 40 mV', 'fan_profile: "3 blades"']],
  },
  {
    rule: 'data-missing',
    bad: [[FAST, 'larch-2/fast-soak.csv', 'larch-2/fast-soack.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-missing: `log` is `larch-2/fast-soack.csv`, and data/ holds no such file | data/larch-2/ is there, `fast-soack.csv` in it is not: check the name',
    ],
    ok: [],
  },
  {
    rule: 'data-missing',
    bad: [[FAST, 'larch-2/fast-soak.csv', 'data/larch-2/fast-soak.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-missing: `log` is `data/larch-2/fast-soak.csv`, and data/ holds no such file | did you mean `larch-2/fast-soak.csv`?',
    ],
    ok: [],
  },
  {
    rule: 'data-missing',
    bad: [[FAST, 'larch-2/fast-soak.csv', 'larch-3/fast-soak.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-missing: `log` is `larch-3/fast-soak.csv`, and data/ holds no such file | there is no folder data/larch-3/: check the name',
    ],
    ok: [],
  },
  {
    rule: 'data-missing',
    bad: [[FAST, 'log:', 'scores: larch-2/fast-scores\nlog:']],
    report: [
      'content/runs/larch-fast.md:8:9: error: data-missing: `scores` is `larch-2/fast-scores`, and data/ holds no such file | did you mean `larch-2/fast-scores.csv`?',
    ],
    ok: [[FAST, 'log:', 'scores: larch-2/fast-scores.csv\nlog:']],
  },
  {
    rule: 'data-folder',
    bad: [[FAST, 'larch-2/fast-soak.csv', 'larch-2']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-folder: `log` is `larch-2`, which is a folder | expected the path of a file',
    ],
    ok: [],
  },
  {
    rule: 'data-outside',
    bad: [[FAST, 'larch-2/fast-soak.csv', '../secret.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-outside: `log` is `../secret.csv`, which climbs out of a folder | expected a plain path below data/, such as `larch-2/fast-soak.csv`',
    ],
    ok: [],
  },
  {
    rule: 'data-outside',
    bad: [[FAST, 'larch-2/fast-soak.csv', '/etc/passwd']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-outside: `log` is `/etc/passwd`, a path that does not begin at data/ | expected a plain path below data/, such as `larch-2/fast-soak.csv`',
    ],
    ok: [],
  },
  {
    rule: 'data-outside',
    bad: [[FAST, 'larch-2/fast-soak.csv', 'link/fast-soak.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-outside: `log` is `link/fast-soak.csv`, which leads out of data/ | copy the file below data/',
    ],
    ok: [],
  },
  {
    rule: 'data-path',
    bad: [[FAST, 'larch-2/fast-soak.csv', 'larch-2\\fast-soak.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-path: `log` is `larch-2\\fast-soak.csv`, which holds a backslash | expected a plain path below data/, such as `larch-2/fast-soak.csv`',
    ],
    ok: [],
  },
  {
    rule: 'data-path',
    bad: [[FAST, 'larch-2/fast-soak.csv', 'larch-2//fast-soak.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-path: `log` is `larch-2//fast-soak.csv`, which holds an empty step | expected a plain path below data/, such as `larch-2/fast-soak.csv`',
    ],
    ok: [],
  },
  {
    rule: 'data-path',
    bad: [[FAST, 'larch-2/fast-soak.csv', '"larch-2/\\t.csv"']],
    report: [
      'content/runs/larch-fast.md:8:6: error: data-path: `log` is `larch-2/ .csv`, which holds a control character | expected a plain path below data/, such as `larch-2/fast-soak.csv`',
    ],
    ok: [],
  },
];
