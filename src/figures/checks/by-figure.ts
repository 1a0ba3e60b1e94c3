/** Which published values prove what a figure rests on, by the ids of the checks. */

const MEAN = ['gum-4-4-3', 'nist-lew', 'nist-michelso', 'nist-numacc3'];
const PRODUCT = ['gum-g-4-1', 'gum-h-2', 'shared-gain'];
const LIMITS = ['rectangular-limits', 'rectangular-sums'];
const FIT = ['step-response', 'step-fractions', 'nist-misra1a', 'nist-boxbod', 'nist-lanczos3'];

export const CHECKS_BY_FIGURE: Readonly<Record<string, readonly string[]>> = {
  idle_temperature: [...MEAN, ...LIMITS],
  steady_temperature: [...MEAN, ...LIMITS, 'steady-state-criteria'],
  temperature_rise: ['gum-5-2-2', 'gum-h-2', ...LIMITS],
  time_to_steady_state: ['steady-state-criteria'],
  time_constant: FIT,
  asymptote_temperature: FIT,
  ambient_ceiling: ['gum-5-2-2'],
  rise_per_watt: [...PRODUCT, ...LIMITS],
  mean_clock: [...MEAN, 'rectangular-limits'],
  sustained_ratio: ['gum-g-4-1'],
  idle_current: MEAN,
  load_current: MEAN,
  idle_power: [...MEAN, ...PRODUCT, ...LIMITS],
  load_power: [...MEAN, ...PRODUCT, ...LIMITS],
  energy: ['trapezoidal-rule', ...LIMITS],
  score: ['gum-4-4-3', 'student-quantiles', 'handbook-mean'],
  energy_per_task: [...PRODUCT, 'trapezoidal-rule'],
  score_power: [...MEAN, ...PRODUCT],
  score_clock: MEAN,
  surface: ['infrared-data-sheet', 'infrared-camera', ...LIMITS],
  touch_margin: ['touch-limits'],
  speedup: ['geometric-means', 'gum-g-4-1'],
  clock_ratio: ['gum-g-4-1'],
  scaling_efficiency: ['gum-g-4-1', 'clock-model'],
  gain_per_clock: ['gum-h-2', 'clock-model'],
  scaling_exponent: ['nist-danwood-power', 'nist-danwood', 'clock-model'],
  clock_independent_share: ['clock-model', 'nist-norris'],
  performance_per_watt: [...PRODUCT, 'switching-power'],
  power_delta: ['shared-gain', 'gum-5-2-2'],
  rise_delta: ['gum-5-2-2', 'gum-h-2'],
  clock_delta: ['gum-5-2-2'],
  repeatability: ['gum-4-4-3'],
  specimen_spread: ['gum-4-4-3'],
};
