/** Clocks without a date. Their forms are common practice, no source; that 24:00:00 ends a day is ISO 8601-1:2019, 5.3.2 as amended in 2022 (from memory). */
import { describe, expect, it } from 'vitest';
import { readLong } from '../../../src/intake/long-log.ts';
import { readWhole } from '../../../src/intake/whole-log.ts';
import { bytes, channel, declare } from '../declare.ts';

const SOC = channel('soc', 'temperature', 'soc_c');
const two = (number: number) => String(number).padStart(2, '0');
const hm = (minute: number) => `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
const hms = (second: number) => `${two(Math.floor(second / 3600))}:${hm(second % 3600)}`;

/** Times as rows, each with a reading. */
function text(name: string, times: readonly string[]): Uint8Array {
  return bytes(`${name},soc_c\n${times.map((time, k) => `${time},${50 + (k % 7)}\n`).join('')}`);
}

const times = (count: number, each: (k: number) => string) => Array.from({ length: count }, (_, k) => each(k));

function read(name: string, cells: readonly string[], time?: Record<string, string>) {
  const { log, problems } = readWhole(text(name, cells), declare([SOC], time ? { time } : {}), 'data/a.csv');
  return {
    rows: log?.rows,
    step: log?.time.step,
    span: log?.time.seconds.at(-1),
    says: log?.inferences
      .map(({ method }) => method)
      .filter((method) => ['midnight', 'full-hour', 'beyond-a-day'].includes(method)),
    problems: problems.map(({ rule }) => rule),
  };
}

describe('intake/time: pairs of numbers', () => {
  const beyond = times(120, (k) => hm(k * 15));
  const damaged = times(50, (k) => (k === 20 ? '39:50' : hm(570 + k)));

  it('goes by the name, whatever the size of the first number', () => {
    expect(read('elapsed (hh:mm)', beyond)).toEqual({
      rows: 120,
      step: 900,
      span: 119 * 900,
      says: ['beyond-a-day'],
      problems: [],
    });
    expect(read('elapsed', beyond, { column: 'elapsed', unit: 'h' })).toMatchObject({ rows: 120, step: 900, problems: [] });
    expect(read('elapsed', beyond, { column: 'elapsed', unit: 'min' })).toMatchObject({ rows: 120, step: 15, problems: [] });
    expect(read('time (hh:mm)', damaged)).toMatchObject({ rows: 49, step: 60, problems: ['time-unreadable'] });
    expect(read('time (mm:ss)', beyond)).toMatchObject({ rows: 120, step: 15, says: [] });
    for (const name of ['time', 'time (hh:mm or mm:ss)', 'clock mm:ss']) {
      expect(read(name, beyond).problems).toEqual(['time-clock-undecided']);
      expect(read(name, damaged).problems).toEqual(['time-clock-undecided']);
    }
  });

  it('takes hh:mm below hh:mm:ss for hours and minutes', () => {
    expect(
      read(
        'time (hh:mm:ss)',
        times(50, (k) => hm(570 + k)),
      ),
    ).toMatchObject({ rows: 50, step: 60, problems: [] });
  });

  it('does not take minutes for hours where a third number comes later', () => {
    const grows = (count: number) => times(count, (k) => (k < 60 ? `${k}:00` : `${Math.floor(k / 60)}:${two(k % 60)}:00`));
    for (const count of [66, 90, 180])
      for (const name of ['elapsed', 'elapsed (h:mm:ss)'])
        expect(read(name, grows(count)).problems).toEqual(['time-clock-undecided']);
    expect(read('elapsed', grows(180), { column: 'elapsed', unit: 'min' })).toMatchObject({ rows: 180, step: 60, span: 179 * 60 });
    expect(read('elapsed (mm:ss)', grows(180))).toMatchObject({ rows: 180, step: 60, span: 179 * 60, problems: [] });
  });
});

describe('intake/time: beyond a day, or midnight', () => {
  const night = (odd: Record<number, string>) => times(60, (k) => odd[k] ?? hms((86_400 - 20 + k) % 86_400));

  it('keeps midnight where single cells or a stretch lie above 24 h', () => {
    expect(read('time', night({}))).toMatchObject({ rows: 60, step: 1, span: 59, says: ['midnight'], problems: [] });
    expect(read('time', night({ 20: '24:00:00' }))).toMatchObject({ rows: 60, span: 59, says: ['midnight'], problems: [] });
    expect(read('time', night({ 0: '33:59:40' }))).toMatchObject({
      rows: 59,
      span: 58,
      says: ['midnight'],
      problems: ['time-unreadable'],
    });
    expect(read('time', night({ 10: '24:59:50' }))).toMatchObject({ rows: 59, span: 59, says: ['midnight'] });
    expect(read('time', night({ 9: '33:59:49', 10: '33:59:50', 11: '33:59:51' }))).toMatchObject({ rows: 57, says: ['midnight'] });
    expect(read('time', night({ 59: '24:00:39' }))).toMatchObject({ rows: 59, says: ['midnight'] });
  });

  it('counts on where rows stay above 24 h, to the last row and with a damaged one', () => {
    const on = (count: number, odd = -1) => times(count, (k) => (k === odd ? '89:00:00' : hms(86_400 - 20 + k)));
    expect(read('time', on(60))).toMatchObject({ rows: 60, span: 59, says: ['beyond-a-day'], problems: [] });
    expect(read('time', on(22))).toMatchObject({ rows: 22, span: 21, says: ['beyond-a-day'], problems: [] });
    expect(read('time', on(21))).toMatchObject({ rows: 21, span: 20, problems: [] });
    for (const odd of [0, 5, 40]) expect(read('time', on(60, odd))).toMatchObject({ rows: 59, says: ['beyond-a-day'] });
    expect(
      read(
        'time',
        times(20, (k) => `${two(3 * k)}:00:00`),
      ),
    ).toMatchObject({ rows: 20, step: 10_800, says: ['beyond-a-day'] });
  });

  it('reads parts as the whole', () => {
    for (const cells of [
      times(3000, (k) => hms(84_900 + k)),
      times(3000, (k) => (k === 1500 ? '24:00:00' : hms((84_900 + k) % 86_400))),
    ]) {
      const { log } = readLong(text('time', cells), declare([SOC]), 'data/a.csv', { part: 9000 });
      expect([...log!.time.seconds]).toEqual(times(3000, String).map(Number));
    }
  });
});

describe('intake/time: minutes and seconds', () => {
  const ms = (second: number) => `${two(Math.floor(second / 60))}:${two(second % 60)}.0`;

  it('adds an hour where they begin again, and none where they count on', () => {
    const wraps = times(90, (k) => ms((3600 - 30 + k) % 3600));
    expect(read('time', wraps)).toEqual({ rows: 90, step: 1, span: 89, says: ['full-hour'], problems: [] });
    expect(
      read(
        'time',
        times(90, (k) => ms(3600 - 30 + k)),
      ),
    ).toEqual({ rows: 90, step: 1, span: 89, says: [], problems: [] });
    expect(read('time', wraps.with(10, '91:40.0'))).toMatchObject({ rows: 89, span: 89, says: ['full-hour'] });
  });

  it('keep the full hour that ends a log', () => {
    const ends = (odd: string) => times(31, (k) => (k === 30 ? odd : ms(3570 + k)));
    expect(read('time', ends('60:00.0'))).toEqual({ rows: 31, step: 1, span: 30, says: [], problems: [] });
    expect(read('time', [...ends('60:00.0'), '00:01.0'])).toEqual({
      rows: 32,
      step: 1,
      span: 31,
      says: ['full-hour'],
      problems: [],
    });
    const night = ['18:00:00', '20:00:00', '22:00:00', '24:00:00'];
    expect(read('time', night)).toEqual({ rows: 4, step: 7200, span: 21_600, says: [], problems: [] });
    // Damaged, where the hour had hardly begun.
    const damaged = times(40, (k) => (k === 20 ? '60:00.0' : ms(k)));
    expect(read('time', damaged)).toMatchObject({ rows: 39, span: 39, says: [], problems: ['time-backward'] });
  });

  it('are told to be too far apart where a full hour cannot be told from a fall', () => {
    const apart = (step: number) => times(60, (k) => ms((k * step) % 3600));
    expect(read('time', apart(150))).toEqual({ rows: 60, step: 150, span: 59 * 150, says: ['full-hour'], problems: [] });
    expect(read('time', apart(180)).problems).toContain('time-turn-untold');
    expect(read('time', apart(180)).problems).not.toContain('time-backward');
    const { problems } = readWhole(text('time', apart(180)), declare([SOC]), 'data/a.csv');
    const [told] = problems.filter(({ rule }) => rule === 'time-turn-untold');
    expect(told!.found).toContain('its step is too long to tell a full hour');
    expect(told!.remedy).toContain('`every: 1 s`');
    const hours = times(60, (k) => hms((k * 7200) % 86_400));
    expect(read('time', hours).problems).toContain('time-turn-untold');
  });

  it('are the time only where no clock, date with clock or counter is', () => {
    const beside = (name: string, cells: readonly string[]) => {
      const lines = cells.map((cell, k) => `${cell},00:${two(k)}.5,${50 + (k % 7)}\n`).join('');
      const { log, problems } = readWhole(bytes(`${name},run,soc_c\n${lines}`), declare([SOC]), 'data/a.csv');
      return [log?.time.column, log?.rows, problems.map(({ rule }) => rule)];
    };
    expect(
      beside(
        'time',
        times(40, (k) => hms(30_000 + k)),
      ),
    ).toEqual(['time', 40, []]);
    expect(
      beside(
        'time',
        times(40, (k) => `2026-03-14 ${hms(30_000 + k)}`),
      ),
    ).toEqual(['time', 40, []]);
    expect(
      beside(
        'date',
        times(40, () => '2026-03-14'),
      ),
    ).toEqual(['run', 40, []]);
    expect(beside('t_s', times(40, String))).toEqual(['t_s', 40, []]);
  });
});

describe('intake/time: parts of a long log', () => {
  it('refuses minutes and seconds that become hours and minutes', () => {
    const cells = times(3000, (k) => (k < 1500 ? `${two(Math.floor(k / 60))}:${two(k % 60)}.5` : hms(k)));
    const { log, problems } = readLong(text('time', cells), declare([SOC]), 'data/a.csv', { part: 9000 });
    expect(log).toBeNull();
    expect(problems.map(({ rule }) => rule)).toEqual(['parts-differ']);
  });
});
