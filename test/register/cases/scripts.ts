/** What a script states beside what a note does: its pace, its video's subtitles, the note that it speaks for. */
import { NOTE, SCRIPT } from '../base.ts';
import type { Case } from './case.ts';

const withKey = (line: string): [string, string, string] => [SCRIPT, 'runs: larch-fast', `runs: larch-fast\n${line}`];

export const SCRIPTS: readonly Case[] = [
  {
    rule: 'bad-pace',
    bad: [withKey('pace: brisk')],
    report: [
      'content/scripts/overclocking-larch.md:6:7: error: bad-pace: `pace` is `brisk` | expected words per minute, 60 to 300, such as `150 words per minute`',
    ],
    ok: [withKey('pace: 142.5 words per minute')],
  },
  {
    rule: 'bad-pace',
    bad: [withKey('pace: 1500 words/min')],
    report: [
      'content/scripts/overclocking-larch.md:6:7: error: bad-pace: `pace` is `1500 words/min` | expected words per minute, 60 to 300, such as `150 words per minute`',
    ],
    ok: [withKey('pace: 150 words/min')],
  },
  {
    rule: 'number-without-unit',
    bad: [withKey('pace: 150')],
    report: [
      'content/scripts/overclocking-larch.md:6:7: error: number-without-unit: `pace` is `150` | expected words per minute, 60 to 300, such as `150 words per minute`',
    ],
    ok: [],
  },
  {
    rule: 'unknown-note',
    bad: [withKey('note: overclocking-larc')],
    report: [
      'content/scripts/overclocking-larch.md:6:7: error: unknown-note: there is no note `overclocking-larc` | expected `overclocking-larch` | did you mean `overclocking-larch`?',
    ],
    ok: [withKey('note: overclocking-larch')],
  },
  {
    rule: 'data-missing',
    bad: [withKey('subtitles: larch-2/final.vtt')],
    report: [
      'content/scripts/overclocking-larch.md:6:12: error: data-missing: `subtitles` is `larch-2/final.vtt`, and data/ holds no such file | data/larch-2/ is there, `final.vtt` in it is not: check the name',
    ],
    ok: [],
  },
  {
    rule: 'unknown-key',
    bad: [[NOTE, 'status: ', 'pace: 150 words per minute\nstatus: ']],
    report: [
      'content/notes/overclocking-larch.md:4:1: error: unknown-key: a note has no key `pace` | expected `title`, `date`, `status`, `runs`, `comparisons`, `attempts`, `quoted`, `highlights`, `lead`, `summary`, `disclosure`, `authors`, `licence`, `unheld`, `retests`, `corrections` or `was`',
    ],
    ok: [],
  },
];
