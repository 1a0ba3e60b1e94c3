/** Words that people use around a number, by the figure or fact that they mean: beginnings of words, in lower case. */
const WORDS: Readonly<Record<string, string>> = {
  idle_temperature: 'idle idling rest resting doing nothing before start starts began cold',
  peak_temperature: 'peak hottest highest maximum max top tops topped reach spike',
  steady_temperature: 'steady settle level plateau stays long-run end ends sits',
  temperature_rise: 'rise rose risen above over room ambient warmer climb',
  time_to_steady_state: 'settle steady until takes took after before level',
  time_constant: 'time-constant constant slow exponential',
  throttle_headroom: 'headroom short limit spare left below margin',
  held_at_limit: 'held limit stuck spent pinned',
  ambient_ceiling: 'ceiling room ambient warm could until',
  rise_per_watt: 'per watt kelvin resistance',
  asymptote_temperature: 'asymptote eventually forever extrapolat',
  mean_clock: 'mean average averages averaged averaging overall ran runs',
  lowest_clock: 'lowest least worst minimum min drops dropped falls fell down bottom',
  time_below_setting: 'below under less lost spent slower',
  sustained_ratio: 'keeps kept sustain share last first',
  throttle_events: 'throttl event times',
  time_to_throttle: 'throttl first until before after limit lasts lasted governor',
  idle_current: 'idle rest nothing',
  load_current: 'load draws drew pulls',
  idle_power: 'idle rest nothing',
  load_power: 'load draws drew pulls consumes takes uses average power under',
  peak_power: 'peak highest most maximum spike',
  energy: 'energy hour whole total joule watt-hour altogether used uses',
  energy_per_task: 'per task each repeat run energy joule costs took',
  score: 'score scored benchmark points result sweeps',
  surface: 'surface case lid camera hand',
  hottest_surface: 'hottest surface lid case spot camera touch warmest',
  touch_margin: 'touch margin limit finger short spare past',
  highest_passed_clock: 'passed pass got through highest survived ladder tried',
  lowest_failed_clock: 'failed fail restarted hung next ladder tried',
  speedup: 'faster fast quick quicker speed times speedup benchmark',
  clock_ratio: 'clock higher high',
  scaling_efficiency: 'efficien scaling',
  gain_per_clock: 'gain per clock',
  scaling_exponent: 'exponent power scales proportion',
  performance_per_watt: 'per watt joule work efficien bill',
  power_delta: 'more power extra draws above bill',
  rise_delta: 'warmer hotter rise more above',
  clock_delta: 'faster slower clock higher lower more less',
  clock_independent_share: 'share waiting memory independent wait',
  'setting.clock': 'setting set clock clocked asked label configured',
  'setting.voltage_offset': 'offset voltage added more core extra undervolt',
  ambient: 'ambient room air',
  supply: 'supply adapter volts',
  'device.rated_clock': 'rated rating sold maker specified official box stock',
  'device.throttle_at': 'limit throttl governor steps threshold',
  'device.supply': 'supply rated adapter',
};

const STEMS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries(WORDS).map(([name, words]) => [name, words.split(' ')]),
);

/** The words for a figure's name or a fact's address; those of the name itself too. */
export function hintsOf(name: string): readonly string[] {
  return [...new Set([...(STEMS.get(name) ?? []), ...name.split(/[^a-z]+/)])].filter((word) => word !== '');
}

/** How ready people are to mean it where nothing else decides: above 0 what write-ups are about. */
export function priorOf(name: string): number {
  return PRIORS.get(name) ?? 0;
}

const PRIORS: ReadonlyMap<string, number> = new Map([
  ['setting.clock', 0.6],
  ['steady_temperature', 0.5],
  ['peak_temperature', 0.5],
  ['load_power', 0.5],
  ['device.rated_clock', 0.3],
  ['device.throttle_at', 0.3],
  ['temperature_rise', 0.3],
  ['idle_temperature', 0.3],
  ['time_to_steady_state', 0.2],
  ['time_to_throttle', 0.2],
  ['mean_clock', 0.2],
  ['speedup', 0.3],
  ['asymptote_temperature', -0.3],
  ['time_constant', -0.2],
]);
