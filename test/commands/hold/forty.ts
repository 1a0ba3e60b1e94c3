/**
 * Forty passages about the demonstration as a tester would write them: front matter, lists, tables, prose. Beside each number stands what it
 * means; of several expressions any is right. `null`: nothing bears the words, and `near` is what must be named as just missing them.
 */

export interface Meant {
  readonly words: string;
  readonly is: readonly string[] | null;
  /** What must be shown as missing the words. */
  readonly near?: string;
}

export interface Passage {
  /** A key of the front matter in which it stands; in the text where it is left out. */
  readonly key?: 'title' | 'summary' | 'disclosure';
  readonly text: string;
  readonly numbers: readonly Meant[];
}

function is(words: string, ...right: readonly string[]): Meant {
  return { words, is: right };
}

const LEDGER = '"ledger-sort-all-cores"';
const GRID = '"grid-relaxation-all-cores"';

export const FORTY: readonly Passage[] = [
  // Front matter.
  { key: 'title', text: 'What 2.4 GHz costs', numbers: [is('2.4 GHz', 'quick.setting.clock')] },
  {
    key: 'title',
    text: '2.6 GHz for nearly twenty minutes',
    numbers: [is('2.6 GHz', 'fast.setting.clock'), is('nearly twenty minutes', 'fast.time_to_throttle')],
  },
  {
    key: 'summary',
    text: 'At 2.2 GHz the Larch 2 draws 0.9 W more and runs 7.5 percent faster.',
    numbers: [
      is('2.2 GHz', 'brisk.setting.clock'),
      is('0.9 W more', 'steps.power_delta.brisk', 'brisk.load_power - rated.load_power'),
      is('7.5 percent faster', 'steps.speedup.brisk'),
    ],
  },
  {
    key: 'summary',
    text: 'The fast setting throttles after about 20 minutes and spends 42 minutes at the limit.',
    numbers: [is('about 20 minutes', 'fast.time_to_throttle'), is('42 minutes', 'fast.held_at_limit')],
  },
  {
    key: 'summary',
    text: 'Four settings with five repeats of each test.',
    numbers: [
      is('Four settings', 'kinds(*.setting.clock)', 'kinds([rated brisk quick fast].setting.clock)'),
      is('five repeats', `rated.repeats.${GRID}`, `fast.repeats.${GRID}`),
    ],
  },
  { key: 'disclosure', text: 'We bought it, with its 12 V adapter.', numbers: [is('12 V', 'rated.device.supply')] },
  // Lists.
  {
    text: '- rated: the chip settles at 59.4 °C and draws 6.4 W;',
    numbers: [is('59.4 °C', 'rated.steady_temperature'), is('6.4 W', 'rated.load_power')],
  },
  {
    text: '- quick: 2.4 GHz with 60 mV more on the core;',
    numbers: [is('2.4 GHz', 'quick.setting.clock'), is('60 mV more', 'quick.setting.voltage_offset')],
  },
  {
    text: '- fast: 2.6 GHz asked for, 2.50 GHz kept on average;',
    numbers: [is('2.6 GHz', 'fast.setting.clock'), is('2.50 GHz', 'fast.mean_clock')],
  },
  { text: '1. five minutes of idle,', numbers: [is('five minutes', 'rated.phase_duration.idle', 'fast.phase_duration.idle')] },
  { text: '2. sixty minutes of load,', numbers: [is('sixty minutes', 'rated.phase_duration', 'fast.phase_duration')] },
  {
    text: '3. another five minutes to cool down.',
    numbers: [is('five minutes', 'rated.phase_duration."cool-down"', 'fast.phase_duration."cool-down"')],
  },
  {
    text: '- the front edge of the lid, at 57 degrees on the fast run;',
    numbers: [is('57 degrees', 'fast.surface."lid-front-edge"')],
  },
  // Tables: each row is one passage, below the head that it needs.
  {
    text: '| run | hottest reading | under load |\n| --- | --- | --- |\n| rated | 60.5 °C | 6.43 W |',
    numbers: [is('60.5 °C', 'rated.peak_temperature'), is('6.43 W', 'rated.load_power')],
  },
  {
    text: '| run | hottest reading | under load |\n| --- | --- | --- |\n| quick | 80 °C | 9.3 W |',
    numbers: [is('80 °C', 'quick.peak_temperature'), is('9.3 W', 'quick.load_power')],
  },
  {
    text: '| | rated | fast |\n| --- | --- | --- |\n| ledger sort | 54 s | 46 s |',
    numbers: [is('54 s', `rated.score.${LEDGER}`), is('46 s', `fast.score.${LEDGER}`)],
  },
  {
    text: '| | settled (°C) | load power (W) |\n| --- | ---: | ---: |\n| brisk | 65.2 | 7.3 |',
    numbers: [is('65.2', 'brisk.steady_temperature'), is('7.3', 'brisk.load_power')],
  },
  {
    text: '| setting | grid, sweeps/s |\n| --- | ---: |\n| quick | 96.7 |',
    numbers: [is('96.7', `quick.score.${GRID}`)],
  },
  // Differences.
  {
    text: 'The brisk chip settled about 13 degrees below the quick one.',
    numbers: [
      is(
        'about 13 degrees',
        'quick.steady_temperature - brisk.steady_temperature',
        'brisk.steady_temperature - quick.steady_temperature',
      ),
    ],
  },
  { text: 'Quick drew two watts more than brisk.', numbers: [is('two watts more', 'quick.load_power - brisk.load_power')] },
  {
    text: 'A ledger sort took nine seconds less on the fast run than on the rated one.',
    numbers: [
      is('nine seconds less', `rated.score.${LEDGER} - fast.score.${LEDGER}`, `fast.score.${LEDGER} - rated.score.${LEDGER}`),
    ],
  },
  {
    text: 'At idle the fast run drew 60 milliwatts more than the rated one.',
    numbers: [is('60 milliwatts more', 'fast.idle_power - rated.idle_power')],
  },
  {
    text: 'Under load the board of the fast run stayed nearly 19 degrees cooler than its chip.',
    numbers: [
      is(
        'nearly 19 degrees cooler',
        'fast.steady_temperature - fast.steady_temperature.board',
        'fast.steady_temperature.board - fast.steady_temperature',
      ),
    ],
  },
  {
    text: 'On the brisk run the hottest spot of the lid came out three degrees warmer than on the rated one.',
    numbers: [
      is(
        'three degrees warmer',
        'brisk.hottest_surface - rated.hottest_surface',
        'brisk.hottest_surface.lid - rated.hottest_surface.lid',
        'brisk.surface."lid-centre" - rated.surface."lid-centre"',
      ),
    ],
  },
  // Factors and shares.
  {
    text: 'The quick setting draws nearly half as much power again as the rated one.',
    numbers: [is('nearly half as much power again', 'quick.load_power / rated.load_power')],
  },
  {
    text: 'Under load the rated run takes 4.7 times as much power as at idle.',
    numbers: [is('4.7 times', 'rated.load_power / rated.idle_power')],
  },
  {
    text: 'The fast run spent about 70 percent of its hour at the limit.',
    numbers: [is('about 70 percent', 'fast.held_at_limit / fast.phase_duration')],
  },
  {
    text: 'The grid runs 24 percent faster at the fast setting.',
    numbers: [is('24 percent faster', `steps.speedup.fast.${GRID}`)],
  },
  {
    text: 'For each joule the fast setting does a quarter less work.',
    numbers: [is('a quarter less', 'steps.performance_per_watt.fast')],
  },
  {
    text: 'The wide copy gains four percent from the fast clock.',
    numbers: [is('gains four percent', 'steps.speedup.fast."wide-copy" - 1', 'steps.speedup.fast."wide-copy"')],
  },
  // Plain figures.
  {
    text: 'In a room of 22.8 °C the fast run rose by 60.5 kelvin.',
    numbers: [is('22.8 °C', 'fast.ambient'), is('by 60.5 kelvin', 'fast.temperature_rise')],
  },
  { text: 'In all, the rated run used 24 kilojoules.', numbers: [is('24 kilojoules', 'rated.energy')] },
  { text: 'The text sieve reads 292 MB/s at the fast setting.', numbers: [is('292 MB/s', 'fast.score."text-sieve-one-core"')] },
  { text: 'The quick chip stays four degrees below the limit.', numbers: [is('four degrees below', 'quick.throttle_headroom')] },
  {
    text: 'It took the rated run almost 28 minutes to count as steady.',
    numbers: [is('almost 28 minutes', 'rated.time_to_steady_state')],
  },
  {
    text: 'Of the settings tried, 2.2 GHz was the highest that passed with nothing added, and 2.4 GHz the first that failed.',
    numbers: [is('2.2 GHz', 'ladder.highest_passed_clock."0 mV"'), is('2.4 GHz', 'ladder.lowest_failed_clock."0 mV"')],
  },
  { text: 'The first try got as far as 63.5 °C before it restarted.', numbers: [is('63.5 °C', 'short.peak_temperature')] },
  // Near misses: what the words mean is not what fits.
  {
    text: 'The fast chip settled at 85 degrees.',
    numbers: [{ words: '85 degrees', is: null, near: 'fast.steady_temperature' }],
  },
  {
    text: 'On average the fast run kept a clock of 2.40 GHz.',
    numbers: [{ words: '2.40 GHz', is: null, near: 'fast.mean_clock' }],
  },
  {
    text: 'The rated run drew 6.6 W under load.',
    numbers: [{ words: '6.6 W', is: null, near: 'rated.load_power' }],
  },
];
