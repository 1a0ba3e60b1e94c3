/** Definitions of the figures that only several runs have. */
import { FEW_REPEATS, GOVERNED, LEFT_OVER } from './outside.ts';
import { PRODUCT } from './proofs.ts';
import { subject } from './subject.ts';

const PRACTICE = 'common practice, no source';
const BETWEEN =
  'Where a setting was run twice or more, its figure is the mean of its runs, and how such runs lie apart takes the place of the scatter within them: pooled over all settings of the comparison, and over the other repeats of the specimen that it names (analysis of variance). A setting keeps its own spread where the spreads differ (F test at 10 %, then as in Welch’s test), and where it was run less often than the one it is compared with while its runs lie further apart than all do. Two or three runs cannot show that their setting lies further apart than the others: how often equal settings are then told apart was counted in simulated comparisons, listed under “Settings compared”. Temperatures lie apart by kelvins, all else by a share of the value. Runs of different days are repeated under intermediate conditions (VIM, 2.22): what the day brings is in it.';
const VERDICT =
  'Settings are told apart only where it is known how runs of one setting lie apart. Where it is not, the verdict is of these two runs, and two runs of one setting may differ as well. All other settings in one figure are judged together, and so are all tests: in 95 of 100 such families no verdict is false (Holm’s procedure), as long as the runs of all settings lie equally far apart. The interval beside each is its own.';
const SHARED =
  'What two runs share (an instrument, an ambient, the reference) is carried by source, so that it cancels where it should.';
const STANDS_IN =
  'Where the logs do not cover the scores, clock and power of the load phase stand in for those during the scores; that is said beside the number, and no verdict is given.';
const CLOCK =
  'The clock is the measured one, never the setting; requested or delivered, as the channel states. Where no run states which, nothing tells them apart.';
const NO_SCORE = 'one of the two runs has no score of the test, or the tables state different units or directions';
const NO_CLOCK = 'one of the two runs has no measured clock';
const OTHER_CLOCK = 'one of the two runs logged the requested clock, the other the delivered one';
const SAME_CLOCK = 'the measured clocks are not told apart';
const NO_POWER = 'one of the two runs has no power, or they were measured at different places';

export const COMPARISON = subject('comparison', {
  speedup: {
    label: 'speedup',
    unit: '1',
    spoken: 'faster fast quick quicker speed times speedup benchmark',
    prior: 0.3,
    publishedChecks: ['geometric-means', 'gum-g-4-1'],
    lists: [],
    outside: FEW_REPEATS,
    definition:
      "A run's score as a multiple of the reference's where higher is better, the other way round where lower is; over several tests, the geometric mean of these ratios.",
    formula: String.raw`S_k = \left(\frac{\bar x_k}{\bar x_{k,\mathrm{ref}}}\right)^{\pm 1}, \qquad S = \left(\prod_{k=1}^{n} S_k\right)^{1/n}`,
    notCovered: ['Tests that were not done.', 'Runs of other days, where each setting was run once.'],
    assumptions: [
      BETWEEN,
      VERDICT,
      'The uncertainty is that of these tests, not of tests that were not done; how far they lie apart is shown as the smallest and the largest.',
      'The order of the runs does not hang on the reference, as it would with an arithmetic mean.',
    ],
    absentWhen: [NO_SCORE, 'a score is not above zero'],
    source: 'P. J. Fleming and J. J. Wallace, Communications of the ACM 29(3), 1986, 218–221, DOI 10.1145/5666.5673 (from memory)',
    check:
      "Fleming and Wallace's three machines (data from memory); L. Null and J. Lobur, The Essentials of Computer Organization and Architecture, Tables 10.4 and 10.5",
  },
  clock_ratio: {
    label: 'clock ratio',
    unit: '1',
    spoken: 'clock higher high',
    publishedChecks: ['gum-g-4-1'],
    lists: [],
    definition:
      "Measured clock over the reference's: during the scores where both logs cover them (over several tests the geometric mean), else over the load phase.",
    formula: String.raw`R = \frac{\bar f}{\bar f_\mathrm{ref}}`,
    notCovered: ['Runs of other days, where each setting was run once.'],
    assumptions: [CLOCK, BETWEEN, VERDICT],
    absentWhen: [NO_CLOCK, OTHER_CLOCK],
    source: PRACTICE,
    check: 'known clocks',
  },
  scaling_efficiency: {
    label: 'scaling efficiency',
    unit: '1',
    spoken: 'efficien scaling',
    publishedChecks: ['gum-g-4-1', 'clock-model'],
    lists: [],
    definition: 'Speedup over clock ratio: 1 where a faster clock is turned into speed without loss.',
    formula: String.raw`\eta = \frac{S}{R}`,
    notCovered: ['Clocks between and beyond the settings that were run.', 'Runs of other days, where each setting was run once.'],
    assumptions: [CLOCK, STANDS_IN, BETWEEN, VERDICT, SHARED],
    absentWhen: [NO_SCORE, NO_CLOCK, OTHER_CLOCK],
    source: PRACTICE,
    check: 'the clock model T = a/f + b: 100 s at 2.4 GHz and 160 s at 1.2 GHz give 0.8',
  },
  gain_per_clock: {
    label: 'gain per clock',
    unit: '1',
    spoken: 'gain per clock',
    publishedChecks: ['gum-h-2', 'clock-model'],
    lists: [],
    definition: 'Share of a gain in clock that is gained in speed: 1 where all of it is, 0 where none.',
    formula: String.raw`g = \frac{S - 1}{R - 1}`,
    notCovered: ['Clocks between and beyond the settings that were run.', 'Runs of other days, where each setting was run once.'],
    assumptions: [CLOCK, STANDS_IN, BETWEEN, VERDICT, SHARED],
    absentWhen: [NO_SCORE, NO_CLOCK, OTHER_CLOCK, SAME_CLOCK],
    source: PRACTICE,
    check: 'the clock model T = a/f + b: 100 s at 2.4 GHz and 160 s at 1.2 GHz give 0.6',
  },
  scaling_exponent: {
    label: 'scaling exponent',
    unit: '1',
    spoken: 'exponent power scales proportion',
    publishedChecks: ['nist-danwood-power', 'nist-danwood', 'clock-model'],
    lists: [],
    outside: FEW_REPEATS,
    definition:
      'Exponent of the power law by which performance grows with the measured clock: by least squares in performance itself over all settings, from four on; with fewer, one for each against the reference. The verdict says whether 1 (linear) is excluded.',
    formula: String.raw`S \approx c\,R^{\,p}, \qquad p_\mathrm{pair} = \frac{\ln S}{\ln R}`,
    notCovered: [
      'Clocks beyond the settings that were run: a power law is no law of nature.',
      'Runs of other days, where each setting was run once.',
    ],
    assumptions: [
      CLOCK,
      STANDS_IN,
      'The uncertainties of all scores and clocks are carried through the fit; where the scatter about the fit is more than they explain (beyond the 95 % point of χ²), it counts instead.',
      'A power law holds over the settings that were tested, and says nothing beyond them.',
      BETWEEN,
      'All settings weigh alike.',
      'The verdict takes a spread between runs that is known; else it is of these runs. All tests are judged together (Holm’s procedure).',
    ],
    absentWhen: ['there are fewer than four settings (pairs are given instead)', NO_SCORE, NO_CLOCK, OTHER_CLOCK, SAME_CLOCK],
    source: 'NIST Statistical Reference Datasets, DanWood, for the model; JCGM 100:2008, 5.1.3 for what goes through the fit',
    check:
      'DanWood, certified exponent 3.8604055871; the clock model T = a/f + b: 160 s and 100 s over a factor of two give 0.678072',
  },
  clock_independent_share: {
    label: 'share of time that does not scale with the clock',
    unit: '1',
    spoken: 'share waiting memory independent wait',
    publishedChecks: ['clock-model', 'nist-norris'],
    lists: [],
    definition:
      "Of the time that a test takes at the reference's clock, the share that a faster clock leaves as it is: that of the constant in a straight line of time over one over clock.",
    formula: String.raw`T(f) = \frac{a}{f} + b, \qquad \beta_0 = \frac{b}{T(f_\mathrm{ref})}`,
    notCovered: ['Memory and storage whose own clock follows the setting.', 'With two runs: whether the model holds at all.'],
    assumptions: [
      CLOCK,
      STANDS_IN,
      'Memory and storage keep their speed while the clock changes.',
      'With two runs the line is exact, so that nothing tells whether the model holds.',
    ],
    absentWhen: [NO_SCORE, NO_CLOCK, OTHER_CLOCK, SAME_CLOCK],
    source: 'C.-H. Hsu and U. Kremer, PLDI 2003, for the model (from memory)',
    check: 'the clock model: 100 s at 2.4 GHz and 160 s at 1.2 GHz give b = 40 s, 0.4 of the time at 2.4 GHz',
  },
  performance_per_watt: {
    label: 'performance per watt',
    unit: '1',
    spoken: 'per watt joule work efficien bill',
    publishedChecks: [...PRODUCT, 'switching-power'],
    lists: [],
    definition: "Speedup over the ratio of powers: how much more work the same energy does than under the reference's setting.",
    formula: String.raw`e = S\,\frac{\bar P_\mathrm{ref}}{\bar P}`,
    notCovered: ['The power of what is not metered, such as an adapter.', 'Runs of other days, where each setting was run once.'],
    assumptions: [
      'Power is that during the scores where both logs cover them, else that of the load phase.',
      STANDS_IN,
      BETWEEN,
      VERDICT,
      SHARED,
    ],
    absentWhen: [NO_SCORE, NO_POWER],
    source: PRACTICE,
    check: 'voltage and clock both lowered by 15 %: power 0.614125, energy per task 0.7225 of what they were',
  },
  power_delta: {
    label: 'difference in power',
    unit: 'W',
    spoken: 'more power extra draws above bill',
    publishedChecks: ['shared-gain', 'gum-5-2-2'],
    lists: [],
    outside: LEFT_OVER,
    definition: "Load power less the reference's, both measured at one place.",
    formula: String.raw`\Delta P = \bar P - \bar P_\mathrm{ref}`,
    notCovered: ['Runs of other days, where each setting was run once.', 'Other specimens: leakage differs from one to the next.'],
    assumptions: [SHARED, BETWEEN, VERDICT],
    absentWhen: [NO_POWER],
    source: 'JCGM 100:2008, 5.2.2 (correlated inputs)',
    check: 'a meter with 1 % gain error: 0.07 W on 10 W less 3 W, its gain being shared',
  },
  rise_delta: {
    label: 'difference in rise over ambient',
    unit: 'K',
    spoken: 'warmer hotter rise more above',
    publishedChecks: ['gum-5-2-2', 'gum-h-2'],
    lists: [],
    outside: LEFT_OVER,
    definition: "Rise over ambient at steady state less the reference's.",
    formula: String.raw`\Delta\Theta = \Theta - \Theta_\mathrm{ref}`,
    notCovered: [
      'How far the device lags behind a room that drifts: in one run of the two it may have.',
      'Runs of other days, where each setting was run once.',
    ],
    assumptions: [
      SHARED,
      BETWEEN,
      VERDICT,
      'Two specimens have two die sensors: where these state no accuracy, the verdict is that it cannot be told.',
    ],
    absentWhen: ['the rise of one of the two runs is absent, for instance because it was not steady'],
    source: 'JCGM 100:2008, 5.2.2 (correlated inputs)',
    check: 'temperatures whose sensor offset is fully shared: u of the difference is that of the scatter alone',
  },
  clock_delta: {
    label: 'difference in clock',
    unit: 'Hz',
    spoken: 'faster slower clock higher lower more less',
    publishedChecks: ['gum-5-2-2'],
    lists: [],
    outside: GOVERNED,
    definition: "Mean clock of the load phase less the reference's.",
    formula: String.raw`\Delta f = \bar f - \bar f_\mathrm{ref}`,
    notCovered: ['Runs of other days, where each setting was run once.', 'The error of the crystal that the device counts by.'],
    assumptions: [CLOCK, SHARED, BETWEEN, VERDICT],
    absentWhen: [NO_CLOCK, OTHER_CLOCK],
    source: 'JCGM 100:2008, 5.2.2 (correlated inputs)',
    check: 'known clocks: the difference of two means, u the root sum of squares of what they do not share',
  },
  smallest_told: {
    label: 'smallest difference that would be told',
    unit: "the figure's own",
    spoken: 'smallest difference told tell',
    publishedChecks: ['student-quantiles'],
    lists: [],
    uncounted: 'It is the bar of a verdict, and has no interval.',
    definition:
      'How far two settings would have had to lie apart in a figure for this comparison to tell them: the half width of the interval at which they are judged. A difference of just this size is told in about half of all such comparisons.',
    formula: String.raw`d_\mathrm{c} = t_{1-\alpha/2m}(\nu)\, u(d), \qquad u(d) = s\sqrt{\frac{1}{n_a} + \frac{1}{n_b}}`,
    notCovered: ['How well the spread between runs is itself known.'],
    assumptions: [
      BETWEEN,
      'α is 5 %, m the number of figures that are judged together. Of m differences the later ones are judged by a lower bar, so this is the highest that can be asked of one.',
      'It is printed with two digits, rounded up. How well the spread itself is known is not shown beside it.',
    ],
    absentWhen: ['no setting was run twice, so that the spread between runs is unknown', 'the figure has no verdict'],
    source: 'ISO 5725-6, 4.1, for the critical difference (from memory); JCGM 100:2008, G.3, for the interval',
    check: 'equal settings, simulated: at most 5 % of families have one that is told apart',
  },
  runs_to_tell: {
    label: 'runs that would tell the difference',
    unit: '1',
    spoken: 'runs needed tell difference',
    publishedChecks: ['student-quantiles'],
    lists: [],
    uncounted: 'It is a number of runs to be made, and has no interval.',
    definition:
      'How many runs of each setting it takes so that a difference of the size that was seen is told in nine of ten comparisons, if the spread between runs is the one that was seen.',
    formula: String.raw`\min n:\ \bigl(t_{1-\alpha/2m}(\nu_n) + t_{0.9}(\nu_n)\bigr)\sqrt{\frac{2 s^2}{n} + u_\mathrm{b}^2} \le |d|, \qquad \nu_n = k(n - 1)`,
    notCovered: ['A spread between runs or a difference other than those that were seen.'],
    assumptions: [
      'k is the number of settings, u_b what more runs do not make smaller, such as the errors of two instruments.',
      'It takes the difference and the spread that were seen for the true ones: a guide, no promise.',
    ],
    absentWhen: [
      'no setting was run twice, so that the spread between runs is unknown',
      'more than 99 runs of each setting would be needed',
      'the figure has no verdict',
    ],
    source: 'NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.2, for one mean (from memory); here for the difference of two',
    check: 'a larger difference needs fewer runs; the quantiles have their own check',
  },
});
