/** Definitions of the clock figures. */
import { COURSE, GAPS, SLOW, STEPS, UNOBSERVED } from './means.ts';
import { COUNTED, EXTREME, GOVERNED } from './outside.ts';
import { MEAN } from './proofs.ts';
import { subject } from './subject.ts';

const PRACTICE = 'common practice, no source';
const REPORTED = "The clock is taken as the device reports it: its crystal's error is left out.";
const WHICH = 'The requested clock or the delivered one, as the channel states it; where it does not, the figure says so.';
const NO_LOAD = 'there is no load phase';

const PERCENTILE = String.raw`f_p = \min\{f : \textstyle\sum_{i:\, f_i \le f} w_i \ge p \sum_i w_i\}`;
const ORDERED =
  'The interval lies between order statistics, of as many independent readings as the log is worth: readings that follow each other repeat each other. It holds for loads like this one, and not for this hour alone.';
const NOISE_IN =
  'The percentile is that of the readings. Noise of the sensor spreads them, so that the interval has room for it: it reaches towards the median by as many standard deviations of neighbouring readings as the percentile lies off in a normal distribution (2.33 for the 1st, 1.64 for the 5th). Levels that stand apart, as the steps of a clock, are no noise.';
const FRESH =
  'A row that is written twice counts once, and so does a reading that the sensor holds for several rows, always the same number.';
const FEW =
  'the readings are worth fewer independent ones than the percentile needs: 368 for the 1st, 72 for the 5th, 6 for the median';
const ORDER_STATISTICS = 'H. A. David and H. N. Nagaraja, Order Statistics, 2003, 7.1 (from memory), for the interval';

export const CLOCK = subject('clock', {
  mean_clock: {
    label: 'mean clock',
    unit: 'Hz',
    spoken: 'mean average averages averaged averaging overall ran runs',
    prior: 0.2,
    publishedChecks: [...MEAN, 'rectangular-limits'],
    lists: ['runs', 'side by side', 'repeats'],
    outside: GOVERNED,
    definition:
      'Mean of the readings of the load phase (or of the phase that the address names), each weighted by the time that it stands for.',
    formula: String.raw`\bar f = \frac{\sum_i w_i f_i}{\sum_i w_i}`,
    notCovered: [SLOW, 'The error of the crystal that the device counts by.'],
    assumptions: [REPORTED, WHICH, COURSE, STEPS, GAPS],
    absentWhen: ['there is no clock channel', 'the phase is missing or holds fewer than two readings', UNOBSERVED],
    source: PRACTICE,
    check: 'hand-computed means',
  },
  lowest_clock: {
    label: 'lowest clock',
    unit: 'Hz',
    spoken: 'lowest least worst minimum min drops dropped falls fell down bottom',
    publishedChecks: [],
    lists: ['side by side'],
    outside: EXTREME,
    definition:
      'Smallest reading of the load phase. Its interval is lopsided: down by half the largest change between two readings, which may have hidden more; up by what noise pushes the smallest of many readings.',
    formula: String.raw`\check f = \min_{i \in \mathrm{load}} f_i`,
    notCovered: ['Drops shorter than the step of the log.', 'The error of the crystal that the device counts by.'],
    assumptions: [REPORTED, WHICH],
    absentWhen: ['there is no clock channel', NO_LOAD],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'hand-picked rows',
  },
  clock_percentile_1: {
    label: 'clock, 1st percentile',
    unit: 'Hz',
    spoken: 'percentile lowest dips slowest',
    publishedChecks: ['order-statistics'],
    lists: [],
    definition:
      'The reading of the clock that was undercut in 1 % of the time of the load. The interval has room for noise of the sensor.',
    formula: PERCENTILE,
    notCovered: ['Loads unlike this one, and drops shorter than the step of the log.'],
    assumptions: [REPORTED, WHICH, ORDERED, NOISE_IN, FRESH, 'Gaps of the log are left out.'],
    absentWhen: ['there is no clock channel', NO_LOAD, FEW],
    ofSingleReadings: true,
    source: ORDER_STATISTICS,
    check: 'ranks of the median of ten values: the second and the ninth, with 97.9 %',
  },
  clock_percentile_5: {
    label: 'clock, 5th percentile',
    unit: 'Hz',
    spoken: 'percentile lowest dips slowest',
    publishedChecks: ['order-statistics'],
    lists: [],
    definition:
      'The reading of the clock that was undercut in 5 % of the time of the load. The interval has room for noise of the sensor.',
    formula: PERCENTILE,
    notCovered: ['Loads unlike this one, and drops shorter than the step of the log.'],
    assumptions: [REPORTED, WHICH, ORDERED, NOISE_IN, FRESH, 'Gaps of the log are left out.'],
    absentWhen: ['there is no clock channel', NO_LOAD, FEW],
    ofSingleReadings: true,
    source: ORDER_STATISTICS,
    check: 'ranks of the median of ten values: the second and the ninth, with 97.9 %',
  },
  median_clock: {
    label: 'median clock',
    unit: 'Hz',
    spoken: 'median middle half typical usual',
    publishedChecks: ['order-statistics'],
    lists: [],
    definition: 'The reading of the clock that was undercut in half of the time of the load.',
    formula: PERCENTILE,
    notCovered: ['Loads unlike this one.'],
    assumptions: [REPORTED, WHICH, ORDERED, FRESH, 'Gaps of the log are left out.'],
    absentWhen: ['there is no clock channel', NO_LOAD, FEW],
    ofSingleReadings: true,
    source: ORDER_STATISTICS,
    check: 'ranks of the median of ten values: the second and the ninth, with 97.9 %',
  },
  clock_share: {
    label: 'share of time at a clock',
    unit: '1',
    spoken: 'share percent time spent stayed most ghz mhz',
    publishedChecks: ['share-interval'],
    lists: [],
    uncounted: 'Its interval is that of a share, whose source has its coverage.',
    definition:
      'Share of the time of the load at each step of the primary clock that was seen, or, where more than twelve different readings were, in each of up to twelve classes of equal width.',
    formula: String.raw`s_k = \frac{\sum_{i:\, f_i = f_k} w_i}{\sum_i w_i}`,
    notCovered: ['Loads unlike this one, and changes of the clock between two readings.'],
    assumptions: [
      REPORTED,
      WHICH,
      'Readings that follow each other count as fewer, for the interval.',
      'Gaps of the log are left out.',
    ],
    absentWhen: [NO_LOAD, 'it holds fewer than two readings'],
    ofSingleReadings: true,
    source: 'E. B. Wilson, Journal of the American Statistical Association 22, 1927, 209–212 (from memory), for the interval',
    check: 'hand-counted rows; Wilson’s interval in closed form',
  },
  time_below_setting: {
    label: 'time below the setting',
    unit: 's',
    spoken: 'below under less lost spent slower',
    publishedChecks: [],
    lists: [],
    outside: COUNTED,
    definition:
      'Time of the load phase in which the clock was below its setting by more than one step of the clock, or 1 % of the setting where that is more; rows of less than half utilisation do not count.',
    formula: String.raw`t_\mathrm{below} = \sum_{i:\, f_i < f_\mathrm{set} - \delta} w_i`,
    notCovered: ['What happened in gaps of the log.'],
    assumptions: [
      REPORTED,
      WHICH,
      'Gaps of the log are left out.',
      'Each change of state is known to a step/√12. Where they recur in step with the log, they all share that error. A clock that changes so fast that changes fall between readings is seen by glances: the interval has room for that, as far as neighbouring readings tell how fast it changes.',
    ],
    absentWhen: ['no clock setting is stated', 'there is no clock channel', NO_LOAD],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'hand-counted rows',
  },
  throttle_events: {
    label: 'throttle events',
    unit: '1',
    spoken: 'throttl event times',
    publishedChecks: [],
    lists: [],
    outside:
      'A count of what the log shows. A governor that keeps its flag up for seconds was never missed; one that is quicker than the log would be.',
    definition:
      'Number of times that throttling began in the load phase: rising bits of the throttle flags that mean "now", by reason; without flags, falls of the delivered clock below its setting. A fall begins with two readings in a row below the setting by more than one step of the clock (or 1 %), and ends with two in a row above that by half as much, so that a clock that toggles about the threshold falls once. Sticky bits ("has occurred since boot") are never counted.',
    formula: String.raw`n = \#\{i \in \mathrm{load} : b_{i-1} = 0,\ b_i = 1\}`,
    notCovered: ['Events that came and went between two readings, and reasons for which the device has no flag.'],
    assumptions: [
      'A clock that is below its setting from the first reading on, for longer than 10 s or three steps of the log, was throttled from the start: that is one event, and the time to throttle is zero.',
      'What came and went between two readings is not counted. Where a sticky bit came on under load and no "now" bit was seen, that is said, and the interval reaches up by as many; and by the single readings: those below the setting by more than half the tolerance, and those at the setting within a fall, which then is two.',
      'Where states of the clock last for one reading, others fall between two: half as many, where their lengths are exponentially distributed about some steps of the log. The interval reaches up by these too, as Poisson’s distribution has it (half of n singles, and 1.96 √(3n/4), rounded up).',
    ],
    absentWhen: [
      'there is neither a throttle flag nor a clock channel',
      'without flags: no clock setting is stated',
      'all named bits of the flags are sticky, and there is no clock channel',
      'without flags: a clock that is not known to be the delivered one never fell, which shows nothing',
      'without flags: the clock was below its setting from the first reading to the last',
      'without flags: the clock was below its setting, or back at it, for single readings more than half as often as below it for longer, and in more than 1 % of all: it changes as fast as it was logged',
      NO_LOAD,
    ],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'hand-counted rows',
  },
  time_to_throttle: {
    label: 'time to throttle',
    unit: 's',
    spoken: 'throttl first until before after limit lasts lasted governor',
    prior: 0.2,
    publishedChecks: [],
    lists: ['side by side'],
    outside: COUNTED,
    definition:
      'Time from the beginning of the load to the first reading that shows throttling. It began within the step before: the interval reaches back that far. Where the beginning of the load was told by the bend of a temperature, it reaches as far to both sides as such a bend is known.',
    formula: String.raw`t_\mathrm{throttle} = \min\{t_i : b_{i-1} = 0,\ b_i = 1\} - t_\mathrm{load}`,
    notCovered: ['Throttling that came and went between two readings before the first that was seen.'],
    assumptions: [
      'A sticky bit that came on under load before any "now" bit tells the time too: between which two readings it was.',
    ],
    absentWhen: [
      'no throttling was seen, by flags or by the delivered clock: the figure is then above the length of the load',
      'throttle events are absent: nothing then shows whether there was throttling',
      NO_LOAD,
    ],
    ofSingleReadings: true,
    source: PRACTICE,
    check: 'hand-counted rows',
  },
  sustained_ratio: {
    label: 'sustained ratio',
    unit: '1',
    spoken: 'keeps kept sustain share last first began beginning start hold keep end',
    publishedChecks: ['gum-g-4-1'],
    lists: ['side by side'],
    definition:
      'Mean clock over the last ten minutes of the load divided by the mean over its first two. All that departs from either mean is its scatter.',
    formula: String.raw`r = \frac{\bar f_\mathrm{last\ 10\ min}}{\bar f_\mathrm{first\ 2\ min}}`,
    notCovered: [
      'What the clock would have fallen to under a longer load.',
      'What the clock gives in speed: that depends on the test.',
    ],
    assumptions: [REPORTED, WHICH],
    absentWhen: ['the load lasted less than twenty minutes', 'there is no clock channel'],
    source: PRACTICE,
    check: 'hand-computed means',
  },
});
