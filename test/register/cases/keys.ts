/** Shapes, files, ids, references. */
import { BASE, DEVICE, FAST, METER, NOTE, RATED, SETUP } from '../base.ts';
import type { Case } from './case.ts';

export const KEYS: readonly Case[] = [
  {
    rule: 'bad-rows',
    bad: [[FAST, 'log: larch-2/fast-soak.csv', 'log:\n  file: larch-2/fast-soak.csv\n  rows:\n    a: 1\n    b: 2']],
    report: [
      'content/runs/larch-fast.md:11:5: error: bad-rows: `rows` names several columns | expected one column and whose rows are read, such as `gpu_index: 0`',
    ],
    ok: [[FAST, 'log: larch-2/fast-soak.csv', 'log:\n  file: larch-2/fast-soak.csv\n  rows:\n    a: 1']],
  },
  {
    rule: 'bad-place',
    bad: [
      [
        FAST,
        'log: larch-2/fast-soak.csv',
        'log: larch-2/fast-soak.csv\nsurface:\n  file: larch-2/other.csv\n  photographs:\n    larch-2/other.csv:\n      base: 46 by 44',
      ],
    ],
    report: [
      'content/runs/larch-fast.md:13:13: error: bad-place: `base` is at `46 by 44` | expected a place in the photograph: so many per cent from the left, by so many from the top: `46 % by 44 %`',
    ],
    ok: [
      [
        FAST,
        'log: larch-2/fast-soak.csv',
        'log: larch-2/fast-soak.csv\nsurface:\n  file: larch-2/other.csv\n  photographs:\n    larch-2/other.csv:\n      base: 46 % by 44 %',
      ],
    ],
  },
  {
    rule: 'bad-table',
    bad: [
      [
        FAST,
        'log: larch-2/fast-soak.csv',
        'log: larch-2/fast-soak.csv\nscores:\n  file: larch-2/other.csv\n  columns:\n    tset: Benchmark\n  tests:\n    Copy: up',
      ],
    ],
    report: [
      'content/runs/larch-fast.md:12:5: error: bad-table: `columns` names `tset`, which a table of scores does not have | expected `test`, `value`, `unit`, `better`, `id`, `repeat`, `start`, `end`, `clock`, `power` or `error` | did you mean `test`?',
      'content/runs/larch-fast.md:14:11: error: bad-table: `Copy` is `up` | expected `higher` or `lower`, which is better, and where the table states no unit the unit behind a comma: `higher, MB/s`',
    ],
    ok: [
      [
        FAST,
        'log: larch-2/fast-soak.csv',
        'log: larch-2/fast-soak.csv\nscores:\n  file: larch-2/other.csv\n  columns:\n    test: Benchmark\n  tests:\n    Copy: higher, MB/s',
      ],
    ],
  },
  {
    rule: 'maker-not-stated',
    bad: [[DEVICE, 'maker: Larch Works (invented)', 'maker: not stated']],
    report: [
      'content/devices/larch-2.md:3:8: warning: maker-not-stated: `maker` is `not stated` | expected who makes the device | write the name of the maker, or `unknown` where nobody can tell',
    ],
    ok: [[DEVICE, /maker: .*/.exec(BASE[DEVICE] ?? '')![0], 'maker: unknown']],
  },
  {
    rule: 'unknown-key',
    bad: [[FAST, 'setting:', 'settings:']],
    report: [
      'content/runs/larch-fast.md:5:1: error: unknown-key: a run has no key `settings` | expected `title`, `setup`, `date`, `device`, `specimen`, `conditions`, `setting`, `instruments`, `channels`, `phases`, `steady`, `known`, `licence`, `log`, `logs`, `repairs`, `readings`, `scores`, `surface`, `follows` or `was` | did you mean `setting`?',
    ],
    ok: [],
  },
  {
    rule: 'unknown-key',
    bad: [[DEVICE, 'power: adapter', 'power: adapter\nconstructor: x\n__proto__: y']],
    report: [
      'content/devices/larch-2.md:10:1: error: unknown-key: a device has no key `constructor` | expected `title`, `maker`, `invented`, `rated_clock`, `throttle_at`, `supply`, `power` or `was`',
      'content/devices/larch-2.md:11:1: error: unknown-key: a device has no key `__proto__` | expected `title`, `maker`, `invented`, `rated_clock`, `throttle_at`, `supply`, `power` or `was`',
    ],
    ok: [],
  },
  {
    rule: 'unknown-key',
    bad: [[METER, '  current:', '  curent:']],
    report: [
      'content/instruments/inline-meter.md:5:3: error: unknown-key: `measures` has no key `curent` | expected `temperature`, `ambient`, `clock`, `current`, `voltage`, `power`, `energy`, `throttle_flag`, `fan`, `sound_level`, `utilisation`, `charge_level` or `other` | did you mean `current`?',
    ],
    ok: [[METER, '  current:', '  voltage:\n    resolution: 10 mV\n  current:']],
  },
  {
    rule: 'unknown-key',
    bad: [[SETUP, '  ambient:', '  room:']],
    report: [
      'content/setups/open-bench.md:6:3: error: unknown-key: `conditions` has no key `room` | expected `ambient`, `supply`, `cooling`, `firmware`, `system`, `workload`, `orientation`, `enclosure`, `airflow`, `peripherals`, `microphone_distance` or `background_sound`',
    ],
    ok: [],
  },
  {
    rule: 'missing-key',
    bad: [[FAST, 'log: larch-2/fast-soak.csv\n', '']],
    report: [
      'content/runs/larch-fast.md:1:1: error: missing-key: a run needs the key `log` | write for instance `log: larch-2/fast-soak.csv`; `logs:` with a name for each where there are several; `log: none` where there is none',
    ],
    ok: [],
  },
  {
    rule: 'missing-key',
    bad: [[SETUP, 'device: larch-2\nspecimen: no-1\n', '']],
    report: [
      'content/runs/larch-fast.md:1:1: error: missing-key: a run needs the key `device`, in itself or in its setup | write for instance `device: larch-2`',
      'content/runs/larch-fast.md:1:1: error: missing-key: a run needs the key `specimen`, in itself or in its setup | write for instance `specimen: no-1`',
      'content/runs/larch-rated.md:1:1: error: missing-key: a run needs the key `device`, in itself or in its setup | write for instance `device: larch-2`',
      'content/runs/larch-rated.md:1:1: error: missing-key: a run needs the key `specimen`, in itself or in its setup | write for instance `specimen: no-1`',
    ],
    ok: [
      [SETUP, 'device: larch-2\nspecimen: no-1\n', ''],
      [FAST, 'log:', 'device: larch-2\nspecimen: no-1\nlog:'],
      [RATED, 'log:', 'device: larch-2\nspecimen: no-2\nlog:'],
    ],
  },
  {
    rule: 'bad-logs',
    bad: [[FAST, 'log: larch-2/fast-soak.csv', 'log: larch-2/fast-soak.csv\nlogs:\n  meter: larch-2/other.csv']],
    report: [
      'content/runs/larch-fast.md:8:6: error: bad-logs: the run has `log` and `logs` | expected `log` where there is one, `logs` with a name for each where there are several | move it below `logs`, under a name of its own',
    ],
    ok: [[FAST, 'log: larch-2/fast-soak.csv', 'logs:\n  device: larch-2/fast-soak.csv\n  meter: larch-2/other.csv']],
  },
  {
    rule: 'wrong-kind',
    bad: [[FAST, 'Fast setting', '[Fast, setting]']],
    report: [
      'content/runs/larch-fast.md:2:8: error: wrong-kind: `title` is a list | expected a single value | write for instance `title: Fast setting, hour soak`',
    ],
    ok: [],
  },
  {
    rule: 'wrong-kind',
    bad: [[SETUP, 'soc:\n    quantity: temperature\n    column: "Temp [°C]"\n    instrument: on-die', 'soc: temperature']],
    report: ['content/setups/open-bench.md:10:8: error: wrong-kind: `soc` is a single value | expected a mapping'],
    ok: [],
  },
  {
    rule: 'wrong-kind',
    bad: [[SETUP, 'ambient: 22.4 ± 0.5 °C', 'ambient:\n    value: 22.4 °C']],
    report: [
      'content/setups/open-bench.md:7:5: error: wrong-kind: `ambient` is a mapping | expected a single value | write for instance `ambient: 22.4 ± 0.5 °C`',
    ],
    ok: [],
  },
  {
    rule: 'unknown-word',
    bad: [[DEVICE, 'power: adapter', 'power: adaptor']],
    report: [
      'content/devices/larch-2.md:9:8: error: unknown-word: `power` is `adaptor` | expected `mains`, `adapter` or `battery` | did you mean `adapter`?',
    ],
    ok: [[DEVICE, 'power: adapter', 'power: battery']],
  },
  {
    rule: 'unknown-word',
    bad: [[DEVICE, 'invented: yes', 'invented: true']],
    report: ['content/devices/larch-2.md:4:11: error: unknown-word: `invented` is `true` | expected `yes` or `no`'],
    ok: [[DEVICE, 'invented: yes', 'invented: no']],
  },
  {
    rule: 'unknown-word',
    bad: [[SETUP, 'quantity: temperature', 'quantity: temp']],
    report: [
      'content/setups/open-bench.md:11:15: error: unknown-word: `quantity` is `temp` | expected `temperature`, `ambient`, `clock`, `current`, `voltage`, `power`, `energy`, `throttle_flag`, `fan`, `sound_level`, `utilisation`, `charge_level` or `other` | did you mean `temperature`?',
    ],
    ok: [],
  },
  {
    rule: 'unknown-word',
    bad: [[FAST, 'log:', 'steady: 1-k-in-15-mins\nlog:']],
    report: [
      'content/runs/larch-fast.md:8:9: error: unknown-word: `steady` is `1-k-in-15-mins` | expected `1-k-in-15-min`, `iec-62368-1`, `iec-62368-1-below-limit`, `iec-61010-1`, `bs-1363-1`, `mil-std-810`, `iec-60034-1`, `iec-60598-1`, `iec-61810-7`, `ul-507`, `ul-1029`, `within-3-k` or `within-2-percent` | did you mean `1-k-in-15-min`?',
    ],
    ok: [[FAST, 'log:', 'steady: iec-60034-1\nlog:']],
  },
  {
    rule: 'unknown-word',
    bad: [[NOTE, 'status: published', 'status: held-back']],
    report: [
      'content/notes/overclocking-larch.md:4:9: error: unknown-word: `status` is `held-back` | expected `draft`, `held back` or `published` | did you mean `held back`?',
    ],
    ok: [[NOTE, 'status: published', 'status: held back']],
  },
  {
    rule: 'unknown-word',
    bad: [[NOTE, 'status: published', 'unheld: refused\nstatus: published']],
    report: [
      'content/notes/overclocking-larch.md:4:9: error: unknown-word: `unheld` is `refused` | expected `warn` or `refuse` | did you mean `refuse`?',
    ],
    ok: [[NOTE, 'status: published', 'unheld: refuse\nstatus: published']],
  },
  {
    rule: 'unknown-word',
    bad: [[FAST, 'log:', 'phases: automatic\nlog:']],
    report: [
      'content/runs/larch-fast.md:8:9: error: unknown-word: `phases` is `automatic` | expected `auto`, or a mapping such as `load: 5 .. 65 min`',
    ],
    ok: [[FAST, 'log:', 'phases: auto\nlog:']],
  },
  {
    rule: 'repeated-item',
    bad: [[SETUP, '[inline-meter, on-die]', '[inline-meter, on-die, on-die]']],
    report: [
      'content/setups/open-bench.md:8:37: error: repeated-item: `on-die` stands twice in `instruments` | keep one of the two',
    ],
    ok: [],
  },
  {
    rule: 'too-many',
    bad: [[NOTE, '  - fast.peak_temperature', '  - a\n  - b\n  - c\n  - d']],
    report: ['content/notes/overclocking-larch.md:15:5: error: too-many: `highlights` has 4 items | expected at most 3'],
    ok: [[NOTE, '  - fast.peak_temperature', '  - a\n  - b\n  - "c"']],
  },
  {
    rule: 'bad-date',
    bad: [[FAST, '2026-03-14', '14.3.2026']],
    report: [
      'content/runs/larch-fast.md:4:7: error: bad-date: `date` is `14.3.2026` | expected a day written year-month-day, such as 2026-03-14',
    ],
    ok: [[FAST, '2026-03-14', '2028-02-29']],
  },
  {
    rule: 'bad-date',
    bad: [[FAST, '2026-03-14', '2026-02-29']],
    report: [
      'content/runs/larch-fast.md:4:7: error: bad-date: there is no day `2026-02-29` | expected a day written year-month-day, such as 2026-03-14',
    ],
    ok: [[FAST, '2026-03-14', '"2026-02-28"']],
  },
  {
    rule: 'bad-id',
    bad: [[SETUP, 'specimen: no-1', 'specimen: No. 1']],
    report: [
      'content/setups/open-bench.md:4:11: error: bad-id: `specimen` is `No. 1` | expected an id: lower-case letters and digits, in words joined by single hyphens | did you mean `no-1`?',
    ],
    ok: [[SETUP, 'specimen: no-1', 'specimen: 1']],
  },
  {
    rule: 'bad-id',
    bad: [['content/runs/Larch_Slow.md', '', BASE[RATED]!]],
    report: [
      'content/runs/Larch_Slow.md:1:1: error: bad-id: the name of this file, `Larch_Slow`, is not an id | expected lower-case letters and digits, in words joined by single hyphens | rename it to `larch-slow.md`',
    ],
    ok: [['content/runs/larch-slow.md', '', BASE[RATED]!.replace('rated-soak', 'other')]],
  },
  {
    rule: 'id-collides',
    bad: [['content/devices/Larch-2.md', '', BASE[DEVICE]!]],
    report: [
      'content/devices/Larch-2.md:1:1: error: bad-id: the name of this file, `Larch-2`, is not an id | expected lower-case letters and digits, in words joined by single hyphens | rename it to `larch-2.md`',
      'content/devices/larch-2.md:1:1: error: id-collides: this file has the same id as content/devices/Larch-2.md | rename one of the two',
    ],
    ok: [],
  },
  {
    rule: 'unknown-folder',
    bad: [['content/run/larch-slow.md', '', BASE[RATED]!]],
    report: [
      'content/run/larch-slow.md:1:1: error: unknown-folder: there is no content/run/ | expected a file directly in one of `devices`, `instruments`, `setups`, `runs`, `attempts`, `comparisons`, `quoted`, `notes` or `scripts` | did you mean `runs`?',
    ],
    ok: [['content/published/x.json', '', '{}']],
  },
  {
    rule: 'unknown-folder',
    bad: [['content/runs/2026/larch-slow.md', '', BASE[RATED]!]],
    report: [
      'content/runs/2026/larch-slow.md:1:1: error: unknown-folder: this file is in a folder inside content/runs/ | expected content/runs/<id>.md',
    ],
    ok: [['content/runs/.larch.md', '', '']],
  },
  {
    rule: 'unknown-folder',
    bad: [['content/readme.md', '', 'Hello']],
    report: [
      'content/readme.md:1:1: error: unknown-folder: this file is in no folder of content/ | expected a file directly in one of `devices`, `instruments`, `setups`, `runs`, `attempts`, `comparisons`, `quoted`, `notes` or `scripts`',
    ],
    ok: [['content/record-copies/readme.md', '', 'Hello']],
  },
  {
    rule: 'unread-file',
    bad: [['content/runs/larch-slow.markdown', '', BASE[RATED]!]],
    report: [
      'content/runs/larch-slow.markdown:1:1: warning: unread-file: `larch-slow.markdown` is not read | expected files that end in `.md` | rename it, or move it out of content/',
    ],
    ok: [],
  },
  {
    rule: 'unknown-key',
    bad: [[SETUP, '  workload', '  supply:\n    voltage: 5.1 V\n    place: rail\n  workload']],
    report: ['content/setups/open-bench.md:9:5: error: unknown-key: `supply` has no key `place` | expected `voltage` or `at`'],
    ok: [[SETUP, '  workload', '  supply:\n    voltage: 5.1 V\n    at: rail\n  workload']],
  },
  {
    rule: 'unknown-word',
    bad: [[SETUP, '  workload', '  supply: 5.1 V at the rail\n  workload']],
    report: [
      'content/setups/open-bench.md:7:11: error: unknown-word: `at` is `the rail` | expected `wall`, `adapter output`, `board input`, `rail` or `battery`',
    ],
    ok: [[SETUP, '  workload', '  supply: 5.1 ± 0.1 V at rail\n  workload']],
  },
  {
    rule: 'unknown-key',
    bad: [[SETUP, 'phases:', 'log:\n  file: larch-2/other.csv\nphases:']],
    report: [
      'content/setups/open-bench.md:21:3: error: unknown-key: `log` of a setup has no key `file` | expected `time` or `share`',
    ],
    ok: [[SETUP, 'phases:', 'log:\n  time:\n    zone: "+01:00"\nphases:']],
  },
  {
    rule: 'empty-value',
    bad: [[SETUP, '  board:', '  constructor:\n  __proto__:\n  board:']],
    report: [
      'content/setups/open-bench.md:14:3: error: bad-name: a channel is named `constructor` | expected snake_case: lower-case letters and digits, in words joined by single underscores, beginning with a letter',
      'content/setups/open-bench.md:14:3: error: empty-value: `constructor` has no value | give it a value or remove the key',
      'content/setups/open-bench.md:15:3: error: bad-name: a channel is named `__proto__` | expected snake_case: lower-case letters and digits, in words joined by single underscores, beginning with a letter | did you mean `proto`?',
      'content/setups/open-bench.md:15:3: error: empty-value: `__proto__` has no value | give it a value or remove the key',
    ],
    ok: [],
  },
];
