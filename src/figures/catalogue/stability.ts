/** Definitions of the figures of attempts. */
import { subject } from './subject.ts';

const PRACTICE = 'common practice, no source';

export const STABILITY = subject('stability', {
  highest_passed_clock: {
    label: 'highest passed clock',
    unit: 'Hz',
    spoken: 'passed pass got through highest survived ladder tried',
    publishedChecks: [],
    lists: [],
    uncounted: 'It is a setting, and has no interval.',
    definition:
      'Highest clock at which every attempt passed, over all voltage offsets or at the one that the address names. It says on how many specimens, how often and for how long it was tried, with which test and at which ambient. Throttled is not passed: the clock was not held.',
    formula: String.raw`\max\,\{\, f : \text{every attempt at } f \text{ passed} \,\}`,
    notCovered: ['Another test, a longer one, a warmer room, another specimen, and wear: a clock that passed once may fail later.'],
    assumptions: [
      'It is a setting and has no uncertainty; the boundary lies somewhere between it and the next clock that failed.',
      'A test that passed says nothing of another test, of a longer one, of a warmer room or of another specimen.',
    ],
    absentWhen: ['no clock passed', 'the attempts do not say what passing means', 'no row of the attempts could be used'],
    source: PRACTICE,
    check: 'hand-made ladders, one of them with a hang below a clock that passed',
  },
  lowest_failed_clock: {
    label: 'lowest failed clock',
    unit: 'Hz',
    spoken: 'failed fail restarted hung next ladder tried',
    publishedChecks: [],
    lists: [],
    uncounted: 'It is a setting, and has no interval.',
    definition:
      'At a voltage offset, the lowest clock above the highest one that passed: the other side of the boundary, with what came of it. A hang is a result like any other.',
    formula: String.raw`\min\,\{\, f > f_\mathrm{passed} : \text{an attempt at } f \text{ did not pass} \,\}`,
    notCovered: ['Clocks between the ones that were tried.', 'Whether it would fail again: one attempt is one result.'],
    assumptions: ['Any outcome but passed counts, throttled too.'],
    absentWhen: ['nothing was tried above the highest clock that passed'],
    source: PRACTICE,
    check: 'hand-made ladders',
  },
});
