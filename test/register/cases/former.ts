/** Earlier addresses of runs, devices, comparisons and notes. */
import { DEVICE, FAST, NOTE, RATED, SCRIPT, STEPS } from '../base.ts';
import type { Case } from './case.ts';

const SETUP = 'setup: open-bench';
const MAKER = 'maker: ';
const REFERENCE = 'reference: ';

export const FORMER: readonly Case[] = [
  {
    rule: 'bad-address',
    bad: [[FAST, SETUP, `${SETUP}\nwas: run/Larch first.md`]],
    report: [
      'content/runs/larch-fast.md:4:6: error: bad-address: `was` names `run/Larch first.md` | expected a former address below runs/, without what stands before it: `runs/old-id/` | did you mean `runs/larch-first-md/`?',
    ],
    ok: [[FAST, SETUP, `${SETUP}\nwas: runs/larch-first/`]],
  },
  {
    rule: 'bad-address',
    bad: [[DEVICE, MAKER, `was: comparisons/larch/\n${MAKER}`]],
    report: [
      'content/devices/larch-2.md:3:6: error: bad-address: `was` names `comparisons/larch/` | expected a former address below devices/, without what stands before it: `devices/old-id/` | did you mean `devices/larch/`?',
    ],
    ok: [[DEVICE, MAKER, `was: devices/larch/\n${MAKER}`]],
  },
  {
    rule: 'standing-address',
    bad: [[FAST, SETUP, `${SETUP}\nwas: runs/larch-rated/`]],
    report: [
      'content/runs/larch-fast.md:4:6: error: standing-address: `was` names `runs/larch-rated/`, which is the address of content/runs/larch-rated.md | expected an address at which nothing stands any more | remove that file, or this line: an address leads to one page',
    ],
    ok: [],
  },
  {
    // No loop: what leads to itself stands.
    rule: 'standing-address',
    bad: [[STEPS, REFERENCE, `was: [comparisons/larch-steps/]\n${REFERENCE}`]],
    report: [
      'content/comparisons/larch-steps.md:6:7: error: standing-address: `was` names `comparisons/larch-steps/`, which is the address of content/comparisons/larch-steps.md | expected an address at which nothing stands any more | remove that file, or this line: an address leads to one page',
    ],
    ok: [[STEPS, REFERENCE, `was: [comparisons/steps/]\n${REFERENCE}`]],
  },
  {
    rule: 'repeated-address',
    bad: [
      [FAST, SETUP, `${SETUP}\nwas: [runs/first/, runs/second/]`],
      [RATED, SETUP, `${SETUP}\nwas: runs/second/`],
    ],
    report: [
      'content/runs/larch-rated.md:4:6: error: repeated-address: `was` names `runs/second/`, as content/runs/larch-fast.md does | keep it where readers of runs should be led',
    ],
    ok: [],
  },
  {
    rule: 'repeated-address',
    bad: [
      [NOTE, 'status: ', 'was: notes/larch/\nstatus: '],
      [SCRIPT, 'status: ', 'was: notes/larch/\nstatus: '],
    ],
    report: [
      'content/scripts/overclocking-larch.md:4:6: error: repeated-address: `was` names `notes/larch/`, as content/notes/overclocking-larch.md does | keep it where readers of notes should be led',
    ],
    ok: [[NOTE, 'status: ', 'was: notes/larch/\nstatus: ']],
  },
  {
    rule: 'repeated-address',
    bad: [
      [FAST, SETUP, `${SETUP}\nwas: runs/first/`],
      [NOTE, 'status: ', 'was: runs/first/\nstatus: '],
    ],
    report: [
      'content/notes/overclocking-larch.md:4:6: error: repeated-address: `was` names `runs/first/`, as content/runs/larch-fast.md does | keep it where readers of runs should be led',
    ],
    ok: [],
  },
  {
    rule: 'repeated-item',
    bad: [[FAST, SETUP, `${SETUP}\nwas: [runs/first/, runs/first/]`]],
    report: ['content/runs/larch-fast.md:4:20: error: repeated-item: `runs/first/` stands twice in `was` | keep one of the two'],
    ok: [],
  },
];
