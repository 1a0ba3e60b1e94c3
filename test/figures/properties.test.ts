/** What must hold of every log: fast-check makes them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { type Figure, isPresent } from '../../src/figures/figure.ts';
import type { Log } from '../../src/intake/log.ts';
import { standardUncertainty } from '../../src/quantities/uncertainty.ts';
import { apart, contextOf, logOf, noise, phase } from './build.ts';

interface Course {
  readonly start: number;
  readonly height: number;
  readonly tau: number;
  readonly scatter: number;
  readonly watts: number;
  readonly seed: number;
}

const course: fc.Arbitrary<Course> = fc.record({
  start: fc.integer({ min: -20, max: 60 }),
  height: fc.integer({ min: 5, max: 60 }),
  tau: fc.integer({ min: 100, max: 1500 }),
  scatter: fc.constantFrom(0, 0.05, 0.5),
  watts: fc.integer({ min: 1, max: 200 }),
  seed: fc.integer({ min: 1, max: 1e6 }),
});

const STEP = 5;
const SECONDS = Float64Array.from({ length: 1441 }, (_, row) => row * STEP);
const PHASES = [phase('idle', 0, 600), phase('load', 600, 7200)];
const RUNS = { numRuns: 25 };

function columns({ start, height, tau, scatter, watts, seed }: Course) {
  const random = noise(seed);
  const soc = SECONDS.map((t) => start + (t < 600 ? 0 : height * (1 - Math.exp(-(t - 600) / tau))) + scatter * random());
  const board = SECONDS.map((t) => watts * (t < 600 ? 0.3 : 1) * (1 + 0.01 * scatter * random()));
  return { soc, board };
}

function figuresOf(seconds: ArrayLike<number>, soc: ArrayLike<number>, board: ArrayLike<number>): ReadonlyMap<string, Figure> {
  return derive(log(seconds, soc, board), contextOf({ phases: PHASES, ambient: { value: 20, unit: '°C', parts: [] } })).figures;
}

function log(seconds: ArrayLike<number>, soc: ArrayLike<number>, board: ArrayLike<number>): Log {
  return logOf(seconds, { soc: { quantity: 'temperature', values: soc }, board: { quantity: 'power', values: board } });
}

/** Both present with values related as `expected` says, or both absent for the same reason. */
function compare(
  a: ReadonlyMap<string, Figure>,
  b: ReadonlyMap<string, Figure>,
  name: string,
  expected: (value: number) => number,
  tolerance: number,
) {
  const [one, other] = [a.get(name)!, b.get(name)!];
  if (!isPresent(one) || !isPresent(other)) {
    expect([name, 'absent' in one && one.absent]).toEqual([name, 'absent' in other && other.absent]);
    return;
  }
  const difference = Math.abs(other.quantity.value - expected(one.quantity.value));
  expect([name, difference <= tolerance * Math.max(1, Math.abs(expected(one.quantity.value)))]).toEqual([name, true]);
}

/** To six digits: sums of twice as many terms round otherwise. */
function intervalIn(figures: ReadonlyMap<string, Figure>, name: string) {
  const figure = figures.get(name)!;
  return isPresent(figure) ? figure.interval!.map((end) => end.toPrecision(6)) : figure.absent;
}

const TEMPERATURES = ['idle_temperature', 'peak_temperature', 'steady_temperature', 'asymptote_temperature'];
const TIMES = ['time_to_steady_state', 'time_constant'];
const POWERS = ['idle_power', 'load_power', 'peak_power', 'energy', 'energy.idle', 'energy.load'];

describe('properties: shift and scale of temperature, scale of power, resampling, repeated rows, any readings', () => {
  test('a shift of the temperature shifts temperatures, and nothing else', () => {
    fc.assert(
      fc.property(course, fc.integer({ min: -30, max: 30 }), (made, shift) => {
        const { soc, board } = columns(made);
        const a = figuresOf(SECONDS, soc, board);
        const b = figuresOf(
          SECONDS,
          soc.map((value) => value + shift),
          board,
        );
        for (const name of TEMPERATURES) compare(a, b, name, (value) => value + shift, 1e-5);
        for (const name of [...TIMES, ...POWERS]) compare(a, b, name, (value) => value, 1e-4);
        compare(a, b, 'temperature_rise', (value) => value + shift, 1e-9);
      }),
      RUNS,
    );
  });

  test('a factor on the rise leaves the time constant, and scales the asymptote over the start', () => {
    fc.assert(
      fc.property(course, fc.constantFrom(0.5, 2, 3), (made, factor) => {
        const { soc, board } = columns(made);
        const a = figuresOf(SECONDS, soc, board);
        const b = figuresOf(
          SECONDS,
          soc.map((value) => made.start + factor * (value - made.start)),
          board,
        );
        compare(a, b, 'time_constant', (value) => value, 1e-4);
        compare(a, b, 'asymptote_temperature', (value) => made.start + factor * (value - made.start), 1e-4);
        compare(a, b, 'peak_temperature', (value) => made.start + factor * (value - made.start), 1e-9);
      }),
      RUNS,
    );
  });

  test('a factor on the power scales every power and energy with its uncertainty, and divides the rise per watt', () => {
    fc.assert(
      fc.property(course, fc.constantFrom(0.001, 0.5, 1000), (made, factor) => {
        const { soc, board } = columns(made);
        const a = figuresOf(SECONDS, soc, board);
        const b = figuresOf(
          SECONDS,
          soc,
          board.map((value) => value * factor),
        );
        for (const name of POWERS) {
          const [one, other] = [a.get(name)!, b.get(name)!];
          if (!isPresent(one) || !isPresent(other)) throw new Error(`${name} is absent`);
          expect(apart(other.quantity.value, factor * one.quantity.value)).toBeLessThan(1e-9);
          expect(Math.abs(standardUncertainty(other.quantity)! - factor * standardUncertainty(one.quantity)!)).toBeLessThan(
            1e-6 * other.quantity.value,
          );
        }
        compare(a, b, 'rise_per_watt', (value) => value / factor, 1e-9);
      }),
      RUNS,
    );
  });

  test('every second row says nearly the same', () => {
    fc.assert(
      fc.property(
        course.filter(({ scatter }) => scatter === 0),
        (made) => {
          const { soc, board } = columns(made);
          const half = (values: Float64Array) => values.filter((_, row) => row % 2 === 0);
          const a = figuresOf(SECONDS, soc, board);
          const b = figuresOf(half(SECONDS), half(soc), half(board));
          for (const name of [
            'idle_temperature',
            'asymptote_temperature',
            'time_constant',
            'idle_power',
            'load_power',
            'energy.load',
          ])
            compare(a, b, name, (value) => value, 2e-3);
        },
      ),
      RUNS,
    );
  });

  /** Figures of a log, and of the same with each row twice; in a room that warms, where it is measured. */
  function onceAndTwice(made: Course, measured = false) {
    const { soc, board } = columns(made);
    const room = SECONDS.map((t) => 20 + t / 3600);
    const once = (values: Float64Array) => values;
    const twice = (values: Float64Array) => Float64Array.from({ length: 2 * values.length }, (_, i) => values[i >> 1]!);
    const context = contextOf({ phases: PHASES, ...(measured ? {} : { ambient: { value: 20, unit: '°C', parts: [] } }) });
    return [once, twice].map((rows) => {
      const channels = {
        soc: { quantity: 'temperature', values: rows(soc) },
        board: { quantity: 'power', values: rows(board) },
        ...(measured ? { room: { quantity: 'ambient' as const, values: rows(room) } } : {}),
      } as const;
      const made = logOf(rows(SECONDS), channels);
      // Every second step is zero: intake takes the median of those that are not, as the log's step.
      return derive({ ...made, time: { ...made.time, step: STEP } }, context).figures;
    }) as [ReadonlyMap<string, Figure>, ReadonlyMap<string, Figure>];
  }

  test('rows that stand twice change no value', () => {
    fc.assert(
      fc.property(course, (made) => {
        const [a, b] = onceAndTwice(made);
        for (const name of ['idle_temperature', 'peak_temperature', 'steady_temperature', 'temperature_rise', ...TIMES, ...POWERS])
          compare(a, b, name, (value) => value, 1e-9);
      }),
      RUNS,
    );
  });

  test('rows that stand twice narrow no interval of a time', () => {
    fc.assert(
      fc.property(course, fc.boolean(), (made, measured) => {
        const [once, twice] = onceAndTwice(made, measured).map((figures) => TIMES.map((name) => intervalIn(figures, name)));
        expect(twice).toEqual(once);
      }),
      { ...RUNS, examples: [[{ start: 0, height: 38, tau: 357, scatter: 0.5, watts: 1, seed: 744984 }, false]] },
    );
  });

  test('any readings at all, holes and repeated instants included: every figure is finite or absent with a sentence', () => {
    const reading = fc.oneof(
      { weight: 4, arbitrary: fc.double({ min: -1e4, max: 1e4, noNaN: true }) },
      { weight: 1, arbitrary: fc.constant(Number.NaN) },
    );
    const rows = fc.array(fc.tuple(fc.constantFrom(0, 1, 1, 1, 30, 2000), reading, reading, reading, reading), { maxLength: 60 });
    fc.assert(
      fc.property(rows, fc.boolean(), (made, auto) => {
        let now = 0;
        const seconds = made.map(([step], row) => {
          now += row === 0 ? 0 : step;
          return now;
        });
        const column = (index: 1 | 2 | 3 | 4) => made.map((row) => row[index]);
        const any = logOf(seconds, {
          soc: { quantity: 'temperature', values: column(1) },
          room: { quantity: 'ambient', values: column(2) },
          core: { quantity: 'clock', values: column(3) },
          amps: { quantity: 'current', values: column(4), at: 'rail' },
          volts: { quantity: 'voltage', values: column(3), at: 'rail' },
          total: { quantity: 'energy', values: column(2) },
          flags: { quantity: 'throttle_flag', values: column(1) },
        });
        const context = contextOf({
          phases: auto ? 'auto' : [phase('idle', 0, 20), phase('load', 20, Number.POSITIVE_INFINITY)],
          device: { id: 'larch', throttleAt: { soc: { value: 80, unit: '°C', parts: [] } } },
          setting: { clock: { value: 50, unit: 'Hz', parts: [] } },
        });
        for (const [address, figure] of derive(any, context).figures) {
          if (!isPresent(figure)) expect([address, figure.why]).toEqual([address, expect.stringMatching(/^[A-Z].*\.$/)]);
          else
            expect([
              address,
              Number.isFinite(figure.quantity.value) && Number.isFinite(standardUncertainty(figure.quantity)),
            ]).toEqual([address, true]);
        }
      }),
      { numRuns: 25 },
    );
  });
});
