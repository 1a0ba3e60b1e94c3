/**
 * The stated numbers and claims of the mutation test: those of the demonstration's note, and more about the same figures. What each
 * allows is written out here by hand, from the page that defines it, and not asked of the code under test.
 */

/** Values of figures by address, in canonical units. */
export type Values = (address: string) => number;

export interface Statement {
  readonly words: string;
  readonly is: string;
  /** In the unit that the words use. */
  readonly at: (v: Values) => number;
  readonly lower: number;
  readonly upper: number;
  readonly lowerClosed: boolean;
  readonly upperClosed: boolean;
  /** For each figure that it rests on: the value that brings `at` to a target, the others as they are. */
  readonly solve: Readonly<Record<string, (target: number, v: Values) => number>>;
}

type Allowed = readonly [open: '[' | '(', lower: number, upper: number, close: ']' | ')'];

/** A statement about one figure; what is said of it is value × factor + offset. */
export function one(words: string, address: string, [open, lower, upper, close]: Allowed, factor = 1, offset = 0): Statement {
  return {
    words,
    is: address,
    at: (v) => v(address) * factor + offset,
    lower,
    upper,
    lowerClosed: open === '[',
    upperClosed: close === ']',
    solve: { [address]: (target) => (target - offset) / factor },
  };
}

const QUICK = 'quick.load_power';
const BRISK = 'brisk.load_power';
const RATED = 'rated.load_power';

/** Said in the note and in its script. */
export const MORE_THAN_TWICE: Statement = {
  words: 'more than twice',
  is: `(${QUICK} - ${BRISK}) / (${BRISK} - ${RATED})`,
  at: (v) => (v(QUICK) - v(BRISK)) / (v(BRISK) - v(RATED)),
  lower: 2,
  upper: Number.POSITIVE_INFINITY,
  lowerClosed: false,
  upperClosed: false,
  solve: {
    [QUICK]: (target, v) => v(BRISK) + target * (v(BRISK) - v(RATED)),
    [BRISK]: (target, v) => (v(QUICK) + target * v(RATED)) / (1 + target),
    [RATED]: (target, v) => v(BRISK) - (v(QUICK) - v(BRISK)) / target,
  },
};

/** Those that stand in the demonstration's note. */
export const IN_NOTE: readonly Statement[] = [
  one('about nine minutes', 'rated.time_constant', ['[', 8, 10, ']'], 1 / 60),
  one('nearly twenty minutes', 'fast.time_to_throttle', ['[', 19, 20, ')'], 1 / 60),
  MORE_THAN_TWICE,
];

const { POSITIVE_INFINITY: ABOVE, NEGATIVE_INFINITY: BELOW } = Number;

/** Those that the test adds at the end of the note. */
export const ADDED: readonly Statement[] = [
  one('about sixty degrees', 'rated.steady_temperature', ['[', 57.5, 62.5, ']']),
  one('just over 139 degrees Fahrenheit', 'rated.steady_temperature', ['(', 139, 139.5, ']'], 1.8, 32),
  one('under 61 °C', 'rated.peak_temperature', ['(', BELOW, 61, ')']),
  one('thirty-seven kelvin', 'rated.temperature_rise', ['[', 36.5, 37.5, ')']),
  one('6.4 W', RATED, ['[', 6.35, 6.45, ')']),
  one('10.4 watts', 'fast.load_power', ['[', 10.35, 10.45, ')']),
  one('2.5 GHz', 'fast.mean_clock', ['[', 2.45, 2.55, ')'], 1e-9),
  one('at least 2,400 MHz', 'fast.lowest_clock', ['[', 2400, ABOVE, ')'], 1e-6),
  one('never above 85 °C', 'fast.peak_temperature', ['(', BELOW, 85, ']']),
  one('18 percent faster', 'steps.speedup.fast', ['[', 17.5, 18.5, ')'], 100, -100),
  one('27 percent less', 'steps.performance_per_watt.fast', ['[', 26.5, 27.5, ')'], -100, 100),
  one('between 9 and 10 watt-hours', 'quick.energy', ['[', 9, 10, ']'], 1 / 3600),
  {
    words: 'about 24 degrees warmer',
    is: 'fast.steady_temperature - rated.steady_temperature',
    at: (v) => v('fast.steady_temperature') - v('rated.steady_temperature'),
    lower: 23,
    upper: 25,
    lowerClosed: true,
    upperClosed: true,
    solve: {
      'fast.steady_temperature': (target, v) => v('rated.steady_temperature') + target,
      'rated.steady_temperature': (target, v) => v('fast.steady_temperature') - target,
    },
  },
  {
    words: '62 percent more',
    is: `fast.load_power / ${RATED}`,
    at: (v) => 100 * (v('fast.load_power') / v(RATED) - 1),
    lower: 61.5,
    upper: 62.5,
    lowerClosed: true,
    upperClosed: false,
    solve: {
      'fast.load_power': (target, v) => v(RATED) * (1 + target / 100),
      [RATED]: (target, v) => v('fast.load_power') / (1 + target / 100),
    },
  },
];

export interface ClaimCase {
  readonly words: string;
  /** The figures that the claim rests on. */
  readonly rests: readonly string[];
  /** A figure, the value that it gets, and whether the check must then fail. */
  readonly cases: readonly (readonly [figure: string, to: (v: Values) => number, fails: boolean])[];
}

const STEADY = ['quick.steady_temperature', 'brisk.steady_temperature', 'rated.steady_temperature'] as const;
const WHOLE = ['rated.touch_margin."whole-lid"', 'fast.touch_margin."whole-lid"'];
const CENTRE = ['rated.touch_margin."lid-centre"', 'fast.touch_margin."lid-centre"'];
const GRID = 'steps.scaling_exponent."grid-relaxation-all-cores"';

/** The claims of the demonstration's note. False by a hair is within the uncertainty: it cannot be told, and fails all the same. */
export const CLAIMS: readonly ClaimCase[] = [
  {
    words: 'settle higher',
    rests: STEADY,
    cases: [
      [STEADY[0], (v) => v(STEADY[1]) - 1e-6, true],
      [STEADY[0], (v) => v(STEADY[1]) - 20, true],
      [STEADY[0], (v) => v(STEADY[1]) + 20, false],
      [STEADY[1], (v) => v(STEADY[2]) - 1e-6, true],
      [STEADY[1], (v) => v(STEADY[0]) + 1e-6, true],
      [STEADY[1], (v) => v(STEADY[0]) + 20, true],
      [STEADY[1], (v) => (v(STEADY[0]) + v(STEADY[2])) / 2, false],
      [STEADY[2], (v) => v(STEADY[1]) + 1e-6, true],
      [STEADY[2], (v) => v(STEADY[1]) + 20, true],
    ],
  },
  {
    words: 'never let go',
    rests: ['quick.throttle_events', 'quick.time_below_setting'],
    cases: [
      ['quick.throttle_events', () => 0, false],
      ['quick.throttle_events', () => 1, true],
      ['quick.throttle_events', () => 7, true],
      ['quick.time_below_setting', () => 0, false],
      ['quick.time_below_setting', () => 1e-6, true],
      ['quick.time_below_setting', () => 600, true],
    ],
  },
  {
    words: 'less than in proportion',
    rests: ['steps.scaling_exponent'],
    cases: [
      ['steps.scaling_exponent', () => 0.3, false],
      ['steps.scaling_exponent', () => 1 + 1e-9, true],
      ['steps.scaling_exponent', () => 2, true],
    ],
  },
  {
    words: 'being proportional is not ruled out',
    rests: [GRID],
    cases: [
      [GRID, () => 0.98, false],
      [GRID, () => 1, false],
      [GRID, () => 0.5, true],
      [GRID, () => 1.5, true],
    ],
  },
  {
    words: 'cannot be told apart from the centre',
    rests: [...WHOLE, ...CENTRE],
    cases: WHOLE.flatMap((whole, at): ClaimCase['cases'] => [
      [whole, (v) => v(CENTRE[at]!) - 1e-6, false],
      [whole, (v) => v(CENTRE[at]!) + 1e-6, false],
      [whole, (v) => v(CENTRE[at]!) + 20, true],
    ]),
  },
];
