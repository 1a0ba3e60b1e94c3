/** Temperatures that a governor stops at its limit, with no clock or flag that shows it, and temperatures that settle by themselves. */
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import type { Answer, Cell, Family, Saying, Trial } from '../family.ts';

const ROOM = 22;
/** °C at which the governor holds. */
const LIMIT = 62;
/** s. */
const TAU = 300;
const LOAD = 3600;
const ROW = 4;

interface Sensor {
  readonly step: number;
  /** K, with a memory of 10 s. */
  readonly noise: number;
}

interface Made extends Sensor {
  /** By how much it would have climbed on, K; negative for a device that settles so far below the limit. */
  readonly beyond: number;
  /** A saw about the limit: its height, K, and period, s; and the width of a soft knee, K. */
  readonly saw?: readonly [number, number];
  readonly knee?: number;
  /** A second part: its share of the rise, and how many times slower. */
  readonly second?: readonly [number, number];
  /** Whether the device states its limit. */
  readonly stated: boolean;
}

const HELD = ['asymptote_temperature', 'ambient_ceiling', 'time_constant', 'time_to_steady_state'] as const;
/** What a reason may say of it: that it stopped, or that a stop and an end of its own cannot be told apart. */
const CAUSE = /stopped climbing|governor held|cannot be told/;

function simulate(made: Made, { setting, noise: chance, run }: Trial): (Answer | Saying)[] {
  const { beyond, step, noise, stated } = made;
  const start = ROOM + step * setting.uniform();
  const values = valuesOf(made, start, setting.uniform());
  const next = wandering(chance, noise, 10, ROW);
  const log = logOf(every(ROW, LOAD - ROW), {
    soc: { quantity: 'temperature', values: (t) => quantise(values(t) + next(), step), step },
  });
  const degrees = (value: number) => ({ value, unit: '°C', parts: [] });
  const device = { id: 'larch', throttleAt: stated ? { soc: degrees(LIMIT) } : {} };
  const { figures } = derive(log, contextOf({ run, device, ambient: degrees(ROOM), phases: [phase('load', 0, LOAD)] }));
  const asked = (name: string) => figures.get(name);
  if (beyond > 0) {
    const names = stated ? HELD : HELD.filter((name) => name !== 'ambient_ceiling');
    return names.map((name) => ({ asked: name, figure: asked(name), truth: null, absent: CAUSE }));
  }
  const constant = asked('time_constant');
  return [
    { asked: 'asymptote_temperature', figure: asked('asymptote_temperature'), truth: LIMIT + beyond },
    { asked: 'ambient_ceiling', figure: asked('ambient_ceiling'), truth: ROOM - beyond },
    { asked: 'a stop is said', said: constant !== undefined && !isPresent(constant) && CAUSE.test(constant.why), atMost: 0.05 },
  ];
}

function valuesOf({ beyond, saw, knee, second }: Made, start: number, own: number): (t: number) => number {
  const rise = LIMIT + beyond - start;
  const [share, ratio] = second ?? [0, 1];
  const free = (t: number) => start + rise * (1 - (1 - share) * Math.exp(-t / TAU) - share * Math.exp(-t / (ratio * TAU)));
  if (beyond <= 0) return free;
  const [height, period] = saw ?? [0, 1];
  const held = (t: number) => LIMIT - height * ((t / period + own) % 1);
  // The smaller of the two, rounded off over the knee.
  return (t) => {
    const [a, b] = [free(t), held(t)];
    return knee === undefined
      ? Math.min(a, b)
      : -knee * Math.log(Math.exp(-(a - LIMIT) / knee) + Math.exp(-(b - LIMIT) / knee)) + LIMIT;
  };
}

const sensorWords = ({ step, noise }: Sensor) => `steps of ${step} K, ${noise === 0 ? 'no noise' : `noise of ${noise} K`}`;
const FINE = { step: 0.1, noise: 0.1 };
const HALF = { step: 0.5, noise: 0.2 };
const COARSE = { step: 1, noise: 0.3 };

function cell(what: string, made: Omit<Made, 'stated'> & { readonly stated?: boolean }, more: Partial<Cell> = {}): Cell {
  const name = `${what}, ${sensorWords(made)}`;
  return { name, simulate: (trial) => simulate({ stated: true, ...made }, trial), ...more };
}

const ROOMY = 'The interval has room for a slower part that the scatter may hide; this device has none.';

export const FAMILY: Family = {
  title: 'Stops at a limit that only the temperature shows',
  words: `A device rises from ${ROOM} °C with a time constant of ${TAU} s under a load of an hour, until a governor holds it at ${LIMIT} °C, flat or sawing, hard or soft; no clock and no flag is logged. Asymptote, time constant, ambient ceiling and time to steady state must then be absent, and the reason must say that it stopped, or that this cannot be told. Other devices settle below the limit by themselves, and must not be said to have stopped.`,
  trials: 40,
  quick: 6,
  cells: [
    ...[2, 5, 15].flatMap((beyond) =>
      [FINE, HALF, COARSE].map((sensor) => cell(`held flat, ${beyond} K short`, { beyond, ...sensor }, { quick: beyond === 5 })),
    ),
    ...(
      [
        [0.5, 10],
        [1, 30],
        [2, 120],
      ] as const
    ).map((saw) => cell(`held, sawing by ${saw[0]} K in ${saw[1]} s, 8 K short`, { beyond: 8, saw, ...FINE })),
    ...[1, 3].map((knee) => cell(`held with a knee of ${knee} K, 10 K short`, { beyond: 10, knee, ...FINE })),
    cell('two parts, held flat, 8 K short', { beyond: 8, second: [0.2, 6], ...FINE }),
    cell('held flat, 8 K short, no limit stated', { beyond: 8, stated: false, ...FINE }),
    ...[FINE, HALF, COARSE].map((sensor) =>
      cell('settles 5 K below the limit', { beyond: -5, ...sensor }, { why: ROOMY, quick: sensor === FINE }),
    ),
    cell('two parts, settles 5 K below the limit', { beyond: -5, second: [0.15, 4], ...FINE }, { why: ROOMY }),
  ],
};
