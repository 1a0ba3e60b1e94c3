/**
 * `npm run bench`: whole builds of a generated site, each beside a baseline measured in the same run. Ratios, not seconds,
 * are what to compare between machines. `npm run bench -- --runs 30` times a smaller site; `npm run bench -- --index` measures the index of
 * 1,000 runs in a browser instead.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { commandLine } from '../../src/commands/command-line.ts';
import { readManifest } from '../../src/compute/project/manifest.ts';
import { writeBareSite } from './bare-site.ts';
import { generate, type Size } from './generate.ts';
import { measureIndex } from './index-page.ts';
import { spentBy } from './profile.ts';
import { specifications } from './specifications.ts';

commandLine({
  name: 'bench',
  does: 'Times whole builds of a generated site, each as a ratio to a baseline that is measured in the same run.',
  options: {
    '--runs': { value: 'NUMBER', does: 'how many runs the site has, 150 if left out' },
    '--repeats': { value: 'NUMBER', does: 'how often each is measured, 3 if left out' },
    '--profile': { does: 'print instead where a cold, an unchanged and a changed build spend their time' },
    '--index': { does: 'measure the index of 1,000 runs in a browser instead' },
  },
  exits: { 0: 'the ratios are printed', 1: 'a build failed' },
  example: 'npm run bench -- --runs 30',
});

/** Of its own: the demonstration's names files of its content. */
const CONFIG = `import { publication } from 'soakproof';
export default publication({ title: 'Bench', byline: 'Invented runs of an invented device', site: 'https://bench.example' });
`;

const HERE = fileURLToPath(new URL('../..', import.meta.url));
const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: '150' },
    repeats: { type: 'string', default: '3' },
    profile: { type: 'boolean', default: false },
    index: { type: 'boolean', default: false },
  },
});
const runs = Number(values.runs);
const repeats = Number(values.repeats);
const size: Size = { runs, notes: Math.max(1, Math.round(runs / 3)), rows: 3600, plots: runs };

const work = mkdtempSync(join(tmpdir(), 'soakproof-bench-'));
const root = join(work, 'site');
const bare = join(work, 'bare');
try {
  if (values.index) await measureIndex();
  else {
    prepare();
    if (values.profile) profile();
    else {
      measureLongLog();
      measure();
    }
  }
} finally {
  rmSync(work, { recursive: true, force: true });
}

function prepare(): void {
  mkdirSync(root);
  mkdirSync(join(work, 'long'));
  for (const path of ['src', 'package.json', 'package-lock.json', 'tsconfig.json'])
    cpSync(join(HERE, path), join(root, path), { recursive: true });
  symlinkSync(join(HERE, 'node_modules'), join(root, 'node_modules'), 'dir');
  writeFileSync(join(root, 'astro.config.mjs'), CONFIG);
  generate(root, size);
  writeFileSync(join(work, 'specs.json'), JSON.stringify(specifications(root)));
}

function measureLongLog(): void {
  const long = join(work, 'long');
  generate(long, { runs: 1, notes: 1, rows: 100_000, plots: 0 });
  const done = spawnSync(process.execPath, [join(HERE, 'test/bench/long-log.ts'), long], { cwd: HERE, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(done.stderr);
  const { rows, papa, intake, figures } = JSON.parse(done.stdout) as Record<'rows' | 'papa' | 'intake' | 'figures', number>;
  const ms = (time: number) => `${time.toFixed(0)} ms`;
  console.log(`a log of ${rows} rows: one pass of Papa Parse ${ms(papa)}`);
  console.log(`intake           ${ms(intake)}   ${(intake / papa).toFixed(2)} × that pass`);
  console.log(`all figures      ${ms(figures)}   ${(figures / papa).toFixed(2)} × that pass (aim: at most 5)`);
}

function measure(): void {
  const builds = { cold: [] as Used[], unchanged: [] as Used[], changed: [] as Used[] };
  const baselines = { papa: [] as Used[], vega: [] as Used[], astroCold: [] as Used[], astroUnchanged: [] as Used[] };
  let pages = 0;
  for (let repeat = 0; repeat < repeats; repeat += 1) {
    for (const folder of ['.cache', 'dist']) rmSync(join(root, folder), { recursive: true, force: true });
    builds.cold.push(time(root, 'src/commands/build.ts'));
    builds.unchanged.push(time(root, 'src/commands/build.ts'));
    changeOneLog(repeat);
    builds.changed.push(time(root, 'src/commands/build.ts'));
    pages = readManifest(root, 'site')!.pages.length;
    baselines.papa.push(time(HERE, 'test/bench/papa-alone.ts', join(root, 'data', 'bench')));
    baselines.vega.push(time(HERE, 'test/bench/vega-alone.ts', join(work, 'specs.json')));
    rmSync(bare, { recursive: true, force: true });
    writeBareSite(bare, join(HERE, 'node_modules'), pages);
    baselines.astroCold.push(time(bare, 'build.mjs'));
    baselines.astroUnchanged.push(time(bare, 'build.mjs'));
  }
  print(builds, baselines, pages);
}

/** What a command takes as a whole process: seconds by the clock, seconds of all its threads, memory at its most. */
interface Used {
  readonly clock: number;
  readonly cpu: number;
  readonly peakMB: number;
}

function time(cwd: string, ...args: readonly string[]): Used {
  const usage = join(work, 'usage.json');
  const start = performance.now();
  const done = spawnSync(process.execPath, ['--import', join(HERE, 'test/bench/usage.ts'), ...args], {
    cwd,
    encoding: 'utf8',
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', BENCH_USAGE: usage },
  });
  const clock = (performance.now() - start) / 1000;
  if (done.status !== 0) throw new Error(`${args.join(' ')} failed:\n${done.stdout}${done.stderr}`);
  const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(readFileSync(usage, 'utf8')) as NodeJS.ResourceUsage;
  return { clock, cpu: (userCPUTime + systemCPUTime) / 1e6, peakMB: maxRSS / 1024 };
}

/** Where the three builds spend their time, by sampled profiles of its threads that run JavaScript. The work of others, such as rastering, is spread over all parts. */
function profile(): void {
  const builds = ['cold', 'unchanged', 'one CSV changed'];
  const tables = builds.map((_build, at) => {
    if (at === 2) changeOneLog(0);
    const folder = join(work, `profile-${at}`);
    // Samples go by the clock, and threads wait for each other on a busy machine: their shares are taken, of what the threads have used.
    const { cpu } = time(root, '--cpu-prof', `--cpu-prof-dir=${folder}`, 'src/commands/build.ts');
    return new Map(spentBy(folder).map(({ part, share }) => [part, share * cpu]));
  });
  console.log(`${size.notes} notes, ${size.runs} runs of ${size.rows} rows; seconds of all threads`);
  console.log(`${''.padEnd(32)}${builds.map((name) => name.padStart(18)).join('')}`);
  for (const part of new Set(tables.flatMap((spent) => [...spent.keys()]))) {
    const cells = tables.map((spent) => spent.get(part) ?? 0);
    if (Math.max(...cells) < 0.05) continue;
    console.log(`${part.padEnd(32)}${cells.map((seconds) => seconds.toFixed(2).padStart(18)).join('')}`);
  }
}

function changeOneLog(repeat: number): void {
  const path = join(root, 'data', 'bench', 'soak-0.csv');
  const lines = readFileSync(path, 'utf8').split('\n');
  const cells = lines[2000]!.split(',');
  cells[1] = String(60 + repeat);
  lines[2000] = cells.join(',');
  writeFileSync(path, lines.join('\n'));
}

function print(
  builds: Record<'cold' | 'unchanged' | 'changed', Used[]>,
  baselines: Record<'papa' | 'vega' | 'astroCold' | 'astroUnchanged', Used[]>,
  pages: number,
): void {
  console.log(
    `${size.notes} notes, ${size.runs} runs of ${size.rows} rows, ${size.plots} plots in notes; ${pages} pages; medians of ${repeats}`,
  );
  // Seconds of threads say the same on a busy machine, where those of the clock say little.
  for (const [of, name] of [
    ['clock', 'by the clock'],
    ['cpu', 'of all threads'],
  ] as const) {
    const middle = (used: readonly Used[]) => median(used.map((one) => one[of]));
    const [cold, unchanged, changed] = [middle(builds.cold), middle(builds.unchanged), middle(builds.changed)];
    const [papa, vega] = [middle(baselines.papa), middle(baselines.vega)];
    const [astroCold, astroUnchanged] = [middle(baselines.astroCold), middle(baselines.astroUnchanged)];
    const alone = papa + vega + astroCold;
    const s = (seconds: number) => `${seconds.toFixed(2)} s`;
    console.log(
      `${name}: baseline, one thread: Papa Parse alone ${s(papa)} + Vega alone ${s(vega)} + Astro alone, bare pages ${s(astroCold)} = ${s(alone)}`,
    );
    console.log(`cold build       ${s(cold)}   ${(cold / alone).toFixed(2)} × that baseline (aim: at most 0.9)`);
    console.log(
      `unchanged build  ${s(unchanged)}   ${(unchanged / astroUnchanged).toFixed(2)} × Astro's own unchanged build of ${s(astroUnchanged)} (aim: at most 0.4)`,
    );
    console.log(`one CSV changed  ${s(changed)}   ${s(changed - unchanged)} more than unchanged`);
  }
  const peaks = Object.entries(builds).map(([name, used]) => `${name} ${median(used.map(({ peakMB }) => peakMB)).toFixed(0)} MB`);
  console.log(`memory at its most: ${peaks.join(', ')}`);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
