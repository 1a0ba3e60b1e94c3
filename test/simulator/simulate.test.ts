import { describe, expect, test } from 'vitest';
import { LIMITS, SPECIMENS, SUPPLY } from './larch.ts';
import type { Options, Reading, Specimen } from './options.ts';
import { simulate } from './simulate.ts';

const QUIET: Options = {
  seed: 1,
  specimen: SPECIMENS['no-1'],
  setting: { clock: 2.0e9, voltageOffset: 0 },
  schedule: { idle: 300, load: 7200, coolDown: 300 },
  room: { start: 22, warming: 0, wander: 0 },
  supply: { ...SUPPLY, ripple: 0 },
  every: 2,
  limits: { die: 0, probe: 0, thermometer: 0, meterGain: 0, meterDigits: 0, dieStep: 0 },
  workload: { wander: 0, memory: 45 },
};
const REAL: Options = {
  ...QUIET,
  room: { start: 22, warming: 1.5, wander: 0.1 },
  supply: SUPPLY,
  limits: LIMITS,
  workload: { wander: 0.012, memory: 45 },
};
const HOT: Options = { ...REAL, setting: { clock: 2.6e9, voltageOffset: 0.08 } };

function mean(rows: readonly Reading[], of: (row: Reading) => number): number {
  return rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
}

function loaded(options: Options, rows: readonly Reading[]): readonly Reading[] {
  const { idle, load } = options.schedule;
  return rows.filter((row) => row.elapsed >= idle && row.elapsed < idle + load);
}

/** A specimen without leakage: its truth has a closed form. */
const COOL: Specimen = { ...QUIET.specimen, power: { ...QUIET.specimen.power, leakage: 0 } };

describe('simulator/simulate', () => {
  test('equal options give equal rows, another seed other rows', () => {
    expect(simulate(HOT)).toEqual(simulate(HOT));
    expect(simulate(HOT).rows).not.toEqual(simulate({ ...HOT, seed: 2 }).rows);
  });

  test('without leakage it ends at ambient + R·P, with the P of A·C·V²·f', () => {
    const { rows, truth } = simulate({ ...QUIET, specimen: COOL });
    const { network: n, power: p } = COOL;
    const die = p.switching * 2.0e9 * (p.baseVoltage + p.voltagePerClock * 2.0e9) ** 2;
    const board = 22 + n.boardToRoom * (die + p.boardLoad);
    expect(truth.steady.board / board - 1).toBeCloseTo(0, 10);
    expect(truth.steady.die / (board + n.dieToBoard * die) - 1).toBeCloseTo(0, 10);
    const end = loaded(QUIET, rows).slice(-300);
    expect(Math.abs(mean(end, (r) => r.die) - truth.steady.die)).toBeLessThan(0.1);
    expect(Math.abs(mean(end, (r) => r.board) - truth.steady.board)).toBeLessThan(0.03);
  });

  test('with leakage it ends at the balance that truth states, within the truth of its last minutes', () => {
    const { truth } = simulate(QUIET);
    expect(Math.abs(truth.load.end.die - truth.steady.die)).toBeLessThan(1e-3);
    expect(Math.abs(truth.load.end.power / truth.steady.power - 1)).toBeLessThan(1e-5);
  });

  test('the board approaches its end as e^(−t/τ) with the long time constant of truth', () => {
    const { rows, truth } = simulate({ ...QUIET, instruments: noiseless() });
    const distance = (at: number) => truth.steady.board - (rows.find((r) => r.elapsed === 300 + at)?.board ?? Number.NaN);
    const tau = 1200 / Math.log(distance(1200) / distance(2400));
    expect(Math.abs(tau / truth.timeConstants[1] - 1)).toBeLessThan(0.01);
  });

  test('volts times amperes is the power of the device, and the mean of the load is that of truth', () => {
    const { rows, truth } = simulate({ ...QUIET, instruments: noiseless() });
    const under = loaded(QUIET, rows);
    expect(Math.abs(mean(under, (r) => r.voltage * r.current) / truth.load.power - 1)).toBeLessThan(1e-4);
    expect(truth.load.energy / (truth.load.power * 7200) - 1).toBeCloseTo(0, 10);
  });

  test('the governor keeps the die at its limit, and the clock pays for it', () => {
    const { rows, truth } = simulate(HOT);
    const limit = HOT.specimen.governor.limit;
    expect(truth.steady.die).toBeGreaterThan(limit + 3);
    expect(truth.load.peakDie + truth.instruments.die.offset).toBeLessThan(limit + 0.6);
    expect(truth.load.end.clock).toBeLessThan(2.5e9);
    expect(truth.firstThrottle).toBeGreaterThan(600);
    expect(loaded(HOT, rows).every((r) => r.throttled === r.clock < 2.6e9)).toBe(true);
  });

  test('a cool setting is never throttled', () => {
    const { rows, truth } = simulate(REAL);
    expect(truth.firstThrottle).toBeNull();
    expect(loaded(REAL, rows).every((r) => r.clock === 2.0e9 && !r.throttled)).toBe(true);
  });

  test('a boost lasts as long as it was told', () => {
    const { rows } = simulate({ ...REAL, setting: { ...REAL.setting, boost: { clock: 2.4e9, seconds: 90 } } });
    const boosted = rows.filter((r) => r.clock === 2.4e9).map((r) => r.elapsed);
    expect([boosted[0], boosted.at(-1)]).toEqual([300, 388]);
  });

  test('readings stand on the steps of their instruments', () => {
    const { rows } = simulate(REAL);
    expect(rows.every((r) => (r.die * 2) % 1 === 0)).toBe(true);
    expect(rows.every((r) => Math.abs(r.current * 1000 - Math.round(r.current * 1000)) < 1e-6)).toBe(true);
  });

  test('drawn errors stay within their limits and differ between seeds', () => {
    const offsets = Array.from({ length: 40 }, (_, seed) => simulate({ ...SHORT, seed }).truth.instruments.probe.offset);
    expect(Math.max(...offsets.map(Math.abs))).toBeLessThanOrEqual(LIMITS.probe);
    expect(new Set(offsets).size).toBe(40);
    expect(Math.max(...offsets) - Math.min(...offsets)).toBeGreaterThan(LIMITS.probe);
  });

  test('a restart leaves no rows and lets the device cool; a pause only leaves no rows', () => {
    const hole = { at: 1000, length: 40 };
    const restarted = simulate({ ...REAL, restart: hole });
    const paused = simulate({ ...REAL, pause: hole });
    const holes = [restarted, paused].map(({ rows }) => rows.filter((r) => r.elapsed >= 1000 && r.elapsed < 1040).length);
    expect(holes).toEqual([0, 0]);
    const firstAfter = ({ rows }: { rows: readonly Reading[] }) => rows.find((r) => r.elapsed === 1040)?.die ?? Number.NaN;
    expect(firstAfter(restarted)).toBeLessThan(firstAfter(paused) - 4);
  });

  test('lost probe readings are NaN, about as many as asked for', () => {
    const { rows } = simulate({ ...REAL, lost: 0.05 });
    const lost = rows.filter((r) => Number.isNaN(r.board)).length / rows.length;
    expect(Math.abs(lost - 0.05)).toBeLessThan(0.015);
  });

  test('the room warms by what was asked', () => {
    const { rows } = simulate({ ...QUIET, room: { start: 20, warming: 2, wander: 0 }, instruments: noiseless() });
    expect(rows[0]?.room).toBe(20);
    expect(Math.abs((rows.at(-1)?.room ?? 0) - 22)).toBeLessThan(1e-5);
  });
});

const SHORT: Options = { ...REAL, schedule: { idle: 10, load: 10, coolDown: 10 } };

function noiseless(): NonNullable<Options['instruments']> {
  const exact = { gain: 0, offset: 0, noise: 0, step: 0 };
  return { die: exact, probe: exact, thermometer: exact, voltage: exact, current: exact };
}
