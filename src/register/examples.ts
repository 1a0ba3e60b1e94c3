/** One example line for each key that can be missing or malformed; messages show them. All invented. */
const EXAMPLES: Readonly<Record<string, string>> = {
  accuracy: 'accuracy: 0.5 % + 2 digits',
  ambient: 'ambient: 22.4 ± 0.5 °C',
  by: 'by: 3600 s',
  channels: 'soc:` with `quantity: temperature` and `column: Temp` below `channels:',
  clock: 'clock: 2.6 GHz',
  column: 'column: Temp',
  connected: 'connected: low voltage side',
  date: 'date: 2026-03-14',
  device: 'device: larch-2',
  disclosure: 'disclosure: Bought at retail',
  file: 'file: larch-2/fast-soak.csv',
  highlights: '- fast.peak_temperature` below `highlights:',
  instruments: 'instruments: [inline-meter, on-die]',
  invented: 'invented: yes',
  log: 'log: larch-2/fast-soak.csv',
  maker: 'maker: Larch Works',
  phases: 'load: 5 .. 65 min` below `phases:',
  power: 'power: adapter',
  quantity: 'quantity: temperature',
  rated_clock: 'rated_clock: 2.4 GHz',
  reason: 'reason: the probe fell off',
  reference: 'reference: rated',
  resolution: 'resolution: 0.01 A',
  runs: 'rated: larch-rated` below `runs:',
  scores: 'scores: larch-2/fast-scores.csv',
  setup: 'setup: open-bench',
  specimen: 'specimen: no-1',
  status: 'status: draft',
  supply: 'supply: 5.1 V',
  surface: 'surface: larch-2/fast-surface.csv',
  table: 'table: larch-2/attempts.csv',
  throttle_at: 'throttle_at: 95 °C',
  title: 'title: Fast setting, hour soak',
  voltage: 'voltage: 5.1 V',
  voltage_offset: 'voltage_offset: 40 mV',
};

/** The example line of a key, or undefined; keys may be any word of an author's. */
export function exampleOf(key: string): string | undefined {
  return Object.hasOwn(EXAMPLES, key) ? EXAMPLES[key] : undefined;
}
