/** Definitions of the figures of benchmark results. */
import { MEAN, PRODUCT } from './proofs.ts';
import { subject } from './subject.ts';

const OWN_WINDOW =
  'The repeats are found in the log by their start and end: instants where the log tells its own, or times since its first row.';
const AS_STATED =
  'Where no log covers the repeats, the columns clock and power of the table of scores are taken; how true they are nobody states, so that their uncertainty is that of the repeats alone.';
const NOT_COVERED = 'the log does not cover any repeat, or tells no instants to find them by';
const NO_WINDOW = 'the table of scores does not say when repeats started and ended';
const SCATTER =
  'Scatter is that of the repeats, s/√n with n − 1 degrees of freedom, or what the scatter within them gives where that is more.';
const ALIKE =
  'From eight repeats on, each is held against the one before, by start or else by row: where a test at 5 % finds them alike, the uncertainty is that of as many independent repeats as they are worth. A steady course (a parabola takes 85 % of the squares) is not taken for that.';
const INDEPENDENT = 'Fewer than eight repeats, and those in which no likeness shows, are taken as independent.';
const EDGES =
  'Where the power stands out most with all repeats moved later or earlier, its edges lag behind the stated times or are ahead of them: a meter that averages, is read late or keeps another clock. The value stays as it is; its uncertainty has that lag times the change of power at an edge as limits to both sides, one and the same in all repeats and tests of the run.';
const NO_EDGES =
  'A lag of the meter that its log does not show: where no pause lets the power fall between repeats, or where one is shorter than the time that the meter averages over.';
const LATE = 'the edges of the power lag so far that more than a quarter of what a repeat took is in doubt';

export const SCORES = subject('scores', {
  score: {
    label: 'score',
    unit: "the test's own",
    spoken: 'score scored benchmark points result sweeps',
    publishedChecks: ['gum-4-4-3', 'student-quantiles', 'handbook-mean'],
    lists: [],
    definition:
      'Mean of the repeats of a test, with their number and their spread (sample standard deviation). Whether higher or lower is better is stated in the table, never guessed.',
    formula: String.raw`\bar x = \frac1n \sum_{i=1}^{n} x_i, \qquad u(\bar x) = \frac{s}{\sqrt n}`,
    notCovered: [
      'How far runs lie apart: a repeat in one run shares its day, its boot and its room.',
      'Other versions of the test, and what ran beside it unlogged.',
      'Repeats that wander together, where there are too few to show it: of ten whose likeness is 0.7, three intervals of four hold.',
    ],
    assumptions: [
      ALIKE,
      INDEPENDENT,
      'A mean of equal repeats is still uncertain by their step over √12.',
      'Of a single repeat the uncertainty is unknown.',
      'A repeat that lies far from the others (Grubbs’ test at 1 %) is named and stays in the mean.',
      'It says how far repeats in one run lie apart, not how far runs do.',
    ],
    absentWhen: ['no repeat of the test gave a result'],
    source: 'JCGM 100:2008, 4.2.1 to 4.2.3 (mean, sample standard deviation, standard uncertainty of the mean)',
    check: 'JCGM 100:2008, 4.4.3: twenty temperatures, mean 100.145 °C, s 1.489 °C, u 0.333 °C',
  },
  energy_per_task: {
    label: 'energy per task',
    unit: 'J',
    spoken: 'per task each repeat run energy joule costs took',
    publishedChecks: [...PRODUCT, 'trapezoidal-rule'],
    lists: [],
    definition:
      "Energy that one repeat of a test took, in the repeat's own time: by a running counter where one is logged, else the integral of the run's power; the mean over the repeats.",
    formula: String.raw`E = \frac1n \sum_{k=1}^{n} \int_{t_k}^{t'_k} P\,\mathrm dt`,
    notCovered: [
      'The energy of pauses between two repeats, and of what is not metered.',
      NO_EDGES,
      'How late a running counter is read.',
    ],
    assumptions: [
      OWN_WINDOW,
      AS_STATED,
      'By the table, it is the stated power times the time from start to end.',
      'A repeat with a gap of the log in it is left out.',
      SCATTER,
      EDGES,
    ],
    absentWhen: [NO_WINDOW, NOT_COVERED, LATE, 'there is no power channel, and no current with a voltage at the same place'],
    source: 'R. L. Burden and J. D. Faires, Numerical Analysis, composite trapezoidal rule (from memory)',
    check: 'hand-computed 30.5 J on uneven steps; a constant power times a known time',
  },
  score_power: {
    label: 'power during the test',
    unit: 'W',
    spoken: 'benchmark test during',
    prior: -1,
    publishedChecks: [...MEAN, ...PRODUCT],
    lists: [],
    definition: "Mean power in the time of a test's repeats, each repeat counting alike.",
    formula: String.raw`\bar P = \frac1n \sum_{k=1}^{n} \frac{1}{t'_k - t_k} \int_{t_k}^{t'_k} P\,\mathrm dt`,
    notCovered: [
      'What lies before the place of measurement, such as an adapter.',
      'How true a column of the table is: nobody states it.',
      NO_EDGES,
    ],
    assumptions: [OWN_WINDOW, AS_STATED, SCATTER, EDGES],
    absentWhen: [NOT_COVERED, LATE, 'there is no power channel, and no current with a voltage at the same place'],
    source: 'common practice, no source',
    check: 'a power that is known in each window',
  },
  score_clock: {
    label: 'clock during the test',
    unit: 'Hz',
    spoken: 'benchmark test during',
    prior: -1,
    publishedChecks: MEAN,
    lists: [],
    definition: "Mean measured clock in the time of a test's repeats, each repeat counting alike.",
    formula: String.raw`\bar f = \frac1n \sum_{k=1}^{n} \frac{\sum_i w_i f_i}{\sum_i w_i}`,
    notCovered: ['The error of the crystal that the device counts by.', 'How true a column of the table is: nobody states it.'],
    assumptions: [OWN_WINDOW, AS_STATED, SCATTER],
    absentWhen: [NOT_COVERED, 'there is no clock channel'],
    source: 'common practice, no source',
    check: 'a clock that is known in each window',
  },
  score_drift: {
    label: 'drift of a score over its repeats',
    unit: '1',
    spoken: 'drift slower faster repeat',
    publishedChecks: ['nist-norris'],
    lists: [],
    definition:
      'By how much a score changes from one repeat to the next, as a share of its mean: the slope of a straight line over the repeats.',
    formula: String.raw`\delta = \frac{1}{\bar x}\,\frac{\sum_i (i - \bar\imath)(x_i - \bar x)}{\sum_i (i - \bar\imath)^2}`,
    notCovered: [
      'What a pause between two repeats does, and a course that is not a straight line.',
      'Repeats that wander together, where there are too few to show it: of ten whose likeness is 0.7, three intervals of four hold.',
    ],
    assumptions: [
      'Repeats are in the order of the table.',
      'From eight repeats on, what they depart from the line is held against the one before: where a test at 5 % finds them alike, the slope is as uncertain as that makes it. Fewer are taken as independent.',
      'Its sign is that of the score: of a time, a drift above zero is a test that becomes slower.',
    ],
    absentWhen: ['fewer than three repeats gave a result'],
    source: 'NIST Statistical Reference Datasets, Norris, for the straight line',
    check: 'repeats on a straight line, by hand; Norris, certified slope',
  },
  sustained_score: {
    label: 'sustained score',
    unit: '1',
    spoken: 'sustained sustains sustain keeps kept holds held first last soak',
    publishedChecks: PRODUCT,
    lists: [],
    definition:
      'Speed of a test over the last third of its repeats divided by that over the first third, by the times at which they started: below 1 where the device became slower. Where less is better, the other way round.',
    formula: String.raw`r = \left(\frac{\bar x_\mathrm{last}}{\bar x_\mathrm{first}}\right)^{\pm 1}`,
    assumptions: [
      'The repeats followed each other, as in a soak: what a pause lets cool down is faster afterwards.',
      'All that repeats of one third depart from their mean is scatter, a course too.',
      'From eight repeats on, what they depart from a straight line is held against the one before: where a test at 5 % finds them alike, the means of the thirds are as uncertain as that makes them. Fewer are taken as independent.',
    ],
    notCovered: [
      'What the device would have held in a longer soak, or in a warmer room.',
      'The first seconds, where a repeat lasts longer than a boost.',
    ],
    absentWhen: [
      'the table states no times (then it is not listed)',
      'fewer than six repeats with times, or less than twenty minutes from the first start to the last end',
    ],
    source: 'common practice, no source',
    check: 'closed form: repeats at 100 points and then at 80 give 0.8',
  },
  score_per_watt: {
    label: 'score per watt',
    unit: "the test's own, per W",
    spoken: 'score per watt',
    publishedChecks: PRODUCT,
    lists: [],
    uncounted: 'It is a quotient like the performance per watt, which is simulated; it itself is not.',
    definition: 'Score over the mean power in the time of its repeats, for a test of which more is better.',
    formula: String.raw`\frac{\bar x}{\bar P}`,
    notCovered: ['The power of what is not metered, such as an adapter.'],
    assumptions: ['The power is that during the repeats, never that of a soak.'],
    absentWhen: ['of the test less is better', 'the power during the repeats is not known (then it is not listed)'],
    source: 'common practice, no source',
    check: 'known score and power: 100 points at 8 W are 12.5 points/W',
  },
  score_per_joule: {
    label: 'score per joule',
    unit: "the test's own, per J",
    spoken: 'score per joule',
    publishedChecks: PRODUCT,
    lists: [],
    uncounted: 'It is a quotient like the performance per watt, which is simulated; it itself is not.',
    definition: 'Score over the energy that one repeat took, for a test of which more is better.',
    formula: String.raw`\frac{\bar x}{E}`,
    notCovered: [
      'The energy of what is not metered, such as an adapter.',
      'Tests of different lengths: a rate by energy does not compare them.',
    ],
    assumptions: [
      'A score that is a rate already counts time once: its share by energy tells tests of one length apart, not tests of different lengths.',
    ],
    absentWhen: ['of the test less is better', 'the energy of the repeats is not known (then it is not listed)'],
    source: 'common practice, no source',
    check: 'known score and energy: 100 points for 800 J are 0.125 points/J',
  },
});
