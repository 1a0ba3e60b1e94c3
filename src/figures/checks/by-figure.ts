/** Which published values prove what a figure rests on, by the ids of the checks. */

const MEAN = ['gum-4-4-3', 'nist-lew', 'nist-michelso', 'nist-numacc3'];
const PRODUCT = ['gum-g-4-1', 'gum-h-2', 'shared-gain'];
const FIT = ['step-response', 'step-fractions', 'nist-misra1a', 'nist-boxbod', 'nist-lanczos3'];

export const CHECKS_BY_FIGURE: Readonly<Record<string, readonly string[]>> = {
  idle_temperature: MEAN,
  steady_temperature: [...MEAN, 'steady-state-criteria'],
  temperature_rise: ['gum-5-2-2', 'gum-h-2'],
  time_to_steady_state: ['steady-state-criteria'],
  time_constant: FIT,
  asymptote_temperature: FIT,
  ambient_ceiling: ['gum-5-2-2'],
  rise_per_watt: PRODUCT,
  mean_clock: MEAN,
  sustained_ratio: ['gum-g-4-1'],
  idle_current: MEAN,
  load_current: MEAN,
  idle_power: [...MEAN, ...PRODUCT],
  load_power: [...MEAN, ...PRODUCT],
  score: ['gum-4-4-3', 'student-quantiles', 'handbook-mean'],
  energy_per_task: PRODUCT,
  speedup: ['geometric-means', 'gum-g-4-1'],
  clock_ratio: ['gum-g-4-1'],
  scaling_efficiency: ['gum-g-4-1'],
  gain_per_clock: ['gum-h-2'],
  scaling_exponent: ['nist-danwood-power', 'nist-danwood'],
  performance_per_watt: PRODUCT,
  power_delta: ['shared-gain', 'gum-5-2-2'],
  rise_delta: ['gum-5-2-2', 'gum-h-2'],
  repeatability: ['gum-4-4-3'],
};
