/** Names of other files, aliases, instruments, what is hardly meant. */
import { ATTEMPTS, DEVICE, DIE, FAST, METER, NOTE, SCRIPT, SETUP, STEPS } from '../base.ts';
import type { Case } from './case.ts';

const AGAIN = `---
title: Fast setting, retest
follows: larch-fast
setup: open-bench
date: 2026-03-15
setting:
  clock: 2.6 GHz
log: larch-2/fast-again.csv
---
`;

export const REFERENCES: readonly Case[] = [
  {
    rule: 'two-tests',
    bad: [
      ['content/runs/larch-again.md', '', AGAIN],
      [NOTE, 'fast: larch-fast', 'fast: larch-again'],
    ],
    report: [
      'content/notes/overclocking-larch.md:8:1: warning: two-tests: `runs` names `larch-again`, and `steps` still compares `larch-fast`, the test before it | expected one test of a setting in all numbers of a note | name `larch-again` in content/comparisons/larch-steps.md, with `retests: follow` there for the next one; or name `larch-fast` under `runs`',
    ],
    ok: [
      ['content/runs/larch-again.md', '', AGAIN],
      [NOTE, 'fast: larch-fast', 'fast: larch-again'],
      [STEPS, 'fast: larch-fast', 'fast: larch-again'],
    ],
  },
  {
    rule: 'unknown-device',
    bad: [[ATTEMPTS, 'device: larch-2', 'device: larch-3']],
    report: [
      'content/attempts/larch-settings.md:3:9: error: unknown-device: there is no device `larch-3` | expected `larch-2` | did you mean `larch-2`?',
    ],
    ok: [],
  },
  {
    rule: 'unknown-device',
    bad: [[SETUP, 'device: larch-2', 'device: larhc-2']],
    report: [
      'content/setups/open-bench.md:3:9: error: unknown-device: there is no device `larhc-2` | expected `larch-2` | did you mean `larch-2`?',
    ],
    ok: [],
  },
  {
    rule: 'unknown-setup',
    bad: [[FAST, 'setup: open-bench', 'setup: open-bank']],
    report: [
      'content/runs/larch-fast.md:3:8: error: unknown-setup: there is no setup `open-bank` | expected `open-bench` | did you mean `open-bench`?',
    ],
    ok: [],
  },
  {
    rule: 'unknown-instrument',
    bad: [[SETUP, '[inline-meter, on-die]', '[inline-meter, on-die, camera]']],
    report: [
      'content/setups/open-bench.md:8:37: error: unknown-instrument: there is no instrument `camera` | expected `inline-meter` or `on-die`',
    ],
    ok: [],
  },
  {
    rule: 'unknown-run',
    bad: [[NOTE, 'fast: larch-fast', 'fast: larch-fats']],
    report: [
      'content/notes/overclocking-larch.md:7:9: error: unknown-run: there is no run `larch-fats` | expected `larch-fast` or `larch-rated` | did you mean `larch-fast`?',
    ],
    ok: [],
  },
  {
    rule: 'unknown-run',
    bad: [[SCRIPT, 'runs: larch-fast', 'runs: fast']],
    report: [
      'content/scripts/overclocking-larch.md:5:7: error: unknown-run: there is no run `fast` | expected `larch-fast` or `larch-rated`',
    ],
    ok: [[SCRIPT, 'runs: larch-fast', 'runs: larch-rated']],
  },
  {
    rule: 'unknown-run',
    bad: [[FAST, 'setup: open-bench', 'setup: open-bench\nfollows: larch-rates']],
    report: [
      'content/runs/larch-fast.md:4:10: error: unknown-run: there is no run `larch-rates` | expected `larch-fast` or `larch-rated` | did you mean `larch-rated`?',
    ],
    ok: [[FAST, 'setup: open-bench', 'setup: open-bench\nfollows: larch-rated']],
  },
  {
    rule: 'follows-itself',
    bad: [[FAST, 'setup: open-bench', 'setup: open-bench\nfollows: larch-fast']],
    report: [
      'content/runs/larch-fast.md:4:10: error: follows-itself: the run `larch-fast` follows `larch-fast`, which follows it | expected an earlier run of the same setting',
    ],
    ok: [[FAST, 'setup: open-bench', 'setup: open-bench\nfollows: larch-rated']],
  },
  {
    rule: 'unknown-comparison',
    bad: [[NOTE, 'steps: larch-steps', 'steps: larch-step']],
    report: [
      'content/notes/overclocking-larch.md:9:10: error: unknown-comparison: there is no comparison `larch-step` | expected `larch-steps` | did you mean `larch-steps`?',
    ],
    ok: [],
  },
  {
    rule: 'unknown-attempts',
    bad: [[NOTE, 'attempts: larch-settings', 'attempts: larch-attempts']],
    report: [
      'content/notes/overclocking-larch.md:10:11: error: unknown-attempts: there is no attempts file `larch-attempts` | expected `larch-settings`',
    ],
    ok: [],
  },
  {
    rule: 'bad-alias',
    bad: [[NOTE, '  rated:', '  2.4 GHz:']],
    report: [
      'content/notes/overclocking-larch.md:6:3: error: bad-alias: an alias is named `2.4 GHz` | expected snake_case: lower-case letters and digits, in words joined by single underscores, beginning with a letter; not a word of the expressions, such as `max`, nor the name of a figure or condition',
    ],
    ok: [[NOTE, '  rated:', '  at_2400:']],
  },
  {
    rule: 'bad-alias',
    bad: [[NOTE, '  rated:', '  max:']],
    report: [
      'content/notes/overclocking-larch.md:6:3: error: bad-alias: an alias is named `max` | expected snake_case: lower-case letters and digits, in words joined by single underscores, beginning with a letter; not a word of the expressions, such as `max`, nor the name of a figure or condition',
    ],
    ok: [[NOTE, '  rated:', '  maximum:']],
  },
  {
    rule: 'name-clash',
    bad: [[NOTE, '  steps:', '  fast:']],
    report: [
      'content/notes/overclocking-larch.md:9:3: error: name-clash: the alias `fast` stands under `runs` and under `comparisons` | rename one of the two',
    ],
    ok: [],
  },
  {
    rule: 'name-clash',
    bad: [
      [SETUP, '  soc:', '  load:'],
      [DEVICE, '  soc:', '  load:'],
    ],
    report: [
      'content/setups/open-bench.md:10:3: error: name-clash: channel `load` has the name of a phase | expected different names, because addresses end in either | rename one of the two',
    ],
    ok: [],
  },
  {
    rule: 'reference-not-an-alias',
    bad: [[STEPS, 'reference: rated', 'reference: ratde']],
    report: [
      'content/comparisons/larch-steps.md:6:12: error: reference-not-an-alias: `reference` is `ratde` | expected an alias of this comparison: `rated` or `fast` | did you mean `rated`?',
    ],
    ok: [[STEPS, 'reference: rated', 'reference: fast']],
  },
  {
    rule: 'repeated-run',
    bad: [[STEPS, 'fast: larch-fast', 'fast: larch-rated']],
    report: [
      'content/comparisons/larch-steps.md:5:9: error: repeated-run: the run `larch-rated` stands under `rated` and under `fast` | keep one of the two',
    ],
    ok: [],
  },
  {
    rule: 'unlike-runs',
    bad: [[STEPS, '  rated: larch-rated\n  fast: larch-fast', '  rated: [larch-rated, larch-fast]\n  fast: larch-fast']],
    report: [
      'content/comparisons/larch-steps.md:4:24: error: unlike-runs: `larch-fast` is of another setting than `larch-rated` | expected runs of one device, specimen and setting under `rated` | give it an alias of its own',
      'content/comparisons/larch-steps.md:5:9: error: repeated-run: the run `larch-fast` stands under `rated` and under `fast` | keep one of the two',
    ],
    ok: [[STEPS, 'fast: larch-fast', 'fast: [larch-fast]']],
  },
  {
    rule: 'no-repeat',
    bad: [[STEPS, '  fast: larch-fast\n', '  fast: larch-fast\nrepeats: [larch-fast]\n']],
    report: [
      'content/comparisons/larch-steps.md:6:11: error: no-repeat: the run `larch-fast` is like no other under `repeats` | expected two runs or more of one specimen, setting and conditions, which differ in their day and ambient alone',
      'content/comparisons/larch-steps.md:6:11: error: repeated-run: the run `larch-fast` stands under `fast` and under `repeats` | keep one of the two',
    ],
    ok: [],
  },
  {
    rule: 'too-few',
    bad: [[STEPS, '  fast: larch-fast\n', '']],
    report: [
      'content/comparisons/larch-steps.md:3:1: error: too-few: a comparison has one setting | expected two settings or more',
    ],
    ok: [],
  },
  {
    rule: 'throttle-channel',
    bad: [[DEVICE, '  soc:', '  sock:']],
    report: [
      'content/devices/larch-2.md:7:3: warning: throttle-channel: no run of this device has a temperature channel `sock` | did you mean `soc`?',
    ],
    ok: [[DEVICE, '\n  soc:', '']],
  },
  {
    rule: 'same-log',
    bad: [[FAST, 'fast-soak', 'rated-soak']],
    report: [
      'content/runs/larch-rated.md:7:6: warning: same-log: run `larch-fast` reads the same log, `larch-2/rated-soak.csv` | name another log if this file was copied from that run',
    ],
    ok: [[FAST, 'fast-soak', 'other']],
  },
  {
    rule: 'instrument-not-listed',
    bad: [[SETUP, '[inline-meter, on-die]', 'on-die']],
    report: [
      "content/setups/open-bench.md:19:17: error: instrument-not-listed: channel `board` is read by `inline-meter`, which is not in the run's list of instruments | expected `on-die` | add `inline-meter` to `instruments`",
    ],
    ok: [],
  },
  {
    rule: 'instrument-not-listed',
    bad: [[FAST, 'log:', 'channels:\n  board:\n    instrument: inlinemeter\nlog:']],
    report: [
      "content/runs/larch-fast.md:10:17: error: instrument-not-listed: channel `board` is read by `inlinemeter`, which is not in the run's list of instruments | expected `inline-meter` or `on-die` | did you mean `inline-meter`?",
    ],
    ok: [[FAST, 'log:', 'channels:\n  board:\n    instrument: on-die\nlog:']],
  },
  {
    rule: 'no-resolution',
    bad: [[METER, '    resolution: 0.01 A\n', '']],
    report: [
      'content/instruments/inline-meter.md:6:15: error: no-resolution: `accuracy` counts digits: `0.5 % + 2 digits` | expected a `resolution`, which says what the last digit is worth | add for instance `resolution: 0.01 A`',
    ],
    ok: [
      [METER, '    resolution: 0.01 A\n', ''],
      [METER, ' + 2 digits', ''],
    ],
  },
  {
    rule: 'bad-accuracy',
    bad: [[METER, '0.5 % + 2 digits', '0.5 % + 2 digit of V']],
    report: [
      'content/instruments/inline-meter.md:6:25: error: bad-accuracy: `accuracy` is `0.5 % + 2 digit of V`: unknown unit digit of V | expected an accuracy such as ± 0.5 °C, 0.5 % + 2 digits, 1 % of range 5 A, or type K class 1',
    ],
    ok: [[METER, '0.5 % + 2 digits', '± 20 mA']],
  },
  {
    rule: 'bad-accuracy',
    bad: [[METER, '0.5 % + 2 digits', '0.5 % + 20 mV']],
    report: [
      'content/instruments/inline-meter.md:6:15: error: bad-accuracy: `accuracy` of current is `0.5 % + 20 mV`, in V | expected limits as a data sheet states them, such as `0.5 % + 2 digits` or `± 0.01 A`',
    ],
    ok: [[DIE, '    resolution', '    accuracy: ± 1.5 °C\n    resolution']],
  },
  {
    rule: 'no-channel',
    bad: [[FAST, 'log:', 'channels:\n  sok: none\nlog:']],
    report: [
      'content/runs/larch-fast.md:9:3: error: no-channel: the setup has no channel `sok` to take away | expected `soc` or `board` | did you mean `soc`?',
    ],
    ok: [[FAST, 'log:', 'channels:\n  soc: none\nlog:']],
  },
  {
    rule: 'missing-key',
    bad: [
      ['content/devices/birch-1.md', '', '---\ntitle: Birch 1\nmaker: Larch Works (invented)\n---\n'],
      [FAST, 'log:', 'device: birch-1\nlog:'],
    ],
    report: [
      'content/runs/larch-fast.md:8:9: error: missing-key: specimen `no-1` of the setup is one of `larch-2` | expected a run of another device to state its own `specimen` | write for instance `specimen: no-1`',
    ],
    ok: [
      ['content/devices/birch-1.md', '', '---\ntitle: Birch 1\nmaker: Larch Works (invented)\n---\n'],
      [FAST, 'log:', 'device: birch-1\nspecimen: no-1\nlog:'],
    ],
  },
];
