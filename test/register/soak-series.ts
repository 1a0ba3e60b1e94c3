/** A realistic series, all invented: one setup, four runs that state what differs. */
import type { ContentFile } from '../../src/register/register.ts';

const run = (title: string, date: string, rest: string) => `---
title: ${title}
setup: open-bench
date: ${date}
${rest}---
`;

const TEXTS: Readonly<Record<string, string>> = {
  'content/devices/larch-2.md': `---
title: Larch 2
maker: Larch Works (invented)
invented: yes
rated_clock: 2.4 GHz
throttle_at:
  soc: 85 °C
  ssd: 70 °C
supply: 5.1 V
power: adapter
---
`,
  'content/instruments/inline-meter.md': `---
title: Inline meter
connected: low voltage side
measures:
  current:
    accuracy: 0.5 % + 2 digits
    resolution: 0.01 A
  voltage:
    accuracy: 0.5 % + 10 mV
    resolution: 0.01 V
---
`,
  'content/instruments/on-die.md': `---
title: Die sensor
part_of: specimen
---
`,
  'content/instruments/probe.md': `---
title: Thermocouple with reader
measures:
  ambient:
    accuracy: ± 1.5 °C
    resolution: 0.1 °C
---
`,
  'content/setups/open-bench.md': `---
title: Open bench, still air
device: larch-2
specimen: no-1
conditions:
  ambient: 22.4 ± 0.5 °C
  supply: 5.1 ± 0.1 V at board input
  cooling: heat sink, no fan
  firmware: 1.10
  workload: all cores, integer mix 3.1
instruments: [inline-meter, on-die]
channels:
  soc:
    quantity: temperature
    column: "Temp [°C]"
    instrument: on-die
  board:
    quantity: current
    column: amps
    unit: A
    at: board input
    instrument: inline-meter
  ssd:
    quantity: temperature
    column: SSD
    unit: °C
    missing: [N/A, "-"]
phases:
  idle: 0 .. 5 min
  load: 5 .. 65 min
log:
  time:
    column: when
    format: iso8601
    zone: Europe/Vienna
---
`,
  'content/runs/larch-slow.md': run('Slow setting', '2026-03-12', 'setting:\n  clock: 1.8 GHz\nlog: larch-2/slow.csv\n'),
  'content/runs/larch-rated.md': run('Rated setting', '2026-03-13', 'setting:\n  clock: 2.4 GHz\nlog: larch-2/rated.csv\n'),
  'content/runs/larch-fast.md': run(
    'Fast setting, hour soak',
    '2026-03-14',
    `setting:
  clock: 2.6 GHz
  voltage_offset: 40 mV
  threads: 4
  governor: performance
conditions:
  ambient: 23.1(3) °C
  airflow: still air
instruments:
  - inline-meter
  - on-die
  - probe
channels:
  soc:
    column: SoC temperature
  ssd: none
  room:
    quantity: ambient
    column: room
    unit: °C
    instrument: probe
  flags:
    quantity: throttle_flag
    column: flags
    bits:
      0: low voltage
      2: hot
phases:
  idle: 0 .. 300 s
  load: 5 .. 65 min
  cool-down: 65 min ..
steady: iec-60034-1
log:
  file: larch-2/fast.csv
  time:
    zone: "+01:00"
repairs:
  - drop: 412
    reason: the line was cut off
  - shift_time: 500..900
    by: 1 h
    reason: the logger's clock was set during the run
scores: larch-2/fast-scores.csv
surface: larch-2/fast-surface.csv
`,
  ),
  'content/runs/larch-fan.md': run(
    'Fast setting with a fan',
    '2026-03-15',
    'specimen: no-2\nconditions:\n  cooling: heat sink and fan\nphases: auto\nsetting:\n  clock: 2.6 GHz\nlog: larch-2/fan.csv\n',
  ),
  'content/comparisons/larch-steps.md': `---
title: Clock steps
runs:
  slow: larch-slow
  rated: larch-rated
  fast: larch-fast
  fan: larch-fan
reference: rated
---
`,
};

export const SERIES: readonly ContentFile[] = Object.entries(TEXTS).map(([path, text]) => ({ path, text }));
