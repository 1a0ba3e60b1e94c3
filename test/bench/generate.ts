/** A generated site of a given size: invented runs of one invented device, seeded, so that two benchmarks time the same bytes. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Size {
  readonly notes: number;
  readonly runs: number;
  readonly rows: number;
  readonly plots: number;
}

/** Writes content/ and data/ of that size into a project folder. */
export function generate(root: string, size: Size): void {
  for (const folder of [
    'content/devices',
    'content/instruments',
    'content/setups',
    'content/runs',
    'content/notes',
    'data/bench',
  ]) {
    mkdirSync(join(root, folder), { recursive: true });
  }
  const write = (path: string, lines: readonly string[]) => writeFileSync(join(root, path), `${lines.join('\n')}\n`);
  write('content/devices/sedge-1.md', [
    '---',
    'title: Sedge 1',
    'maker: An invented maker',
    'invented: yes',
    'rated_clock: 2.0 GHz',
    'throttle_at: 95 °C',
    '---',
  ]);
  write('content/instruments/meter.md', METER);
  write('content/setups/bench.md', SETUP);
  for (let run = 0; run < size.runs; run += 1) {
    write(`content/runs/soak-${run}.md`, runFile(run));
    writeFileSync(join(root, `data/bench/soak-${run}.csv`), logText(run, size.rows));
  }
  for (let note = 0; note < size.notes; note += 1) write(`content/notes/note-${note}.md`, noteFile(note, size));
}

const METER = [
  '---',
  'title: An inline meter',
  'connected: low voltage side',
  'measures:',
  '  voltage:',
  '    accuracy: 0.5 % + 2 digits',
  '    resolution: 0.01 V',
  '  current:',
  '    accuracy: 0.5 % + 2 digits',
  '    resolution: 0.001 A',
  '---',
];

const CHANNELS: readonly (readonly [name: string, quantity: string, column: string, more: readonly string[]])[] = [
  ['soc', 'temperature', 'soc [°C]', []],
  ['board', 'temperature', 'board [°C]', []],
  ['room', 'ambient', 'room [°C]', []],
  ['clock', 'clock', 'clock [MHz]', []],
  ['volts', 'voltage', 'volts [V]', ['at: board input', 'instrument: meter']],
  ['amps', 'current', 'amps [A]', ['at: board input', 'instrument: meter']],
];

const SETUP = [
  '---',
  'title: Bench',
  'device: sedge-1',
  'specimen: no-1',
  'conditions:',
  '  ambient: 22.0 ± 0.5 °C',
  'instruments:',
  '  - meter',
  'channels:',
  ...CHANNELS.flatMap(([name, quantity, column, more]) => [
    `  ${name}:`,
    `    quantity: ${quantity}`,
    `    column: "${column}"`,
    ...more.map((line) => `    ${line}`),
  ]),
  'phases:',
  '  idle: 0 .. 5 min',
  '  load: 5 min ..',
  '---',
];

function runFile(run: number): string[] {
  const day = String(1 + (run % 28)).padStart(2, '0');
  return [
    '---',
    `title: Soak ${run}`,
    'setup: bench',
    `date: 2026-02-${day}`,
    'setting:',
    `  clock: ${(1.6 + (run % 9) / 10).toFixed(1)} GHz`,
    `log: bench/soak-${run}.csv`,
    '---',
  ];
}

function noteFile(note: number, { runs, notes, plots }: Size): string[] {
  const each = Math.floor(runs / notes);
  const ids = Array.from({ length: each }, (_unused, index) => note * each + index);
  const aliases = ids.map((_id, index) => `r${index}`);
  const asked = Math.floor(plots / notes);
  return [
    '---',
    `title: Note ${note}`,
    `date: 2026-03-${String(1 + (note % 28)).padStart(2, '0')}`,
    'status: published',
    'runs:',
    ...ids.map((id, index) => `  r${index}: soak-${id}`),
    'highlights:',
    '  - r0.peak_temperature',
    '---',
    '',
    ...ids.flatMap((_id, index) => [
      `Run ${index} peaks at :value[r${index}.peak_temperature] and draws :value[r${index}.load_power], idle :value[r${index}.idle_power].`,
      `The difference to the first is :value[r${index}.load_power - r0.load_power].`,
      '',
      ...(index < asked ? [`::plot{kind=trace runs="${aliases.slice(0, index + 1).join(' ')}" channels="soc"}`, ''] : []),
    ]),
    `::table{runs="${aliases.join(' ')}" of="peak_temperature steady_temperature mean_clock load_power"}`,
  ];
}

/** One reading a second: a first-order soak with seeded noise, in steps as sensors have them. */
function logText(run: number, rows: number): string {
  let state = 1 + run * 7919;
  const noise = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647 - 0.5;
  };
  const clock = 1600 + (run % 9) * 100;
  const rise = 20 + (clock - 1600) / 25;
  const lines = ['elapsed [s],soc [°C],board [°C],room [°C],clock [MHz],volts [V],amps [A]'];
  for (let row = 0; row < rows; row += 1) {
    const loaded = row >= 300;
    const soc = 22 + 8 + (loaded ? rise * (1 - Math.exp(-(row - 300) / 420)) : 0) + noise();
    const board = 22 + 5 + (loaded ? 0.6 * rise * (1 - Math.exp(-(row - 300) / 600)) : 0) + noise() / 2;
    const amps = (loaded ? 0.3 + clock / 4000 : 0.12) + noise() / 50;
    const cells = [
      row,
      Math.round(soc * 2) / 2,
      board.toFixed(1),
      (22 + noise() / 5).toFixed(1),
      loaded ? clock : 600,
      (12.05 + noise() / 50).toFixed(2),
      amps.toFixed(3),
    ];
    lines.push(cells.join(','));
  }
  return `${lines.join('\n')}\n`;
}
