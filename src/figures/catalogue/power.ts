/** Definitions of the electrical figures. */
import { COURSE, GAPS, LEVEL, SLOW, STEPS, UNOBSERVED } from './means.ts';
import { EXTREME } from './outside.ts';
import { LIMITS, MEAN, PRODUCT } from './proofs.ts';
import { subject } from './subject.ts';

const PRACTICE = 'common practice, no source';
const WHICH =
  'A power channel is preferred; else current times voltage of channels at one place, row by row; else current times the stated supply at that place.';
const NO_POWER = 'there is no power channel, and no current with a voltage at the same place';
const WALL = 'At the wall only a power channel counts: alternating power is not volts times amperes.';

const MEAN_CURRENT = { source: PRACTICE, check: 'hand-computed means' };
const MEAN_POWER = {
  source: 'JCGM 100:2008, 5.1 for the uncertainty of a product',
  check: 'a meter with 1 % gain error: 0.07 W on 10 W less 3 W, its gain being shared',
};

export const POWER = subject('power', {
  idle_current: {
    label: 'idle current',
    unit: 'A',
    spoken: 'idle rest nothing',
    publishedChecks: MEAN,
    lists: [],
    definition: 'Mean of the readings of the idle phase, each weighted by the time that it stands for.',
    formula: String.raw`\bar I_\mathrm{idle} = \frac{\sum_i w_i I_i}{\sum_i w_i}`,
    notCovered: [SLOW, 'Peaks that the instrument averages.'],
    assumptions: [LEVEL, STEPS, GAPS],
    absentWhen: ['there is no current channel', 'there is no idle phase', UNOBSERVED],
    ...MEAN_CURRENT,
  },
  load_current: {
    label: 'load current',
    unit: 'A',
    spoken: 'load draws drew pulls',
    publishedChecks: MEAN,
    lists: [],
    definition: 'Mean of the readings of the load phase, each weighted by the time that it stands for.',
    formula: String.raw`\bar I_\mathrm{load} = \frac{\sum_i w_i I_i}{\sum_i w_i}`,
    notCovered: [SLOW, 'Peaks that the instrument averages.'],
    assumptions: [COURSE, STEPS, GAPS],
    absentWhen: ['there is no current channel', 'there is no load phase', UNOBSERVED],
    ...MEAN_CURRENT,
  },
  idle_power: {
    label: 'idle power',
    unit: 'W',
    spoken: 'idle rest nothing',
    publishedChecks: [...MEAN, ...PRODUCT, ...LIMITS],
    lists: ['side by side', 'repeats'],
    definition: `Mean power of the idle phase, each reading weighted by the time that it stands for. ${WHICH}`,
    formula: String.raw`\bar P_\mathrm{idle} = \frac{\sum_i w_i P_i}{\sum_i w_i}`,
    notCovered: [SLOW, 'What lies before the place of measurement, such as an adapter.'],
    assumptions: [LEVEL, STEPS, GAPS, WALL],
    absentWhen: [NO_POWER, 'there is no idle phase', UNOBSERVED],
    ...MEAN_POWER,
  },
  load_power: {
    label: 'load power',
    unit: 'W',
    spoken: 'load draws drew pulls consumes takes uses average power under',
    prior: 0.5,
    publishedChecks: [...MEAN, ...PRODUCT, ...LIMITS],
    lists: ['runs', 'side by side', 'repeats'],
    definition: `Mean power of the load phase, each reading weighted by the time that it stands for. ${WHICH}`,
    formula: String.raw`\bar P_\mathrm{load} = \frac{\sum_i w_i P_i}{\sum_i w_i}`,
    notCovered: [SLOW, 'What lies before the place of measurement, such as an adapter.'],
    assumptions: [COURSE, STEPS, GAPS, WALL],
    absentWhen: [NO_POWER, 'there is no load phase', UNOBSERVED],
    ...MEAN_POWER,
  },
  peak_power: {
    label: 'peak power',
    unit: 'W',
    spoken: 'peak highest most maximum spike',
    publishedChecks: [],
    lists: ['side by side'],
    outside: EXTREME,
    definition:
      'Largest power of the load phase as it was logged, without averaging beyond that of the instrument. Its interval is lopsided: up by half the largest change between two readings, which may have hidden more; down by what noise lifts the largest of many readings, and by what a coarse step may hide of that noise.',
    formula: String.raw`\hat P = \max_{i \in \mathrm{load}} P_i`,
    notCovered: [
      'Peaks shorter than the step of the log: they are averaged by the instrument, or missed.',
      'Noise of the meter that lasts from reading to reading, as where it averages over several rows: it cannot be told from a power that moved.',
    ],
    assumptions: [
      'A reading that the meter holds for several rows counts once.',
      'Where readings scatter by less than half a step, noise may still lift a few of them into the next step: the interval reaches down by up to a step, or by what the scatter gives where that is more; the further, the more seldom the highest step was read. It is then wider than it need be on a course that climbs.',
      WALL,
    ],
    absentWhen: [NO_POWER, 'there is no load phase'],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'hand-picked rows',
  },
  power_percentile_95: {
    label: 'power, 95th percentile',
    unit: 'W',
    spoken: 'percentile most nearly always peak below',
    publishedChecks: [...PRODUCT, 'order-statistics'],
    lists: [],
    definition: `The reading of the power that was not exceeded in 95 % of the time of the load, with room for noise of the meter in its interval: what a supply must carry nearly always, where a peak is one reading. ${WHICH}`,
    formula: String.raw`P_{95} = \min\{P : \textstyle\sum_{i:\, P_i \le P} w_i \ge 0.95 \sum_i w_i\}`,
    notCovered: [
      'Peaks shorter than the step of the log: they are averaged by the instrument, or missed.',
      'Loads unlike this one.',
    ],
    assumptions: [
      'The interval lies between order statistics, of as many independent readings as the log is worth, with the errors of the instruments beside.',
      'Noise of the meter spreads the readings, so that the interval reaches 1.64 of its standard deviations down. It is taken from neighbouring readings under load; where that is less, from those of the idle phase, in proportion to the power: a meter’s noise grows no faster than its reading.',
      'A row that is written twice counts once, and so does a reading that the meter holds for several rows, always the same number.',
      WALL,
      GAPS,
    ],
    absentWhen: [NO_POWER, 'there is no load phase', 'the readings are worth fewer than 72 independent ones'],
    ofSingleReadings: true,
    source: 'H. A. David and H. N. Nagaraja, Order Statistics, 2003, 7.1 (from memory), for the interval',
    check: 'ranks of the median of ten values: the second and the ninth, with 97.9 %',
  },
  adapter_efficiency: {
    label: 'adapter efficiency',
    unit: '1',
    spoken: 'adapter efficien loses lost brick charger wall',
    publishedChecks: PRODUCT,
    lists: [],
    definition:
      'Mean power behind the adapter, at its output or else at the board input, over mean power at the wall, in the same rows of the load.',
    formula: String.raw`\eta = \frac{\bar P_\mathrm{out}}{\bar P_\mathrm{wall}}`,
    notCovered: ['Other loads: adapters are worse at small ones.'],
    assumptions: [
      'At the board input, what the cable loses counts as loss of the adapter.',
      'A gain error that both powers share, of one meter for both, cancels.',
    ],
    absentWhen: [
      'the log lacks a power at the wall, or one at the adapter output or board input',
      'there is no load phase',
      'more power was measured behind the adapter than at the wall',
    ],
    source: PRACTICE,
    check: 'closed form: 9 W of 10 W, with a gain error that cancels and one that does not',
  },
  battery_energy: {
    label: 'energy from the battery',
    unit: 'J',
    spoken: 'battery energy gave drained charge used watt-hours',
    publishedChecks: ['trapezoidal-rule', ...LIMITS],
    lists: [],
    uncounted: 'It is an energy under load like any other, which is simulated.',
    definition: 'Energy that the battery gave under load: the integral of the power at the battery by the trapezoidal rule.',
    formula: String.raw`E = \sum_i \frac{P_i + P_{i+1}}{2}\,(t_{i+1} - t_i)`,
    assumptions: ['Power and current count above zero where the battery gives.', GAPS],
    notCovered: [
      'What the battery loses within itself.',
      'Peaks shorter than the step of the log, unless the instrument averages them.',
      SLOW,
    ],
    absentWhen: [
      'the log has no power at a battery, and no current and voltage there',
      'there is no load phase',
      'the battery was charged',
      UNOBSERVED,
    ],
    source: 'R. L. Burden and J. D. Faires, Numerical Analysis, composite trapezoidal rule (from memory)',
    check: 'a constant power times a known time',
  },
  battery_runtime: {
    label: 'battery runtime',
    unit: 's',
    spoken: 'battery life runtime lasts last hours charge unplugged',
    publishedChecks: ['nist-norris'],
    lists: [],
    uncounted:
      'Its interval is that of a slope through the steps of a level; levels that fall straight are tried with a hundred seeds in the tests.',
    definition:
      'How long a full charge would last at this load: one over the rate at which the charge level fell under load, by a straight line. An extrapolation from the part of the charge that was used.',
    formula: String.raw`t = \frac{1}{-\mathrm dq / \mathrm dt}`,
    assumptions: ['The level falls in a straight line under a constant load.', 'The load was that of the whole phase.'],
    notCovered: [
      'A gauge whose level does not follow the charge, or that is set anew on the way.',
      'A device that switches off before the level reaches zero.',
      'Other batteries, other temperatures and wear: an aged or cold battery holds less.',
    ],
    absentWhen: [
      'there is no charge level, or no load phase',
      'the level fell by less than 10 % of a charge',
      'the level does not tell its rate to better than half of itself',
    ],
    source: PRACTICE,
    check: 'closed form: a level that falls by a fifth in an hour lasts five hours',
  },
  battery_capacity: {
    label: 'energy of a full charge',
    unit: 'J',
    spoken: 'battery capacity holds full charge watt-hours',
    publishedChecks: [...PRODUCT, 'trapezoidal-rule'],
    lists: [],
    uncounted: 'It is a quotient of an energy and the fall of a level, of which both are tried alone.',
    definition: 'Energy that the battery gave under load divided by the share of the charge that its level lost meanwhile.',
    formula: String.raw`C = \frac{E}{\Delta q}`,
    assumptions: ['The level falls in a straight line with the energy that is taken.'],
    notCovered: [
      'A gauge whose level does not follow the charge: the quotient is of this gauge.',
      'Other loads and temperatures: at a high current or in the cold a battery gives less.',
    ],
    absentWhen: [
      'the energy from the battery is absent',
      'there is no charge level',
      'the level fell by less than 10 % of a charge',
    ],
    source: PRACTICE,
    check: 'closed form: 10 W for an hour that takes a fifth of the charge make 50 Wh',
  },
  energy: {
    label: 'energy',
    unit: 'J',
    spoken: 'energy hour whole total joule watt-hour altogether used uses',
    publishedChecks: ['trapezoidal-rule', ...LIMITS],
    lists: ['side by side, under load'],
    definition:
      'Energy of the whole log, or of the phase that the address names: last less first reading of a running counter where one is logged; else the integral of the power by the trapezoidal rule.',
    formula: String.raw`E = \sum_i \frac{P_i + P_{i+1}}{2}\,(t_{i+1} - t_i)`,
    notCovered: [
      SLOW,
      'A load that changed in a gap of the log alone.',
      'A counter that was reset twice between two readings, or had by the next reading passed where it was: only a counter that falls shows a reset.',
      'What lies before the place of measurement, such as an adapter.',
    ],
    assumptions: [
      'The scatter of an integral is that of the mean power, phase by phase: what another run alike would take. The two agree.',
      `In an integral: ${GAPS} A counter runs through gaps.`,
      'A counter that falls was reset: the step across the reset is taken as the mean of the steps about it, as uncertain as that guess proves for the steps that were read.',
    ],
    absentWhen: [
      NO_POWER,
      'the stretch holds fewer than two readings',
      `${UNOBSERVED}: the energy of what was logged is then a bound`,
    ],
    source: 'R. L. Burden and J. D. Faires, Numerical Analysis, composite trapezoidal rule (from memory)',
    check: 'hand-computed 30.5 J on uneven steps; the trapezoidal sums of a sine over half a period',
  },
});
