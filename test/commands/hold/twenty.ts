/** Twenty plain sentences about the demonstration, and what each of their numbers means. Those marked null no figure bears. */
export const TWENTY: readonly (readonly [sentence: string, meant: readonly (readonly [words: string, is: string | null])[]])[] = [
  ['The Larch 2 is sold at 2 GHz.', [['2 GHz', 'rated.device.rated_clock']]],
  [
    'At that rated setting it idles at 27 degrees and settles just under sixty degrees.',
    [
      ['27 degrees', 'rated.idle_temperature'],
      ['just under sixty degrees', 'rated.steady_temperature'],
    ],
  ],
  ['It needs nearly half an hour of load to count as steady.', [['nearly half an hour', 'rated.time_to_steady_state']]],
  [
    'The fast setting asks for 2.6 GHz, and its hottest reading was 85 degrees.',
    [
      ['2.6 GHz', 'fast.setting.clock'],
      ['85 degrees', 'fast.peak_temperature'],
    ],
  ],
  ['The governor steps in at 84 °C.', [['84 °C', 'rated.device.throttle_at']]],
  ['On the fast run that happened after about 20 minutes.', [['about 20 minutes', 'fast.time_to_throttle']]],
  [
    'From then on it fell to 2.4 GHz again and again, and over the hour the clock averaged 2.50 GHz.',
    [
      ['2.4 GHz', 'fast.lowest_clock'],
      ['2.50 GHz', 'fast.mean_clock'],
    ],
  ],
  [
    'Under load it drew over ten watts, against six and a half watts at the rated setting.',
    [
      ['over ten watts', 'fast.load_power'],
      ['six and a half watts', 'rated.load_power'],
    ],
  ],
  ['At idle the rated run drew less than 1.5 watts.', [['less than 1.5 watts', 'rated.idle_power']]],
  [
    'The quick run settled at 79 degrees, 4 degrees short of the limit at its hottest.',
    [
      ['79 degrees', 'quick.steady_temperature'],
      ['4 degrees short', 'quick.throttle_headroom'],
    ],
  ],
  ['Its chip rose about 56 degrees above the room.', [['about 56 degrees above', 'quick.temperature_rise']]],
  ['The brisk setting was about 6 kelvin warmer than the rated one.', [['about 6 kelvin warmer', 'steps.rise_delta.brisk']]],
  ['It drew 0.9 W more.', [['0.9 W more', 'steps.power_delta.brisk']]],
  ['All benchmarks together ran 18 percent faster at the fast setting.', [['18 percent faster', 'steps.speedup.fast']]],
  ['Per watt it did about 73 percent of the work.', [['about 73 percent', 'steps.performance_per_watt.fast']]],
  [
    'The wide copy spends about 80 percent of its time waiting for something that no clock hurries.',
    [['about 80 percent', 'steps.clock_independent_share."wide-copy"']],
  ],
  [
    'The ledger sort took 46 seconds on the fast run and 54 seconds on the rated one.',
    [
      ['46 seconds', 'fast.score."ledger-sort-all-cores"'],
      ['54 seconds', 'rated.score."ledger-sort-all-cores"'],
    ],
  ],
  ['The hottest spot of the case reached about 63 degrees at the fast setting.', [['about 63 degrees', 'fast.hottest_surface']]],
  ['The room was at 22.5 °C on the first day, when the rated run was made.', [['22.5 °C', 'rated.ambient']]],
  [
    'The board of the fast run settled at 65 degrees, and a cup of tea at 91 degrees.',
    [
      ['65 degrees', 'fast.steady_temperature.board'],
      ['91 degrees', null],
    ],
  ],
];
