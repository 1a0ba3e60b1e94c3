/** Definitions of the thermal figures. */
import { CRITERIA } from '../thermal/criteria.ts';
import { GAPS, LEVEL, SLOW, STEPS, UNOBSERVED } from './means.ts';
import { EXTREME } from './outside.ts';
import { FIT, LIMITS, MEAN, PRODUCT } from './proofs.ts';
import { subject } from './subject.ts';

const PRACTICE = 'common practice, no source';
const STEP = 'F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, lumped capacitance (from memory)';
const FIRST_ORDER = 'closed form of one exact exponential step';
const MOVED = 'Noise of the sensor that lasts from reading to reading: it cannot be told from a temperature that moved.';
const LAG =
  'How far the device lags behind a room that drifts, where no response was fitted: the drift times the time constant, 0.17 K where the room warms by 1 K an hour and the time constant is 10 min.';
const DRIFT =
  'Where the ambient is measured, its drift times the mean delay of the fitted response is a standard uncertainty: a room that warms makes the rise too small by about that much.';
const LAG_TIME = 'A room that drifts, where the ambient is not measured: the temperature then moves with it.';
const LAG_FIT = 'What a room does that drifts, where its ambient is neither measured nor stated.';
const HIDDEN_BOOST =
  'Where no channel shows the load, a boost at its beginning may have hidden part of the step. The fit, drawn back to the start, then begins above the temperature that was read there: over the minute before the load, else in its first reading. The interval reaches as far as that difference, with the amplitude of a faster part added for the main one: that part may be the boost.';
const START_UNREAD = 'no channel shows the load, and no reading shows the temperature that it began from';
const BOOST = 'A boost that no channel shows and that lasted longer than a sixth of the load.';
const HELD = 'the governor held the temperature at its limit';
const RESPONSE = String.raw`\vartheta(t) = \vartheta_\infty - \sum_k A_k\, e^{-t/\tau_k}`;
const CONSTANT_LOAD = [
  'The load was constant: delivered clock within 3 %, power within 10 % of its median, over 10 s and over 2 min. Where neither is logged, the figure says that the load was not observed.',
  'One exponential that goes over into another at a corner tells the course no better than one response: a fan that steps in makes such a corner, and so does a room that cools at once. Where no channel shows the load, a corner in its first sixth may be the end of a boost, and the fit begins after it.',
  'The first seconds, up to a sixth of the load, are left out where the power or the delivered clock jumps there by more than 3 %, or where they do not follow the rest.',
  'Where no channel shows the load, a boost may hide in its first minutes: the fit must then tell what the load shows after its first sixth, at most 8 min, as well as a fit of that alone; their time constants of the main part must agree, also where a faster part is left out, and the interval reaches over them all.',
];
const FITTED = [
  'The readings bear two exponentials where the second explains more than chance would once in 1000, on the effective number of readings.',
  'The interval reaches over all fits whose sum of squares chance would reach at 95 %, for every slower time constant up to a straight line.',
  'Where the ambient is measured, the rise is taken over the room as the device feels it: through a first-order filter with its main time constant. Three tenths of what that moves count as a standard uncertainty.',
  'An ambient that is stated and not measured may have drifted over the load by its own standard uncertainty.',
  'A third part may hide: where the faster of two is the smaller one and the load lasted less than five time constants, the interval reaches over what the readings say by themselves after four time constants of the faster one; where the slower one is the smaller, over the fit of what comes after the first minute, or after twice what was left out.',
  'What the model leaves out (leakage, free convection) adds 1.25 % to time constants and amplitudes, as a standard uncertainty.',
];
const QUOTIENT =
  'It is an amplitude by a difference of two powers: a quotient like the rise per watt, which is simulated; it itself is not.';
const UNSEEN =
  'no channel shows what the load was, and the other part is the faster one, or the last five sixths of the load do not bear it too: it cannot be told from a boost';
const BOOSTED = 'the first seconds of the load do not follow the rest';
const NO_RESPONSE = [
  'the load changed, or a fan switched to and fro; where the power rose with the temperature by more than 10 %, the reason names leakage: a line through their means leaves less than 5 % of the variance, and is less than half as steep as the power over the rise',
  'the course bent: from a corner on it climbed slower, or fell, as where a fan steps in or the room cools',
  HELD,
  'the temperature stopped climbing before its time, as under a governor, a fan that steps in, or a load that falls',
  'the temperature swung to and fro by 2 K or more, four times or more, as under a fan that switches on and off',
  'the temperature ended at its limit, and nothing shows whether a governor held it there',
  'the load lasted less than two time constants',
  'residuals exceed 5 % of the step, or follow each other so that fewer than six independent ones are left',
];
const NOT_STEADY = 'the criterion of steady state did not hold to the end of the load, or the load was shorter than its window';
const OTHERS = CRITERIA.slice(1)
  .map(({ name }) => name)
  .join(', ');

export const THERMAL = subject('thermal', {
  idle_temperature: {
    label: 'idle temperature',
    unit: '°C',
    spoken: 'idle idling rest resting doing nothing before start starts began cold',
    prior: 0.3,
    publishedChecks: [...MEAN, ...LIMITS],
    lists: ['side by side'],
    definition: 'Mean of the readings of the idle phase, each weighted by the time that it stands for.',
    formula: String.raw`\bar T_\mathrm{idle} = \frac{\sum_i w_i T_i}{\sum_i w_i}`,
    notCovered: [SLOW, 'A device that had not settled before the idle phase began, and a room that drifts under it.'],
    assumptions: ['The device had settled before the idle phase began: this is not checked.', LEVEL, STEPS, GAPS],
    absentWhen: ['there is no idle phase', 'it holds fewer than two readings', UNOBSERVED],
    source: PRACTICE,
    check: 'hand-computed means; JCGM 100:2008, 4.4.3 for the uncertainty of independent readings',
  },
  peak_temperature: {
    label: 'peak temperature',
    unit: '°C',
    spoken: 'peak hottest highest maximum max top tops topped reach spike',
    prior: 0.5,
    publishedChecks: [],
    lists: ['runs', 'side by side'],
    outside: EXTREME,
    definition:
      'Largest reading of the load phase as it was logged. Its interval is lopsided: up by half the largest change between two readings, which may have hidden more; down by what noise lifts the largest of many readings, and by what a coarse step may hide of that noise.',
    formula: String.raw`\hat T = \max_{i \in \mathrm{load}} T_i`,
    notCovered: [
      MOVED,
      'A peak between two readings that rose faster than any change that was logged, and places hotter than the one that the sensor reads.',
      'Noise that lasts longer than a tenth of the load.',
    ],
    assumptions: [
      'Between two readings the temperature never changed faster than it was seen to change.',
      'Readings scatter about the fitted response, or about a cubic through the last half of the load where no response fits: noise that lasts from reading to reading is counted with as many independent readings as they are worth.',
      'Under a load that changed, noise that lasts from reading to reading cannot be told from a temperature that moved, and is not counted.',
      'A reading that the sensor holds for several rows counts once.',
      'Where readings scatter by less than half a step, noise may still lift a few of them into the next step: the interval reaches down by up to a step, or by what the scatter gives where that is more; the further, the more seldom the highest step was read. It is then wider than it need be on a course that climbs.',
    ],
    absentWhen: ['there is no load phase', 'it holds fewer than two readings'],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'closed form: samples of a triangle whose top lies between two of them stay inside the interval',
  },
  steady_temperature: {
    label: 'steady temperature',
    unit: '°C',
    spoken: 'steady settle level plateau stays long-run end ends sits',
    prior: 0.5,
    publishedChecks: [...MEAN, ...LIMITS, 'steady-state-criteria'],
    lists: ['runs', 'side by side'],
    definition: `Mean over the last window of the load, given that the device had settled: ${CRITERIA[0]!.words}, and stays so to the end of the load. Where the ambient is not measured it is taken as constant. A run may name another criterion: ${OTHERS}.`,
    formula: String.raw`\bar T_\mathrm{steady} = \frac{\sum_i w_i T_i}{\sum_i w_i},\quad \max_{[t,\,t+\Delta]} \vartheta - \min_{[t,\,t+\Delta]} \vartheta \le \delta \ \text{for all later } t`,
    notCovered: [
      SLOW,
      'What it would still have climbed after the load ended: the default criterion leaves room for 4 K an hour. How far the fitted end lies from it is said beside it; where there is no fit, how fast it still changed.',
    ],
    assumptions: [
      'The rise is smoothed over a minute or five readings, at most a third of the window.',
      'Noise lifts the largest change in a window: the limit is raised by what noise alone would add, so that a noisy sensor does not hide that a device has settled. Where that alone decides, a line through the last window must neither climb nor fall by more than the limit, beyond what its own uncertainty leaves room for (at 90 %, one-sided).',
      'Half of the window or more was read. The load went on through gaps of the log.',
      LEVEL,
      'Where the device throttled and was at its limit for half of the window or more, the governor holds the temperature and the figure says so: the clock and the power are then what settles.',
    ],
    absentWhen: [NOT_STEADY, 'there is no load phase'],
    source: CRITERIA[0]!.source,
    check: FIRST_ORDER,
  },
  end_temperature: {
    label: 'temperature at the end of the load',
    unit: '°C',
    spoken: 'end ends ended last finally final reached after',
    publishedChecks: [],
    lists: [],
    definition:
      'Mean of the readings of the last minute of the load, or of the last five readings where these are further apart. It is given whether or not the device had settled.',
    formula: String.raw`T_\mathrm{end} = \frac{1}{n} \sum_{i:\, t_i > t_\mathrm{end} - \Delta} T_i`,
    notCovered: [
      'Where the temperature would have ended under a longer load.',
      'Noise that lasts longer than a tenth of the load.',
    ],
    assumptions: [
      'Its scatter is the wider of two: that of such means about a cubic through the last half of the load, at most half an hour of it; and that of the readings about the fitted response, counted with as many independent ones as they are worth. The step of the sensor takes its place where that is larger.',
    ],
    absentWhen: ['there is no load phase', 'its last minute holds fewer than two readings'],
    source: PRACTICE,
    check: FIRST_ORDER,
  },
  temperature_rise: {
    label: 'temperature rise',
    unit: 'K',
    spoken: 'rise rose risen above over room ambient warmer climb',
    prior: 0.3,
    publishedChecks: ['gum-5-2-2', 'gum-h-2', ...LIMITS],
    lists: ['side by side', 'repeats'],
    definition:
      'Steady temperature less the ambient over the same rows: measured where there is an ambient channel, else as stated.',
    formula: String.raw`\Delta T = \bar T_\mathrm{steady} - \bar T_\mathrm{ambient}`,
    notCovered: [LAG, 'Air that the device itself had warmed at the ambient sensor.'],
    assumptions: ['The ambient sensor stood where the air was not warmed by the device.', DRIFT],
    absentWhen: [NOT_STEADY, 'the ambient is neither measured nor stated'],
    source: 'JESD51 family of standards, definition of thermal resistance, numerator (from memory)',
    check: 'JCGM 100:2008, 5.2.2 with eq. 16: an offset shared by both sensors cancels',
  },
  time_to_steady_state: {
    label: 'time to steady state',
    unit: 's',
    spoken: 'settle steady until takes took after before level',
    prior: 0.2,
    publishedChecks: ['steady-state-criteria'],
    lists: ['side by side'],
    definition:
      'Time from the beginning of the load until the first window opens in which the criterion of steady state holds, as it does in all later ones. For a slope it is the middle of the line.',
    formula: String.raw`t_s = \min\{t : \text{the criterion holds for all } t' \ge t\}`,
    notCovered: [
      'A load that changed in a gap of the log.',
      'Where the fitted response is read: a real device departs from a sum of exponentials. The interval has room for 2 % of the time to each side.',
      LAG_TIME,
    ],
    assumptions: [
      'The interval reaches from the last window that was certainly not steady to the first from which all are: what the step and the noise of the sensor may hide or feign is added to the limit, or taken off. It is lopsided.',
      'A window with gaps counts as steady where four fifths of it or more were read and the readings beside each gap leave no room for more than the limit; else it counts as neither.',
      'Where the readings leave the time open, or tell it less than half as closely, it is read off the fitted response: over all curves that the readings allow at 95 %, with 0.35 of a step of the sensor about the limit (half a step about the distance from the end). The figure says so.',
      'The interval makes room for the largest error that a step of the sensor can leave, and so holds the truth more often than 95 %.',
    ],
    absentWhen: [
      NOT_STEADY,
      'the sensor is too coarse for the limit, or gaps of the log leave open since when it was steady, and no fitted response settles within the load: then a bound is given',
    ],
    source: CRITERIA[0]!.source,
    check: FIRST_ORDER,
  },
  time_constant: {
    label: 'time constant',
    unit: 's',
    spoken: 'time-constant constant slow exponential',
    prior: -0.2,
    publishedChecks: FIT,
    lists: [],
    definition:
      'Time constant of the exponential fitted to the rise under load by least squares; where the readings bear two, of the main part, which is the larger one within the load. A slower part that is hidden below the scatter widens its interval up to a share of 30 % of the step.',
    formula: RESPONSE,
    notCovered: [
      'A load that changed where no channel shows it.',
      'A slower part that makes more than 30 % of the step and is hidden below the scatter.',
      LAG_FIT,
    ],
    assumptions: [...CONSTANT_LOAD, ...FITTED],
    absentWhen: [...NO_RESPONSE],
    source: STEP,
    check: FIRST_ORDER,
  },
  second_time_constant: {
    label: 'second time constant',
    unit: 's',
    spoken: 'second-time-constant second constant',
    prior: -0.4,
    publishedChecks: FIT,
    lists: [],
    definition:
      'Time constant of the other of two exponentials: of a chip on its board it is mostly the faster one, of a board in its case the slower one; the figure says which.',
    formula: RESPONSE,
    notCovered: ['A third part: the two then share what it does.', BOOST, LAG_FIT],
    assumptions: [...CONSTANT_LOAD, ...FITTED],
    absentWhen: [
      ...NO_RESPONSE,
      'the readings bear one time constant',
      UNSEEN,
      'it is known no better than by two thirds of itself; a slower one is then above its lower end',
    ],
    source: STEP,
    check: FIRST_ORDER,
  },
  response_amplitude: {
    label: 'amplitude of the response',
    unit: 'K',
    spoken: 'amplitude response step',
    prior: -0.4,
    publishedChecks: FIT,
    lists: [],
    definition:
      'Amplitude of the main part of the fitted response: how far it would raise the temperature from the start of the load to its end. A difference of readings of one sensor, so that its offset cancels.',
    formula: RESPONSE,
    notCovered: ['A device that had not settled before the load began.', BOOST, LAG_FIT],
    assumptions: [...CONSTANT_LOAD, ...FITTED, 'The device had settled before the load began.', HIDDEN_BOOST],
    absentWhen: [...NO_RESPONSE, BOOSTED, START_UNREAD, 'it is known no better than by two thirds of itself'],
    source: STEP,
    check: FIRST_ORDER,
  },
  second_amplitude: {
    label: 'amplitude of the second part',
    unit: 'K',
    spoken: 'second-amplitude second amplitude',
    prior: -0.4,
    publishedChecks: FIT,
    lists: [],
    definition:
      'Amplitude of the part of the fitted response whose time constant is the second one; of a slower part only where that is told.',
    formula: RESPONSE,
    notCovered: ['A third part: the two then share what it does.', BOOST, LAG_FIT],
    assumptions: [...CONSTANT_LOAD, ...FITTED, 'The device had settled before the load began.', HIDDEN_BOOST],
    absentWhen: [
      ...NO_RESPONSE,
      BOOSTED,
      'the readings bear one time constant',
      UNSEEN,
      START_UNREAD,
      'it is known no better than by two thirds of itself',
    ],
    source: STEP,
    check: FIRST_ORDER,
  },
  amplitude_per_watt: {
    label: 'amplitude per watt',
    unit: 'K/W',
    spoken: 'amplitude-per-watt',
    prior: -0.4,
    publishedChecks: [...FIT, ...PRODUCT],
    lists: [],
    uncounted: QUOTIENT,
    definition:
      'Amplitude of the main part divided by what the load added to the mean power of the idle phase; it says which power. For this device on this bench, not a thermal resistance of a package.',
    formula: String.raw`R_k = \frac{A_k}{\bar P_\mathrm{load} - \bar P_\mathrm{idle}}`,
    notCovered: [
      'Power that leaves the device otherwise than as heat, or is lost before it gets there.',
      'A device that had not settled before the load began.',
    ],
    assumptions: ['All of the power that is measured becomes heat in the device.', ...CONSTANT_LOAD, ...FITTED],
    absentWhen: ['the amplitude is absent', 'there is no idle phase', 'there is no power'],
    source: 'JESD51 family of standards, structure functions: parts of a response per watt (from memory)',
    check: 'hand-computed quotients',
  },
  second_amplitude_per_watt: {
    label: 'second amplitude per watt',
    unit: 'K/W',
    spoken: 'second-amplitude-per-watt',
    prior: -0.4,
    publishedChecks: [...FIT, ...PRODUCT],
    lists: [],
    uncounted: QUOTIENT,
    definition: 'The same of the second part: its amplitude divided by what the load added to the mean power of the idle phase.',
    formula: String.raw`R_k = \frac{A_k}{\bar P_\mathrm{load} - \bar P_\mathrm{idle}}`,
    notCovered: [
      'Power that leaves the device otherwise than as heat, or is lost before it gets there.',
      'A third part: the two then share what it does.',
    ],
    assumptions: ['All of the power that is measured becomes heat in the device.', ...CONSTANT_LOAD, ...FITTED],
    absentWhen: ['the second amplitude is absent', 'there is no idle phase', 'there is no power'],
    source: 'JESD51 family of standards, structure functions: parts of a response per watt (from memory)',
    check: 'hand-computed quotients',
  },
  cooling_time_constant: {
    label: 'cool-down time constant',
    unit: 's',
    spoken: 'cool-down cooldown cools cooling cooled off afterwards',
    prior: -0.3,
    publishedChecks: FIT,
    lists: [],
    uncounted:
      'Its fit is that of the time constant under load, which is simulated; of cool-downs closed forms are tried with thirty seeds in the tests.',
    definition:
      'Time constant of the exponential fitted to the fall in the phase cool-down by least squares; where the readings bear two, of the main part, which is the larger one within the phase. The same device cools otherwise than it warms where its fan slows down, or its leakage falls.',
    formula: RESPONSE,
    assumptions: [
      'The device rested: where its power is logged, means over a minute lie within 10 % of the step about their median.',
      'The first seconds, up to a sixth of the phase, are left out where they do not follow the rest.',
      ...FITTED,
    ],
    notCovered: ['A fan that slowed down meanwhile: the fit then takes two coolers for one.', LAG_FIT],
    absentWhen: [
      'there is no phase named cool-down, or the log ends with the load',
      'the power did not rest',
      'the phase lasted less than two time constants',
      'residuals exceed 5 % of the step, or follow each other so that fewer than six independent ones are left',
    ],
    source: STEP,
    check: FIRST_ORDER,
  },
  asymptote_temperature: {
    label: 'final temperature (fitted)',
    unit: '°C',
    spoken: 'asymptote eventually forever extrapolat',
    prior: -0.3,
    publishedChecks: FIT,
    lists: [],
    definition:
      'Temperature at which the fitted response ends, at the mean ambient of the load phase; where the ambient is neither measured nor stated, in the room as it was when the load ended. Its interval reaches over all fits that the readings allow at 95 %: where one exponential is enough, these have a slower part hidden below the scatter, up to 30 times slower. Where a slower part is seen and its end is not, the temperature ends above what it had reached. A room that warms looks like such a part: where the ambient is stated and not measured, that lower end is lowered by the half-width of the 95 % interval of the stated ambient.',
    formula: String.raw`T_\infty = \vartheta_\infty + \bar T_\mathrm{ambient}`,
    notCovered: ['A slower part more than 30 times as slow as the faster one, and one that begins after the load ended.', LAG_FIT],
    assumptions: [
      ...CONSTANT_LOAD,
      ...FITTED,
      'A device that settles otherwise than by a sum of exponentials moves the end by a tenth of what it lies beyond the load, as a standard uncertainty.',
    ],
    absentWhen: [
      ...NO_RESPONSE,
      'a slower part is seen, but not where it ends: the figure is then above its lower end',
      'the end is open, and the power that is logged still climbed over the last third of the load by what accounts for half or more of what the temperature climbed there (what the power climbed, times the rise for each watt that the load had added): there is no lower end then',
      'the readings leave the end open by 30 % of the step or more: the same',
      'a slower part is seen, and the load lasted less than eight time constants of the main part: the same',
    ],
    source: STEP,
    check: FIRST_ORDER,
  },
  throttle_headroom: {
    label: 'throttle headroom',
    unit: 'K',
    spoken: 'headroom short limit spare left below margin',
    publishedChecks: [],
    lists: ['side by side'],
    outside: EXTREME,
    definition:
      'The temperature at which the device throttles, as rated for this channel, less the peak temperature. Negative when it was passed. Its interval is that of the peak, the other way round, with the same room for noise that a coarse step hides.',
    formula: String.raw`H = T_\mathrm{limit} - \hat T`,
    notCovered: [MOVED, 'How true the limit is that the maker states: it has no uncertainty here unless one is stated.'],
    assumptions: ['The rating is for the place where the channel measures.'],
    absentWhen: ['the device states no limit for the channel', 'there is no load phase'],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'hand-computed differences',
  },
  held_at_limit: {
    label: 'time held at the limit',
    unit: 's',
    spoken: 'held limit stuck spent pinned',
    publishedChecks: [],
    lists: [],
    outside:
      'Readings within twice their scatter of the threshold may belong to either side, and the interval has room for all of them.',
    definition:
      'Time of the load phase with readings at the limit or above, from 1 K below it on (or one step of the sensor, where that is coarser). Zero is a value. Its interval is lopsided: readings within twice their scatter (and half a step) of the threshold may belong to either side.',
    formula: String.raw`t_\mathrm{limit} = \sum_{i:\, T_i \ge T_\mathrm{limit} - \delta} w_i`,
    notCovered: ['An offset of the sensor: it moves the readings across the limit, and the interval knows of their scatter alone.'],
    assumptions: ['Gaps of the log are left out.'],
    absentWhen: ['the device states no limit for the channel', 'there is no load phase'],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'hand-counted rows',
  },
  ambient_ceiling: {
    label: 'ambient ceiling',
    unit: '°C',
    spoken: 'ceiling room ambient warm could until',
    publishedChecks: ['gum-5-2-2'],
    lists: [],
    definition:
      'Ambient at which the device would end at its limit: the limit less the rise of the final temperature (fitted) over the ambient of the load phase. An extrapolation, given within 10 K of the ambient of the test; its interval is that of the asymptote, the other way round.',
    formula: String.raw`T_\mathrm{ceiling} = T_\mathrm{limit} - (T_\infty - \bar T_\mathrm{ambient}),\quad |T_\mathrm{ceiling} - \bar T_\mathrm{ambient}| \le 10\,\mathrm K`,
    notCovered: [
      'What the final temperature (fitted) does not cover.',
      'Fans that speed up and leakage that grows in a warmer room.',
    ],
    assumptions: ['The rise does not depend on the ambient.'],
    absentWhen: [
      'the final temperature (fitted) is absent: where that has a lower end, the ceiling is below an upper one, with the ambient at the upper end of its interval',
      'it lies more than 10 K from the ambient of the test',
      'no limit is stated',
    ],
    source: PRACTICE,
    check: 'hand-computed differences',
  },
  rise_per_watt: {
    label: 'rise per watt',
    unit: 'K/W',
    spoken: 'per watt kelvin resistance',
    publishedChecks: [...PRODUCT, ...LIMITS],
    lists: ['side by side'],
    definition:
      'Temperature rise divided by the mean power over the same rows; it says which power. For this device on this bench, not a thermal resistance of a package.',
    formula: String.raw`R = \frac{\Delta T}{\bar P}`,
    notCovered: ['Power that leaves the device otherwise than as heat, or is lost before it gets there.', LAG],
    assumptions: ['All of the power that is measured becomes heat in the device: at the wall it includes the adapter.'],
    absentWhen: [NOT_STEADY, 'the ambient is not known', 'there is no power'],
    source: 'JESD51 family of standards, definition of thermal resistance (from memory)',
    check: 'JCGM 100:2008, eq. 16, for a correlated temperature difference',
  },
  sensor_noise: {
    label: 'noise of the sensor',
    unit: 'K',
    spoken: 'noise noisy jitter flicker scatter sensor',
    publishedChecks: ['second-differences'],
    lists: [],
    definition:
      'Standard deviation of a single reading about the line through its two neighbours: in the idle phase, else in the last half of the load, else in the whole log.',
    formula: String.raw`s^2 = \frac{1}{6 (n - 2)} \sum_i (T_{i-1} - 2 T_i + T_{i+1})^2`,
    notCovered: ['Noise that is slower than two steps of the log: it is taken for course.'],
    assumptions: [
      'Rounding by the sensor is in it.',
      'A row that is written twice counts once. So does a reading that the sensor holds for several rows, always the same number: that is seen where readings change at every second row alone, or at every third, though they scatter.',
      'Readings are about evenly spaced, and the temperature bends little between three of them.',
    ],
    absentWhen: [
      'there is no temperature channel',
      'fewer than 30 readings',
      'the readings scatter by less than half a step of the sensor',
    ],
    ofSingleReadings: true,
    source: 'T. Gasser, L. Sroka and C. Jennen-Steinmetz, Biometrika 73, 1986, 625–633 (from memory)',
    check: 'noise of a known standard deviation, in white simulated readings',
  },
});
