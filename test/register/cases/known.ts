/** Mistakes in what a run says is known of its log. */
import { FAST, STEPS } from '../base.ts';
import type { Case } from './case.ts';

const knownOf = (entries: string): readonly [string, string, string] => [FAST, 'log:', `known:\n${entries}\nlog:`];

const QUOTED = `---
title: Hot boxes
source:
  author: R. Fern
  address: https://articles.example/boxes
  accessed: 2026-03-01
figures:
  load_power: 9.5 W
---
`;

export const KNOWN: readonly Case[] = [
  {
    rule: 'bad-repair',
    bad: [[FAST, 'log:', 'known:\n  - lines: line 12\n    reason: noise\nlog:']],
    report: [
      'content/runs/larch-fast.md:9:12: error: bad-repair: `lines` is `line 12` | expected lines of the log, numbered from 1: one such as `12`, or first and last such as `12..15`',
    ],
    ok: [[FAST, 'log:', 'known:\n  - lines: 12\n    reason: noise\n  - lines: 20 .. 30\n    reason: more noise\nlog:']],
  },
  {
    rule: 'bad-known',
    bad: [knownOf('  - reason: noise')],
    report: [
      'content/runs/larch-fast.md:9:5: error: bad-known: an entry of `known` says none of `lines`, `channel` and `phase` | expected the lines of the log, the channel that has few readings, or the phase that the log shows elsewhere',
    ],
    ok: [knownOf('  - channel: soc\n    reason: noise')],
  },
  {
    rule: 'bad-known',
    bad: [knownOf('  - lines: 12\n    channel: soc\n    reason: noise')],
    report: [
      'content/runs/larch-fast.md:9:5: error: bad-known: an entry of `known` says more than one of `lines`, `channel` and `phase` | expected the lines of the log, the channel that has few readings, or the phase that the log shows elsewhere',
    ],
    ok: [knownOf('  - lines: 12\n    reason: noise')],
  },
  {
    rule: 'bad-quoted',
    bad: [['content/quoted/older.md', '', QUOTED.replace('load_power', 'warmth')]],
    report: [
      'content/quoted/older.md:8:3: error: bad-quoted: `warmth` is not a figure that can be quoted | expected the name of a figure, such as `steady_temperature` or `load_power`',
    ],
    ok: [['content/quoted/older.md', '', QUOTED]],
  },
  {
    rule: 'unknown-quoted',
    bad: [
      ['content/quoted/older.md', '', QUOTED],
      [STEPS, 'reference:', 'quoted: oldest\nreference:'],
    ],
    report: [
      'content/comparisons/larch-steps.md:6:9: error: unknown-quoted: there is no quoted file `oldest` | expected `older` | did you mean `older`?',
    ],
    ok: [
      ['content/quoted/older.md', '', QUOTED],
      [STEPS, 'reference:', 'quoted: older\nreference:'],
    ],
  },
  {
    rule: 'bad-reading',
    bad: [[FAST, 'log:', 'readings:\n  - quantity: power\n    value: 4 W\nlog:']],
    report: [
      'content/runs/larch-fast.md:9:5: error: bad-reading: no figure is made of a power without a phase | expected a power of the phase `idle` or `load` | write for instance `phase: load`',
    ],
    ok: [[FAST, 'log:', 'readings:\n  - quantity: power\n    value: 4 W\n    phase: load\nlog:']],
  },
  {
    rule: 'no-channel',
    bad: [knownOf('  - channel: sok\n    reason: noise')],
    report: [
      'content/runs/larch-fast.md:9:14: error: no-channel: `known` names the channel `sok`, which the run has not | expected `soc` or `board` | did you mean `soc`?',
    ],
    ok: [knownOf('  - channel: soc\n    reason: noise')],
  },
];
