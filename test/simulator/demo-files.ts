/** Every file of the demo under data/, as bytes: equal each time. */
import { DEMO_RUNS, METERED_START } from './demo-runs.ts';
import { ATTEMPTS, imageTable, scoresTable, surfaceTable } from './demo-tables.ts';
import { write } from './dialect.ts';
import { simulate } from './simulate.ts';

/** Paths below data/ and their bytes. */
export function demoFiles(): ReadonlyMap<string, Uint8Array> {
  const files = new Map<string, Uint8Array>();
  for (const [name, run] of Object.entries(DEMO_RUNS)) {
    const { rows, truth } = simulate(run.options);
    files.set(run.file, write(rows, run.dialect));
    const scored = SCORED.find((s) => s.name === name);
    if (!scored) continue;
    files.set(`larch-2/${name}-scores.csv`, bytes(scoresTable(run, truth, scored.start)));
    const imaged = IMAGED.includes(name);
    files.set(`larch-2/${name}-surface.csv`, bytes(surfaceTable(run, truth, imaged)));
    if (imaged) files.set(`larch-2/${name}-thermal.csv`, bytes(imageTable(run, truth)));
  }
  files.set('larch-2/metered-scores.csv', bytes(meteredScores()));
  files.set('larch-2/no-1-attempts.csv', bytes(ATTEMPTS));
  return files;
}

/** Runs with a benchmark session after the soak, and when it began (UTC). */
const SCORED = [
  { name: 'rated', start: Date.UTC(2026, 2, 10, 15, 30) },
  { name: 'brisk', start: Date.UTC(2026, 2, 11, 15, 0) },
  { name: 'quick', start: Date.UTC(2026, 2, 12, 10, 30) },
  { name: 'fast', start: Date.UTC(2026, 2, 14, 11, 0) },
];

/** Runs of which the camera's whole image was kept. */
const IMAGED = ['rated', 'fast'];

/** Two of the benchmarks again, with the logger running: the first repeat begins with the load. */
function meteredScores(): string {
  const { metered } = DEMO_RUNS;
  const begin = METERED_START + metered.options.schedule.idle * 1000;
  return scoresTable(metered, simulate(metered.options).truth, begin, ['Grid relaxation, all cores', 'Ledger sort, all cores']);
}

function bytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
