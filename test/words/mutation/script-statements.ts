/** The stated numbers and claims of the demonstration's script, written out by hand like those of its note. */
import { type ClaimCase, MORE_THAN_TWICE, one, type Statement } from './statements.ts';

const QUICK = 'quick.load_power';
const BRISK = 'brisk.load_power';
const RATED = 'rated.load_power';
const FAST = 'fast.load_power';
const { POSITIVE_INFINITY: ABOVE, NEGATIVE_INFINITY: BELOW } = Number;

/** A statement about one figure less another: what is said of it is the difference. */
function less(
  words: string,
  left: string,
  right: string,
  [lower, upper]: readonly [number, number],
  upperClosed: boolean,
): Statement {
  return {
    words,
    is: `${left} - ${right}`,
    at: (v) => v(left) - v(right),
    lower,
    upper,
    lowerClosed: true,
    upperClosed,
    solve: { [left]: (target, v) => v(right) + target, [right]: (target, v) => v(left) - target },
  };
}

export const IN_SCRIPT: readonly Statement[] = [
  one('nearly half an hour', 'rated.time_to_steady_state', ['[', 0.375, 0.5, ')'], 1 / 3600),
  one('about six and a half watts', RATED, ['[', 6.25, 6.75, ']']),
  one('more than twenty degrees', 'rated.throttle_headroom', ['(', 20, ABOVE, ')']),
  less('nearly one watt', BRISK, RATED, [0.5, 1], false),
  less('about two watts', QUICK, BRISK, [1.5, 2.5], true),
  MORE_THAN_TWICE,
  one('between twenty and thirty degrees', 'quick.ambient_ceiling', ['[', 20, 30, ']']),
  one('nearly twenty minutes', 'fast.time_to_throttle', ['[', 19, 20, ')'], 1 / 60),
  one('between ninety and ninety-seven percent', 'fast.sustained_ratio', ['[', 90, 97, ']'], 100),
  less('about one watt', FAST, QUICK, [0.5, 1.5], true),
  one('about 1.18 times as fast', 'steps.speedup.fast', ['[', 1.17, 1.19, ']']),
  one('less than three quarters', 'steps.performance_per_watt.fast', ['(', BELOW, 0.75, ')']),
  one('over fifty-nine degrees', 'fast.hottest_surface', ['(', 59, ABOVE, ')']),
];

export const CLAIMS_IN_SCRIPT: readonly ClaimCase[] = [
  {
    words: 'the other never touched it',
    rests: ['quick.held_at_limit'],
    cases: [
      ['quick.held_at_limit', () => 0, false],
      ['quick.held_at_limit', () => 1e-6, true],
      ['quick.held_at_limit', () => 1200, true],
    ],
  },
  {
    words: 'Speed grows by less than the clock',
    rests: ['steps.scaling_exponent'],
    cases: [
      ['steps.scaling_exponent', () => 0.3, false],
      ['steps.scaling_exponent', () => 1 + 1e-9, true],
      ['steps.scaling_exponent', () => 2, true],
    ],
  },
];
