/** The demo's tables that are not logs: benchmark scores, readings of a thermal camera, settings tried. All invented. */
import { LID, SPOTS_AT, thermalImage } from './demo-image.ts';
import type { DemoRun } from './demo-runs.ts';
import type { Truth } from './options.ts';
import { type Random, random } from './random.ts';

interface Benchmark {
  readonly test: string;
  readonly unit: string;
  readonly better: 'higher' | 'lower';
  /** At 1 GHz. */
  readonly base: number;
  /** Exponent of the clock: 1 scales with it, 0 does not care. */
  readonly exponent: number;
  /** Standard deviation between repeats, as a share. */
  readonly spread: number;
  /** How long one repeat takes at 1 GHz, s. */
  readonly seconds: number;
}

const BENCHMARKS: readonly Benchmark[] = [
  {
    test: 'Grid relaxation, all cores',
    unit: 'sweeps/s',
    better: 'higher',
    base: 41.3,
    exponent: 0.97,
    spread: 0.004,
    seconds: 240,
  },
  { test: 'Text sieve, one core', unit: 'MB/s', better: 'higher', base: 118, exponent: 0.99, spread: 0.006, seconds: 130 },
  { test: 'Ledger sort, all cores', unit: 's', better: 'lower', base: 96, exponent: -0.82, spread: 0.008, seconds: 96 },
  { test: 'Wide copy', unit: 'GB/s', better: 'higher', base: 7.4, exponent: 0.12, spread: 0.011, seconds: 60 },
];
const REPEATS = 5;
const PAUSE_S = 20;
/** Of the power from repeat to repeat, as a share. */
const POWER_SPREAD = 0.004;

/**
 * Scores of a run, five repeats of each test (or of those that are named), with the time that each took; without a log beside
 * them, also with the clock and power that the benchmark wrote down. `start` is the first instant,
 * epoch milliseconds.
 */
export function scoresTable(run: DemoRun, truth: Truth, start: number, only?: readonly string[]): string {
  const noise = random(run.options.seed + 70_000);
  const ghz = truth.load.clock / 1e9;
  const meter = random(run.options.seed + 75_000);
  const stated = only === undefined;
  const lines = [`test,repeat,value,unit,better,start,end${stated ? ',clock,power' : ''}`];
  let at = start;
  for (const benchmark of BENCHMARKS.filter(({ test }) => only?.includes(test) ?? true)) {
    for (let repeat = 1; repeat <= REPEATS; repeat++) {
      const end = at + Math.round((1000 * benchmark.seconds) / ghz ** Math.abs(benchmark.exponent));
      const value = score(benchmark, ghz, noise).toPrecision(4);
      const cells = [`"${benchmark.test}"`, repeat, value, benchmark.unit, benchmark.better, stamp(at), stamp(end)];
      const watts = truth.load.power * (1 + POWER_SPREAD * meter.normal());
      lines.push([...cells, ...(stated ? [`${ghz.toFixed(3)} GHz`, `${watts.toFixed(2)} W`] : [])].join(','));
      at = end + PAUSE_S * 1000;
    }
  }
  return text(lines);
}

function score(benchmark: Benchmark, ghz: number, noise: Random): number {
  return benchmark.base * ghz ** benchmark.exponent * (1 + benchmark.spread * noise.normal());
}

function stamp(instant: number): string {
  return `${new Date(instant).toISOString().slice(0, 19)}Z`;
}

interface Spot {
  readonly spot: string;
  readonly part: string;
  readonly material: string;
  readonly contact: string;
  /** Rise over the room as a share of the board's. */
  readonly share: number;
  readonly emissivity: string;
  /** Where it lies in the thermal image; the underside lies in none. */
  readonly at?: keyof typeof SPOTS_AT;
}

const SPOTS: readonly Spot[] = [
  {
    spot: 'Lid centre',
    part: 'lid',
    material: 'anodised aluminium',
    contact: 'touched briefly',
    share: 0.86,
    emissivity: '0.85 ± 0.05',
    at: 'centre',
  },
  {
    spot: 'Lid front edge',
    part: 'lid',
    material: 'anodised aluminium',
    contact: 'touched briefly',
    share: 0.74,
    emissivity: '0.85 ± 0.05',
    at: 'edge',
  },
  {
    spot: 'Network socket',
    part: 'socket',
    material: 'plastic',
    contact: 'touched briefly',
    share: 0.55,
    emissivity: '0.93 ± 0.03',
    at: 'socket',
  },
  { spot: 'Underside', part: 'base', material: 'plastic', contact: 'held', share: 0.42, emissivity: '0.93 ± 0.03' },
];

/** Camera readings in the last minutes of a load: the board's rise shared out over the case, at an emissivity set to 0.95. */
export function surfaceTable(run: DemoRun, truth: Truth, imaged = false): string {
  const { room } = truth.load.end;
  const around = `${room.toFixed(1)} ± 1.0`;
  const shown = shownSpots(run, truth);
  const lines = SPOTS.map((s, index) => {
    const reading = shown[index]!.toFixed(1);
    const place = s.at === undefined ? '' : SPOTS_AT[s.at].map(percent).join(' by ');
    return [s.spot, s.part, s.material, s.contact, reading, '0.95', s.emissivity, around, ...(imaged ? [place, ''] : [])].join(',');
  });
  const [lid] = SPOTS as [Spot];
  const within = `${LID.x.map((x) => Math.round(100 * x)).join(' .. ')} % by ${LID.y.map((y) => Math.round(100 * y)).join(' .. ')} %`;
  const region = ['Whole lid', lid.part, lid.material, lid.contact, '', '0.95', lid.emissivity, around, '', within].join(',');
  const head = 'spot,part,material,contact,reading [°C],emissivity_set,emissivity,reflected [°C]';
  return text(imaged ? [`${head},at,within`, ...lines, region] : [head, ...lines]);
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

/** What the camera shows at each spot, °C. */
function shownSpots(run: DemoRun, truth: Truth): number[] {
  const noise = random(run.options.seed + 80_000);
  const { room, board } = truth.load.end;
  return SPOTS.map((s) => room + (board - room) * s.share + 0.4 * noise.normal());
}

/** The thermal image that the spots were read from. */
export function imageTable(run: DemoRun, truth: Truth): string {
  const [centre, edge, socket] = shownSpots(run, truth) as [number, number, number];
  return thermalImage({ room: truth.load.end.room, centre, edge, socket }, run.options.seed);
}

/** Settings tried on specimen no-1 before the soaks, and what came of each. */
export const ATTEMPTS = text([
  'clock,voltage_offset,outcome,note',
  '2.0 GHz,0 mV,passed,"integer mix, 60 min, 22 °C ambient"',
  '2.2 GHz,0 mV,passed,"integer mix, 60 min, 22 °C ambient"',
  '2.4 GHz,0 mV,restarted,"integer mix, restarted after 8 min of load"',
  '2.4 GHz,60 mV,passed,"integer mix, 60 min, 22 °C ambient"',
  '2.6 GHz,40 mV,hung under load,"integer mix, stopped answering after 3 min"',
  '2.6 GHz,80 mV,throttled,"integer mix, 60 min, 23 °C ambient"',
  '2.7 GHz,80 mV,hung at boot,"twice; the third time not tried"',
  '2.8 GHz,100 mV,no boot,"no sign of life until the setting was cleared"',
]);

function text(lines: readonly string[]): string {
  return lines.map((line) => `${line}\n`).join('');
}
