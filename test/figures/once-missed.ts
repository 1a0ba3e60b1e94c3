/**
 * Logs with a known truth of which figures once said more than the readings bear, and what they say now. `before` is what they said, kept in
 * words because the code that said it is gone. `node test/figures/once-missed.ts` prints the table.
 */
import { derive } from '../../src/figures/derive.ts';
import { type Figure, isPresent } from '../../src/figures/figure.ts';
import { edgesOff } from '../../src/figures/phase-edges.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import { quantise } from '../simulator/noise.ts';
import { random } from '../simulator/random.ts';
import { contextOf, every, logOf, phase } from './build.ts';

export interface Case {
  readonly name: string;
  readonly before: string;
  /** In the figure's unit; null where there is none to hold. */
  readonly truth: number | null;
  readonly figure: Figure | undefined;
  /** What the reason says where it must be absent. */
  readonly absent?: RegExp;
}

const END = Number.POSITIVE_INFINITY;
const RISE = 40;
const TAU = 300;
/** s: when the change of 15 min falls to 1 K on 40 K with 300 s: τ ln(A (1 − e^(−900/τ)) / 1 K). */
const SETTLES = TAU * Math.log(RISE * (1 - Math.exp(-900 / TAU)));

const rise = (t: number, [amplitude, constant]: readonly [number, number] = [RISE, TAU]) =>
  amplitude * (1 - Math.exp(-t / constant));

function loaded(seconds: ArrayLike<number>, at: (t: number) => number, step: number, more: Parameters<typeof contextOf>[0] = {}) {
  const log = logOf(seconds, { soc: { quantity: 'temperature', values: (t) => quantise(at(t), step), step } });
  return derive(log, contextOf({ phases: [phase('load', 0, END)], ...more })).figures;
}

function powered(seconds: ArrayLike<number>, watts: (t: number) => number, until: number) {
  const log = logOf(seconds, { input: { quantity: 'power', values: watts } });
  return derive(log, contextOf({ phases: [phase('load', 0, until)] })).figures;
}

const degrees = (value: number) => ({ value, unit: '°C', parts: [] });
const without = (seconds: Float64Array, from: number, to: number) => seconds.filter((t) => t < from || t >= to);

/** All cases, each computed anew. */
export function onceMissed(): readonly Case[] {
  return [...few(), ...gaps(), ...counters(), ...limits(), ...steps(), ...steady(), ...loads(), ...boosts(), ...clocks()];
}

function few(): Case[] {
  const idle = [2.31, 1.72, 2.05, 1.88, 2.4, 1.95, 2.22, 1.61, 2.09, 1.8];
  const log = logOf(every(1, 9), { input: { quantity: 'power', values: idle } });
  const { figures } = derive(log, contextOf({ phases: [phase('idle', 0, 10)] }));
  return [{ name: 'ten idle readings', before: '[1.978, 2.016] W', truth: 2, figure: figures.get('idle_power') }];
}

function gaps(): Case[] {
  const noise = random(3);
  const readings = (kept: Float64Array) => loaded(kept, (t) => 22.04 + rise(t) + 0.1 * noise.normal(), 0.1);
  const steadyAt = (name: string, before: string, from: number, to: number): Case => ({
    name,
    before,
    truth: SETTLES,
    figure: readings(without(every(1, 3600), from, to)).get('time_to_steady_state'),
  });
  const watts = () => 8 + 0.01 * noise.normal();
  const energy = (name: string, before: string, seconds: ArrayLike<number>, absent?: RegExp): Case => ({
    name,
    before,
    truth: 28_800,
    figure: powered(seconds, watts, 3600).get('energy.load'),
    ...(absent ? { absent } : {}),
  });
  return [
    steadyAt('rows 290 s to 1210 s missing: time to steady state', '258 [255, 259] s', 290, 1210),
    steadyAt('all rows up to 2100 s missing: time to steady state', '0 [0, 1] s', 0, 2100),
    energy('energy across a gap of 15 min', '21,600 J ± 0.3', without(every(1, 3600), 1200, 2100), /were not logged/),
    energy('energy across a gap of 5 min', 'leaves out what was not logged', without(every(1, 3600), 1200, 1500)),
    energy('energy where 30 s steps turn into 1 s steps', '21,600 J', [...every(30, 1770), ...every(1, 1800).map((t) => 1800 + t)]),
  ];
}

function counters(): Case[] {
  const values = every(30, 3600).map((t) => 8 * (t < 1815 ? t : t - 1815));
  const log = logOf(every(30, 3600), { input: { quantity: 'energy', values, step: 1 } });
  const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 3600)] }));
  return [
    {
      name: 'a counter that is reset',
      before: 'loses the step across the reset',
      truth: 28_800,
      figure: figures.get('energy.load'),
    },
  ];
}

function limits(): Case[] {
  const noise = random(5);
  const held = loaded(every(2, 3600), (t) => Math.min(80, 24 + rise(t, [64, 400])) + 0.1 * noise.normal(), 0.1, {
    device: { id: 'larch', throttleAt: { soc: degrees(80) } },
    ambient: degrees(24),
  });
  const cause = /stopped climbing/;
  return [
    {
      name: 'held at 80 °C: ambient ceiling',
      before: '24.3 [24.0, 24.5] °C',
      truth: 16,
      figure: held.get('ambient_ceiling'),
      absent: cause,
    },
    {
      name: 'held at 80 °C: asymptote',
      before: '79.85 ± 0.5 °C',
      truth: 88,
      figure: held.get('asymptote_temperature'),
      absent: cause,
    },
  ];
}

function steps(): Case[] {
  const noise = random(7);
  const at = (t: number) => 24 + rise(t, [35, 300]) + rise(t, [5, 7200]) + 0.1 * noise.normal();
  const figures = loaded(every(6, 14_400), at, 0.1, {
    device: { id: 'larch', throttleAt: { soc: degrees(65) } },
    ambient: degrees(24),
  });
  return [
    {
      name: '35 K of 300 s and 5 K of 7200 s: asymptote',
      before: '60.4 [58.8, 62.0] °C',
      truth: 64,
      figure: figures.get('asymptote_temperature'),
    },
    { name: 'its time constant', before: 'absent', truth: 300, figure: figures.get('time_constant') },
    { name: 'its second time constant', before: 'no such figure', truth: 7200, figure: figures.get('second_time_constant') },
    { name: 'its ambient ceiling', before: '27.5 ± 0.7 °C', truth: 25, figure: figures.get('ambient_ceiling') },
  ];
}

function steady(): Case[] {
  const noise = random(9);
  const quiet = loaded(every(1, 3600), (t) => 22.3 + rise(t), 1);
  const noisy = loaded(every(5, 3600), (t) => 22.3 + rise(t) + noise.normal(), 1, { steady: 'iec-62368-1' });
  return [
    {
      name: 'whole degrees, no noise: time to steady state',
      before: '961 [960, 962] s',
      truth: SETTLES,
      figure: quiet.get('time_to_steady_state'),
    },
    {
      name: 'settled for 12 time constants, 1 K of noise on 1 K: steady temperature',
      before: 'absent, with a false bound in 31 of 38',
      truth: 62.3,
      figure: noisy.get('steady_temperature'),
    },
  ];
}

function loads(): Case[] {
  const noise = random(11);
  const on = (t: number) => (t >= 300 && t < 1500) || (t >= 2100 && t < 3900);
  const watts = every(1, 4500).map((t) => (on(t) ? 8 : 2) + 0.05 * noise.normal());
  const log = logOf(every(1, 4500), { input: { quantity: 'power', values: watts } });
  const { figures } = derive(log, contextOf({ phases: 'auto' }));
  return [
    {
      name: 'two loads, phases left to the log: idle power',
      before: '5.6 [5.3, 5.9] W',
      truth: 2,
      figure: figures.get('idle_power'),
    },
  ];
}

/** The warning about a load that is declared a minute late: the seconds that it says. */
export function declaredLate(): readonly number[] {
  const noise = random(13);
  const watts = every(1, 3600).map((t) => (t >= 240 ? 8 : 2) + 0.05 * noise.normal());
  const log = logOf(every(1, 3600), { input: { quantity: 'power', values: watts } });
  return edgesOff(log, [phase('idle', 0, 300), phase('load', 300, END)]).map(({ off }) => off);
}

function boosts(): Case[] {
  return [30, 60, 120, 300].map((seconds) => {
    const noise = random(15 + seconds);
    const part = (t: number) => (t <= 0 ? 0 : rise(t));
    const figures = loaded(every(2, 3600), (t) => 22 + part(t) + 0.5 * (part(t) - part(t - seconds)) + 0.1 * noise.normal(), 0.1);
    return {
      name: `a boost of ${seconds} s: time constant`,
      before: seconds === 30 ? '124.4 ± 3.1 s (truth 120)' : 'not told',
      truth: TAU,
      figure: figures.get('time_constant'),
    };
  });
}

function clocks(): Case[] {
  const setting = { clock: { value: 2e9, unit: 'Hz', parts: [] } };
  const of = (shows: 'requested' | 'delivered', values: (t: number) => number) => {
    const log = logOf(every(1, 1800), { core: { quantity: 'clock', values, step: 1e6, shows } });
    return derive(log, contextOf({ setting, phases: [phase('load', 0, END)] })).figures.get('throttle_events');
  };
  const toggles = (t: number) => (t < 300 ? 2e9 : 1.98e9 + (t % 4 < 2 ? -2e6 : 2e6));
  return [
    {
      name: 'a clock that goes to and fro about the threshold by 2 MHz',
      before: '375 ± 0 events',
      truth: 1,
      figure: of('delivered', toggles),
    },
    {
      name: 'a delivered clock below its setting throughout',
      before: '0 events',
      truth: null,
      figure: of('delivered', () => 1.8e9),
      absent: /below its setting of .* from the first reading/,
    },
    {
      name: 'a requested clock at its setting',
      before: '0 events, no throttling was seen',
      truth: null,
      figure: of('requested', () => 2e9),
      absent: /does not show that there was no throttling/,
    },
  ];
}

/** What a figure says, in a few words. */
export function saidOf(figure: Figure | undefined): string {
  if (!figure) return 'no such figure';
  const unit = (of: string) => (of === '1' ? '' : ` ${of}`);
  const digits = (value: number) => Number(value.toPrecision(5)).toString();
  if (isPresent(figure)) {
    const { value, unit: of } = figure.quantity;
    const [low, high] = figure.interval ?? interval95(figure.quantity) ?? [value, value];
    return `${digits(value)} [${digits(low)}, ${digits(high)}]${unit(of)}`;
  }
  const { bound } = figure;
  return `absent${bound ? `, ${bound.relation} ${digits(bound.value)}${unit(bound.unit)}` : ''}: ${figure.why}`;
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  for (const { name, before, truth, figure } of onceMissed()) {
    console.log(`| ${name} | ${truth === null ? '–' : Number(truth.toPrecision(5))} | ${before} | ${saidOf(figure)} |`);
  }
  console.log(`| a load declared 60 s late | – | nothing said | warned: ${declaredLate().join(', ')} s |`);
}
