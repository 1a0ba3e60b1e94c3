/** A small register without a fault, all invented, and edits that put one in. Shared by the tests of the register. */
import { compareProblems, type Problem } from '../../src/problem.ts';
import { readRegister } from '../../src/register/read.ts';
import type { ContentFile, DataFiles, Register } from '../../src/register/register.ts';

export const DEVICE = 'content/devices/larch-2.md';
export const METER = 'content/instruments/inline-meter.md';
export const DIE = 'content/instruments/on-die.md';
export const SETUP = 'content/setups/open-bench.md';
export const RATED = 'content/runs/larch-rated.md';
export const FAST = 'content/runs/larch-fast.md';
export const ATTEMPTS = 'content/attempts/larch-settings.md';
export const STEPS = 'content/comparisons/larch-steps.md';
export const NOTE = 'content/notes/overclocking-larch.md';
export const SCRIPT = 'content/scripts/overclocking-larch.md';

export const BASE: Readonly<Record<string, string>> = {
  [DEVICE]: `---
title: Larch 2
maker: Larch Works (invented)
invented: yes
rated_clock: 2.4 GHz
throttle_at:
  soc: 85 °C
supply: 5.1 V
power: adapter
---
An invented computer.
`,
  [METER]: `---
title: Inline meter
connected: low voltage side
measures:
  current:
    accuracy: 0.5 % + 2 digits
    resolution: 0.01 A
---
`,
  [DIE]: `---
title: Die sensor
part_of: specimen
measures:
  temperature:
    resolution: 0.1 K
---
`,
  [SETUP]: `---
title: Open bench, still air
device: larch-2
specimen: no-1
conditions:
  ambient: 22.4 ± 0.5 °C
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
phases:
  idle: 0 .. 5 min
  load: 5 .. 65 min
---
`,
  [RATED]: `---
title: Rated setting
setup: open-bench
date: 2026-03-13
setting:
  clock: 2.4 GHz
log: larch-2/rated-soak.csv
---
`,
  [FAST]: `---
title: Fast setting
setup: open-bench
date: 2026-03-14
setting:
  clock: 2.6 GHz
  voltage_offset: 40 mV
log: larch-2/fast-soak.csv
---
The second run.
`,
  [ATTEMPTS]: `---
title: Settings tried
device: larch-2
specimen: no-1
table: larch-2/attempts.csv
---
`,
  [STEPS]: `---
title: Clock steps
runs:
  rated: larch-rated
  fast: larch-fast
reference: rated
---
`,
  [NOTE]: `---
title: A faster Larch
date: 2026-03-20
status: published
runs:
  rated: larch-rated
  fast: larch-fast
comparisons:
  steps: larch-steps
attempts: larch-settings
highlights:
  - fast.peak_temperature
disclosure: Bought at retail.
---
It runs hotter.
`,
  [SCRIPT]: `---
title: A faster Larch, spoken
date: 2026-03-20
status: draft
runs: larch-fast
---
`,
};

const FILES = [
  'larch-2/rated-soak.csv',
  'larch-2/fast-soak.csv',
  'larch-2/attempts.csv',
  'larch-2/fast-scores.csv',
  'larch-2/other.csv',
  'larch-2/fast-again.csv',
];

/** A data/ with the files above, and a link that leads out. */
export const DATA: DataFiles = {
  kind(path) {
    if (FILES.includes(path)) return 'file';
    if (FILES.some((file) => file.startsWith(`${path}/`))) return 'folder';
    return path.startsWith('link/') ? 'outside' : 'missing';
  },
};

/** File, what stands there once, what stands there instead. A file that the base lacks is added whole: `[path, '', text]`. */
export type Edit = readonly [file: string, from: string, to: string];

/** The base with edits made; an edit that finds nothing to replace is a mistake in the test. */
export function edited(...edits: readonly Edit[]): ContentFile[] {
  const texts = new Map(Object.entries(BASE));
  for (const [file, from, to] of edits) {
    const text = texts.get(file) ?? '';
    if (text.split(from).length !== 2 && from !== '') throw new Error(`${file} does not hold exactly one "${from}"`);
    texts.set(file, from === '' ? to : text.replace(from, () => to));
  }
  return [...texts].map(([path, text]) => ({ path, text }));
}

export function reading(...edits: readonly Edit[]): { register: Register; problems: Problem[] } {
  return readRegister(edited(...edits), DATA);
}

/** A problem on one line, with all that it says. */
export function line({ place, severity, rule, found, expected, remedy }: Problem): string {
  const more = `${expected === undefined ? '' : ` | expected ${expected}`}${remedy === undefined ? '' : ` | ${remedy}`}`;
  return `${place.file}:${place.line}:${place.column}: ${severity}: ${rule}: ${found}${more}`;
}

/** The report of the base with edits. */
export function report(...edits: readonly Edit[]): string[] {
  return reading(...edits)
    .problems.sort(compareProblems)
    .map(line);
}
