/** What a run says of its log: time, phases, repairs, channels. */
import { FAST, RATED, SETUP } from '../base.ts';
import type { Case } from './case.ts';

const withRepairs = (text: string) => [FAST, 'log:', `repairs:\n${text}\nlog:`] as const;
const withLog = (text: string) => [FAST, 'log: larch-2/fast-soak.csv', `log:${text}`] as const;
const withPhases = (text: string) => [SETUP, '  idle: 0 .. 5 min\n  load: 5 .. 65 min\n', text] as const;

export const SOAK: readonly Case[] = [
  {
    rule: 'bad-quantity',
    bad: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    column: t\n    every: 1 s')],
    report: [
      'content/runs/larch-fast.md:12:12: error: bad-quantity: `every` is of a log without a time, and a time column is declared too | remove `every`, or the `column`, `format` and `unit` of the time',
    ],
    ok: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    every: 1 s')],
  },
  {
    rule: 'bad-name',
    bad: [[SETUP, 'channels:', 'channels:\n  Sensor 1 .. Probe 2: temperature, °C']],
    report: [
      'content/setups/open-bench.md:10:3: error: bad-name: `Sensor 1 .. Probe 2` is not a range of columns | expected two names that differ in one number alone, the lower one first, such as `Sensor 1 .. Sensor 8`',
    ],
    ok: [],
  },
  {
    rule: 'bad-zone',
    bad: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    zone: CET')],
    report: [
      'content/runs/larch-fast.md:11:11: error: bad-zone: `zone` is `CET` | expected a name of the IANA time zone database such as `Europe/Vienna`, an offset such as `+01:00`, or `UTC` | abbreviations such as CET or EST are ambiguous: write the name or the offset',
    ],
    ok: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    zone: Europe/Vienna')],
  },
  {
    rule: 'bad-date',
    bad: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    start: 2026-03-14 10:00')],
    report: [
      'content/runs/larch-fast.md:11:12: error: bad-date: `start` is `2026-03-14 10:00` | expected a day, a clock time and its offset from UTC, such as 2026-03-14T09:00:00Z or 2026-03-14T10:00:00+01:00',
    ],
    ok: [withLog('\n  file: larch-2/fast-soak.csv\n  time:\n    start: 2026-03-14T10:00:00+01:00')],
  },
  {
    rule: 'unknown-key',
    bad: [[SETUP, 'channels:', 'log:\n  time:\n    start: 2026-03-14T10:00:00Z\nchannels:']],
    report: [
      'content/setups/open-bench.md:11:5: error: unknown-key: `time` of a setup has no key `start` | expected `column`, `format`, `unit`, `zone`, `date_order` or `every`',
    ],
    ok: [[SETUP, 'channels:', 'log:\n  time:\n    zone: UTC\nchannels:']],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: 0 - 5 min\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `0 - 5 min` | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [withPhases('  load: 300 s .. 1 h\n  cool-down: 1 h ..\n')],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: 5 .. 65\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `5 .. 65`: `65` has no unit | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [withPhases('  load: 0.5 .. 65.5 min\n')],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: 5 min .. 2 min\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `5 min .. 2 min`, which ends before it begins | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [withPhases('  load: 5 min .. 2 h\n')],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: 5 .. 5 min\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `5 .. 5 min`, which is empty | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: -5 .. 5 min\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `-5 .. 5 min`, which begins before the first row | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: .. 5 min\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `.. 5 min` | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [withPhases('  load: 0 .. 5 min\n')],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: 1 .. 5 V\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `1 .. 5 V`: `5 V` is not a time | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: 1 .. 5 mins.\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `1 .. 5 mins.`: unknown unit mins. | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [],
  },
  {
    rule: 'bad-phase',
    bad: [withPhases('  load: 1 min .. 5 ± 1 min\n')],
    report: [
      'content/setups/open-bench.md:21:9: error: bad-phase: phase `load` is `1 min .. 5 ± 1 min`: `5 ± 1 min` has an uncertainty | expected from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log',
    ],
    ok: [],
  },
  {
    rule: 'phases-overlap',
    bad: [withPhases('  load: 4 .. 65 min\n  idle: 0 .. 5 min\n')],
    report: [
      'content/setups/open-bench.md:22:3: error: phases-overlap: phase `idle` overlaps `load` | expected stretches that share no time; one may begin where another ends | `load` stands on line 21',
    ],
    ok: [withPhases('  load: 5 .. 65 min\n  idle: 0 .. 5 min\n')],
  },
  {
    rule: 'phases-overlap',
    bad: [withPhases('  all: 0 ..\n  idle: 0 .. 5 min\n  load: 5 .. 6 min\n')],
    report: [
      'content/setups/open-bench.md:22:3: error: phases-overlap: phase `idle` overlaps `all` | expected stretches that share no time; one may begin where another ends | `all` stands on line 21',
      'content/setups/open-bench.md:23:3: error: phases-overlap: phase `load` overlaps `all` | expected stretches that share no time; one may begin where another ends | `all` stands on line 21',
    ],
    ok: [],
  },
  {
    rule: 'bad-name',
    bad: [[SETUP, '  board:', '  Board input:']],
    report: [
      'content/setups/open-bench.md:14:3: error: bad-name: a channel is named `Board input` | expected snake_case: lower-case letters and digits, in words joined by single underscores, beginning with a letter | did you mean `board_input`?',
    ],
    ok: [[SETUP, '  board:', '  board_input:']],
  },
  {
    rule: 'bad-name',
    bad: [withPhases('  5 minutes: 0 .. 5 min\n')],
    report: [
      'content/setups/open-bench.md:21:3: error: bad-name: a phase is named `5 minutes` | expected lower-case letters and digits, in words joined by hyphens or underscores, beginning with a letter',
    ],
    ok: [withPhases('  warm-up: 0 .. 5 min\n')],
  },
  {
    rule: 'bad-name',
    bad: [[FAST, 'voltage_offset: 40 mV', 'powerLimit: 15 W']],
    report: [
      'content/runs/larch-fast.md:7:3: error: bad-name: a setting is named `powerLimit` | expected snake_case: lower-case letters and digits, in words joined by single underscores, beginning with a letter | did you mean `power_limit`?',
    ],
    ok: [[FAST, 'voltage_offset: 40 mV', 'power_limit: 15 W']],
  },
  {
    rule: 'bad-repair',
    bad: [withRepairs('  - drop: 15..12\n    reason: noise')],
    report: [
      'content/runs/larch-fast.md:9:11: error: bad-repair: `drop` is `15..12` | expected lines of the log, numbered from 1: one such as `12`, or first and last such as `12..15`',
    ],
    ok: [withRepairs('  - drop: 12..15\n    reason: noise')],
  },
  {
    rule: 'bad-repair',
    bad: [withRepairs('  - reason: noise')],
    report: [
      'content/runs/larch-fast.md:9:5: error: bad-repair: a repair says neither `drop` nor `shift_time` | expected one of `drop` and `shift_time`, with the lines of the log',
    ],
    ok: [withRepairs('  - drop: 12\n    reason: noise')],
  },
  {
    rule: 'bad-repair',
    bad: [withRepairs('  - drop: 12\n    shift_time: 13\n    by: 1 h\n    reason: noise')],
    report: [
      'content/runs/larch-fast.md:9:5: error: bad-repair: a repair cannot both drop and shift the same lines | expected one of `drop` and `shift_time`, with the lines of the log',
    ],
    ok: [withRepairs('  - shift_time: 13 .. 400\n    by: -1 h\n    reason: the clock was set')],
  },
  {
    rule: 'bad-repair',
    bad: [withRepairs('  - drop: 12\n    by: 1 h\n    reason: noise')],
    report: ['content/runs/larch-fast.md:10:9: error: bad-repair: `by` goes with `shift_time` only | remove this line'],
    ok: [],
  },
  {
    rule: 'bad-repair',
    bad: [withRepairs('  - shift_time: 12..15\n    by: 0 s\n    reason: noise')],
    report: [
      'content/runs/larch-fast.md:10:9: error: bad-repair: a shift by nothing is no repair | state the shift, or remove the repair',
    ],
    ok: [],
  },
  {
    rule: 'missing-key',
    bad: [withRepairs('  - shift_time: 12..15\n    reason: noise')],
    report: [
      'content/runs/larch-fast.md:9:5: error: missing-key: a repair that shifts time needs the key `by` | write for instance `by: 3600 s`',
    ],
    ok: [],
  },
  {
    rule: 'channel-incomplete',
    bad: [[SETUP, '    quantity: current\n', '']],
    report: [
      'content/setups/open-bench.md:14:3: error: channel-incomplete: channel `board` has no `quantity` | expected `quantity` and `column`, in the run or in its setup | write for instance `quantity: temperature`',
    ],
    ok: [
      [SETUP, '    quantity: current\n', ''],
      [FAST, 'log:', 'channels:\n  board:\n    quantity: current\nlog:'],
      [RATED, 'log:', 'channels:\n  board: none\nlog:'],
    ],
  },
  {
    rule: 'channel-incomplete',
    bad: [[FAST, 'log:', 'channels:\n  ssd:\n    quantity: temperature\nlog:']],
    report: [
      'content/runs/larch-fast.md:9:3: error: channel-incomplete: channel `ssd` has no `column` | expected `quantity` and `column`, in the run or in its setup | write for instance `column: Temp`',
    ],
    ok: [
      [
        FAST,
        'log:',
        'channels:\n  ssd:\n    quantity: temperature\n    column: SSD\n    instrument: on-die\n    missing: [N/A, "-"]\nlog:',
      ],
    ],
  },
  {
    rule: 'channel-mismatch',
    bad: [[SETUP, '    instrument: on-die', '    at: rail\n    instrument: on-die']],
    report: [
      'content/setups/open-bench.md:13:9: error: channel-mismatch: channel `soc` is temperature and states `at` | expected `at` with `current`, `voltage`, `power` or `energy` only | remove this line',
    ],
    ok: [[SETUP, 'at: board input', 'at: rail']],
  },
  {
    rule: 'channel-mismatch',
    bad: [[SETUP, '    at: board input', '    bits:\n      0: low voltage']],
    report: [
      'content/setups/open-bench.md:14:3: warning: place-unstated: channel `board` is current and does not say where it is measured | expected `at`, one of wall, adapter output, board input, rail, battery | write for instance `at: board input`',
      'content/setups/open-bench.md:19:7: error: channel-mismatch: channel `board` is current and states `bits` | expected `bits` with `throttle_flag` only | remove them',
    ],
    ok: [
      [
        SETUP,
        '  board:',
        '  flags:\n    quantity: throttle_flag\n    column: flags\n    bits:\n      0: low voltage\n      2: hot\n  board:',
      ],
    ],
  },
  {
    rule: 'bad-bits',
    bad: [
      [
        SETUP,
        '  board:',
        '  flags:\n    quantity: throttle_flag\n    column: flags\n    bits:\n      0x1: low voltage\n      64: hot\n  board:',
      ],
    ],
    report: [
      'content/setups/open-bench.md:18:7: error: bad-bits: `bits` has the key `0x1` | expected the number of a bit, 0 for the lowest, at most 63',
      'content/setups/open-bench.md:19:7: error: bad-bits: `bits` has the key `64` | expected the number of a bit, 0 for the lowest, at most 63',
    ],
    ok: [],
  },
  {
    rule: 'bad-bits',
    bad: [
      [
        SETUP,
        '  board:',
        '  flags:\n    quantity: throttle_flag\n    column: flags\n    bits:\n      2: hot\n    sticky:\n      2: was hot\n  board:',
      ],
    ],
    report: [
      'content/setups/open-bench.md:20:7: error: bad-bits: channel `flags` has the bit 2 in `bits` and in `sticky` | expected under `bits` what a bit says of now, under `sticky` what it says of all the time since the boot | take 2 out of one of them',
    ],
    ok: [
      [
        SETUP,
        '  board:',
        '  flags:\n    quantity: throttle_flag\n    column: flags\n    bits:\n      2: hot\n    sticky:\n      18: hot\n  board:',
      ],
    ],
  },
  {
    rule: 'channel-mismatch',
    bad: [[SETUP, '    at: board input', '    at: board input\n    shows: delivered']],
    report: [
      'content/setups/open-bench.md:19:12: error: channel-mismatch: channel `board` is current and states `shows` | expected `shows` with `clock` only | remove this line',
    ],
    ok: [[SETUP, '  board:', '  core:\n    quantity: clock\n    column: MHz\n    shows: requested\n  board:']],
  },
  {
    rule: 'channel-mismatch',
    bad: [[SETUP, '  board:', '  flags:\n    quantity: throttle_flag\n    column: flags\n    step: 1\n  board:']],
    report: [
      'content/setups/open-bench.md:17:11: error: channel-mismatch: channel `flags` is throttle_flag and states `step` | expected `step` with readings that are told apart by a step | remove this line',
    ],
    ok: [[SETUP, '  board:', '  core:\n    quantity: clock\n    column: MHz\n    step: 1 MHz\n  board:']],
  },
  {
    rule: 'wrong-unit',
    bad: [[SETUP, '    at: board input', '    at: board input\n    step: 0.01 V']],
    report: [
      'content/setups/open-bench.md:19:11: error: wrong-unit: `step` is `0.01 V`, which is not a current | expected a current, such as 0.01 A',
    ],
    ok: [[SETUP, '    at: board input', '    at: board input\n    step: 0.01 A']],
  },
  {
    rule: 'place-unstated',
    bad: [[SETUP, '    at: board input\n', '']],
    report: [
      'content/setups/open-bench.md:14:3: warning: place-unstated: channel `board` is current and does not say where it is measured | expected `at`, one of wall, adapter output, board input, rail, battery | write for instance `at: board input`',
    ],
    ok: [[SETUP, 'at: board input', 'at: rail']],
  },
  {
    rule: 'no-instrument',
    bad: [[SETUP, '    instrument: on-die\n', '']],
    report: [
      'content/setups/open-bench.md:10:3: warning: no-instrument: channel `soc`: no instrument: figures are repeatability only | name the `instrument` that reads it, and state its accuracy in content/instruments/',
    ],
    ok: [
      [SETUP, '    instrument: on-die\n', ''],
      [SETUP, '    instrument: inline-meter\n', ''],
    ],
  },
  {
    rule: 'quantity-overridden',
    bad: [[FAST, 'log:', 'channels:\n  soc:\n    quantity: ambient\nlog:']],
    report: [
      'content/runs/larch-fast.md:10:15: warning: quantity-overridden: channel `soc` is ambient; in the setup it is temperature | give the column a channel name of its own, unless the setup is wrong for this run',
    ],
    ok: [[FAST, 'log:', 'channels:\n  soc:\n    quantity: temperature\nlog:']],
  },
];
