/** `npm run bench -- --index`: the index of 1,000 runs in a real browser: its bytes, and what a filter or another order takes until the page is laid out anew. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { startBrowser } from '../site/browser.ts';
import { cloneIn } from '../site/project.ts';
import { serve } from '../site/server.ts';

const RUNS = 1000;
const ROUNDS = 5;

/** Changes of the form, each as a reader would make it. */
const CHANGES: readonly (readonly [field: string, value: string])[] = [
  ['words', 'cupboard'],
  ['words', ''],
  ['device', 'larch-2'],
  ['device', ''],
  ['clock-from', '2.0GHz'],
  ['outcome', 'throttled'],
  ['outcome', ''],
  ['clock-from', ''],
  ['date-from', '2025-10-01'],
  ['date-from', ''],
  ['order', 'peak_temperature'],
  ['order', 'title'],
  ['order', 'date'],
];

/**
 * Milliseconds from the change to a finished layout, with the count and the rows that the window shows, and until the last row is there;
 * the text of a function for the page.
 */
const MEASURE = `async (changes) => {
  const times = [];
  for (const [name, value] of changes) {
    const field = document.getElementById('filters').elements.namedItem(name);
    const start = performance.now();
    if (name === 'order') document.querySelector('[data-order=' + value + '] button').click();
    else {
      field.value = value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }
    document.body.getBoundingClientRect();
    const answered = performance.now() - start;
    const number = Number.parseInt(document.getElementById('count').textContent);
    while (document.querySelectorAll('#runs tbody tr:not([hidden])').length < number) await new Promise(requestAnimationFrame);
    times.push([answered, performance.now() - start]);
  }
  return times;
}`;

/** The browser alone: milliseconds for all rows to be hidden, and for all to be shown, each with its layout; the text of an expression. */
const ALONE = `(() => {
  const rows = [...document.querySelectorAll('#runs tbody tr')];
  return [true, false].map((hidden) => {
    const start = performance.now();
    for (const row of rows) row.hidden = hidden;
    document.body.getBoundingClientRect();
    return performance.now() - start;
  });
})()`;

/** Prints and measures the index of an invented site. */
export async function measureIndex(): Promise<void> {
  const project = cloneIn(tmpdir(), 'bench-index');
  try {
    const built = project.run('build');
    if (built.code !== 0) throw new Error(built.err);
    const script = join(fileURLToPath(import.meta.url), '..', 'print-many-runs.ts');
    const done = spawnSync(process.execPath, [script, String(RUNS)], { cwd: project.root, encoding: 'utf8' });
    if (done.status !== 0) throw new Error(done.stderr);
    const bytes = readFileSync(join(project.root, 'dist', 'runs', 'index.html'));
    console.log(
      `index of ${RUNS} runs: ${kilobytes(bytes.length)} kB, ${kilobytes(gzipSync(bytes).length)} kB by gzip (aim: below 150 kB)`,
    );
    await inBrowser(join(project.root, 'dist'));
  } finally {
    project.remove();
  }
}

async function inBrowser(dist: string): Promise<void> {
  const served = await serve(dist);
  const browser = await startBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(`${served.address}runs/`, { waitUntil: 'networkidle' });
    const script = `(${MEASURE})(${JSON.stringify(CHANGES)})`;
    const alone = (await page.evaluate(ALONE)) as [hide: number, show: number];
    console.log(`the browser alone hides all rows in ${ms(alone[0])} and shows all in ${ms(alone[1])}`);
    const rounds: (readonly [answered: number, whole: number])[][] = [];
    for (let round = 0; round < ROUNDS; round += 1) rounds.push((await page.evaluate(script)) as [number, number][]);
    for (const [at, [field, value]] of CHANGES.entries()) {
      const answered = sorted(rounds.map((round) => round[at]![0]));
      const whole = sorted(rounds.map((round) => round[at]![1]));
      const [middle, most] = [answered[Math.floor(ROUNDS / 2)]!, answered.at(-1)!];
      console.log(
        `${`${field} = ${value || '(all)'}`.padEnd(24)} ${ms(middle)}, at most ${ms(most)} (aim: 50 ms), ${(middle / alone[1]).toFixed(2)} × showing all; the last row after ${ms(whole[Math.floor(ROUNDS / 2)]!)}`,
      );
    }
  } finally {
    await browser.close();
    await served.close();
  }
}

function sorted(times: readonly number[]): number[] {
  return [...times].sort((a, b) => a - b);
}

function ms(time: number): string {
  return `${time.toFixed(1)} ms`;
}

function kilobytes(bytes: number): string {
  return (bytes / 1000).toFixed(1);
}
