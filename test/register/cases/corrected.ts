/** What a note says of its published words. */
import { NOTE } from '../base.ts';
import type { Case } from './case.ts';

const AFTER = 'disclosure: Bought at retail.';
const correction = (...lines: string[]) => `${AFTER}\ncorrections:\n${lines.map((line) => `  ${line}\n`).join('')}`.trimEnd();
const WHOLE = ['- number: fast.peak_temperature', '  now: 72.1 °C', '  since: 2026-05-02', '  reason: The probe was read twice.'];

const MANY = [
  '- numbers:',
  '    - number: fast.peak_temperature',
  '      now: 72.1 °C',
  '    - number: fast.load_power - rated.load_power',
  '      now: 1.20 W',
  ...WHOLE.slice(2),
];

export const CORRECTED: readonly Case[] = [
  {
    rule: 'bad-address',
    bad: [[NOTE, AFTER, `${AFTER}\nwas: notes/the old one`]],
    report: [
      'content/notes/overclocking-larch.md:14:6: error: bad-address: `was` names `notes/the old one` | expected an address of this site, without what stands before it: `notes/old-name/` or `notes/name/plots/trace.svg`',
    ],
    ok: [[NOTE, AFTER, `${AFTER}\nwas:\n  - notes/the-old-one/\n  - notes/overclocking-larch/plots/trace.svg`]],
  },
  {
    rule: 'missing-key',
    bad: [[NOTE, AFTER, correction(...WHOLE.slice(0, 3))]],
    report: [
      'content/notes/overclocking-larch.md:15:5: error: missing-key: a correction needs the key `reason` | write for instance `reason: the probe fell off`',
    ],
    ok: [[NOTE, AFTER, correction(...WHOLE)]],
  },
  {
    rule: 'bad-date',
    bad: [[NOTE, AFTER, correction(...WHOLE.map((line) => line.replace('05-02', '02-30')))]],
    report: [
      'content/notes/overclocking-larch.md:17:12: error: bad-date: there is no day `2026-02-30` | expected a day written year-month-day, such as 2026-03-14',
    ],
    ok: [[NOTE, AFTER, correction(...WHOLE)]],
  },
  {
    rule: 'bad-correction',
    bad: [[NOTE, AFTER, correction(...MANY, '  number: fast.mean_clock')]],
    report: [
      'content/notes/overclocking-larch.md:22:13: error: bad-correction: `number` stands beside `numbers` | move it into the list `numbers`, with the others',
    ],
    ok: [[NOTE, AFTER, correction(...MANY)]],
  },
  {
    rule: 'missing-key',
    bad: [[NOTE, AFTER, correction(...MANY.filter((line) => !line.includes('72.1')))]],
    report: [
      'content/notes/overclocking-larch.md:16:9: error: missing-key: a number of a correction needs the key `now` | write for instance `now: 71.3 °C`',
    ],
    ok: [[NOTE, AFTER, correction(...MANY)]],
  },
  {
    rule: 'empty-value',
    bad: [[NOTE, AFTER, correction('- numbers:', ...WHOLE.slice(2))]],
    report: [
      'content/notes/overclocking-larch.md:15:5: error: empty-value: `numbers` has no value | write for instance `- number: fast.peak_temperature` with `now` below `numbers:`, or remove the key',
    ],
    ok: [[NOTE, AFTER, correction(...MANY)]],
  },
];
