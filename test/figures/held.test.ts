import { expect, test } from 'vitest';
import { freshReadings } from '../../src/figures/held.ts';
import { readingsOf } from '../../src/figures/readings.ts';
import { every, logOf, noise } from './build.ts';

function readings(seconds: ArrayLike<number>, values: (row: number) => number) {
  const log = logOf(seconds, { soc: { quantity: 'temperature', values: (_, row) => values(row) } });
  return readingsOf(log, log.channels[0]!.values, { from: 0, to: log.rows });
}

function drawn(n: number): number[] {
  const random = noise(7);
  return Array.from({ length: n }, random);
}

test('figures/held: a row that is written twice is one reading', () => {
  const each = drawn(100);
  const twice = readings(
    Float64Array.from({ length: 200 }, (_, row) => Math.floor(row / 2)),
    (row) => each[Math.floor(row / 2)]!,
  );
  expect([...freshReadings(twice, 0).y]).toEqual(each);
});

test('figures/held: of a sensor refreshed every third row the first row of each reading is left, with all its time', () => {
  const each = drawn(100);
  const slow = readings(every(1, 299), (row) => each[Math.floor(row / 3)]!);
  const fresh = freshReadings(slow, 0.01);
  expect([...fresh.y]).toEqual(each);
  expect([...fresh.t.subarray(0, 3)]).toEqual([0, 3, 6]);
  expect(fresh.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(299, 9);
  expect(fresh.observed).toBe(299);
});

test('figures/held: readings that change at any row stay, and so do those of a coarse sensor', () => {
  const each = drawn(300);
  const quick = readings(every(1, 299), (row) => each[row]!);
  expect(freshReadings(quick, 0.01)).toBe(quick);
  // A slow rise by whole kelvins, every ten rows: the sensor's step holds the reading, not its refresh.
  const coarse = readings(every(1, 299), (row) => Math.floor(row / 10));
  expect(freshReadings(coarse, 1)).toBe(coarse);
});

test('figures/held: a refresh that is no multiple of the step of the log is seen too', () => {
  const each = drawn(100);
  // Every 7.5 rows: each reading stands in seven rows or in eight.
  const slow = readings(every(1, 749), (row) => each[Math.floor(row / 7.5)]!);
  expect([...freshReadings(slow, 0.01).y]).toEqual(each);
});
