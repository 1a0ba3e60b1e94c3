/** Marks in numbers, units in cells, second headers: what a column must not be taken for. Forms: common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { ChannelDeclaration } from '../../../src/intake/log.ts';
import { readWhole } from '../../../src/intake/whole-log.ts';
import { bytes, channel, declare } from '../declare.ts';

const rows = (count: number, each: (k: number) => string) => Array.from({ length: count }, (_, k) => `${each(k)}\n`).join('');

function read(text: string, declared: ChannelDeclaration) {
  const { log, problems } = readWhole(bytes(text), declare([declared]), 'data/a.csv');
  const [only] = log?.channels ?? [];
  return {
    values: only && [...only.values],
    step: only?.step,
    remedy: problems[0]?.remedy,
    errors: problems.filter(({ severity }) => severity === 'error').map(({ rule, place }) => `${rule}:${place.line}`),
  };
}

describe('intake/columns: thousands', () => {
  const INPUT = channel('input', 'power', 'input_mw');
  const counted = (mark: string, from = 900) =>
    `t_s;input_mw\n${rows(40, (k) => `${k};${String(from + k * 10).replace(/(\d)(\d{3})$/, `$1${mark}$2`)}`)}`;

  it('are in doubt where whole hundreds lead up to them', () => {
    expect(read(counted(','), INPUT).errors).toEqual(['decimal-marks-differ:5']);
    expect(read(counted('.'), INPUT).errors).toEqual(['decimal-marks-differ:5']);
    expect(read(counted(''), INPUT)).toMatchObject({ errors: [], step: 0.01 });
  });

  it('are none where a number begins with nought or has other decimals, or the whole one is declared missing', () => {
    const volts = (cell: (k: number) => string, more = {}) =>
      read(`t_s,rail_v\n${rows(40, (k) => `${k},${cell(k)}`)}`, channel('rail', 'voltage', 'rail_v', { at: 'rail', ...more }));
    const some = (k: number) => (1.2 + k / 1000).toFixed(3);
    expect(volts(some).errors).toEqual([]);
    expect(volts((k) => (k === 9 ? '230' : k === 10 ? '0.999' : some(k))).errors).toEqual([]);
    expect(volts((k) => (k === 9 ? '230' : k === 10 ? '1.25' : some(k))).errors).toEqual([]);
    expect(volts((k) => (k === 9 ? '999' : some(k)), { missing: ['999'] }).errors).toEqual([]);
    const stray = volts((k) => (k === 9 ? '999' : some(k)));
    expect(stray.errors).toEqual(['decimal-marks-differ:5']);
    expect(stray.remedy).toContain('where `999` is no reading, name it under `missing`');
  });

  it('are told of a single bare hundred too, wherever it stands', () => {
    const power = (odd: Record<number, string>) =>
      read(`t_s;input_mw\n${rows(40, (k) => `${k};${odd[k] ?? `1,${230 + k}`}`)}`, INPUT);
    expect(power({ 9: '230' }).errors).toEqual(['decimal-marks-differ:5']);
    expect(power({ 9: '980' }).errors).toEqual(['decimal-marks-differ:5']);
    expect(power({ 0: '230' }).errors).toEqual(['decimal-marks-differ:5']);
    expect(power({ 39: '230' }).errors).toEqual(['decimal-marks-differ:5']);
    const twice = power({ 9: '230', 20: '245' });
    expect(twice.errors).toEqual(['decimal-marks-differ:5']);
    expect(twice.remedy).not.toContain('missing');
  });

  it('do not hide behind a version with the other mark', () => {
    const text = `t_s;volt_v;fw\n${rows(40, (k) => `${k};1.${230 + k};1,5`)}`;
    const { values, errors } = read(text, channel('volt', 'voltage', 'volt_v', { at: 'rail' }));
    expect([errors, values![0]]).toEqual([[], 1.23]);
  });
});

describe('intake/columns: units in cells', () => {
  it('give the step of the coarsest range', () => {
    const text = `t_s,cur\n${rows(60, (k) => `${k},${k < 40 ? `${900 + (k % 23)} mA` : `1.${20 + (k % 9)} A`}`)}`;
    const current = channel('cur', 'current', 'cur', { at: 'rail' });
    expect(read(text, current)).toMatchObject({ step: 0.01, errors: [] });
    expect(read(text.replace(/1\.(\d\d) A/g, '1.$1$1 A'), current)).toMatchObject({ step: 0.001, errors: [] });
  });

  it('do not give the step of a unit in few cells', () => {
    const text = (few: number) => `t_s,cur\n${rows(40, (k) => `${k},${k < few ? '1 A' : `980.${125 + k} mA`}`)}`;
    const current = channel('cur', 'current', 'cur', { at: 'rail' });
    expect(read(text(1), current)).toMatchObject({ step: 1e-6, errors: [] });
    expect(read(text(9), current)).toMatchObject({ step: 1e-6, errors: [] });
    expect(read(text(10), current)).toMatchObject({ step: 1, errors: [] });
  });

  it('give a clock the finest step', () => {
    const text = `t_s,f\n${rows(40, (k) => `${k},${k < 25 ? '1 GHz' : '600 MHz'}`)}`;
    const { values, step, errors } = read(text, channel('f', 'clock', 'f'));
    expect([values![39]! / values![0]!, step! / values![0]!, errors]).toEqual([0.6, 0.001, []]);
  });

  it('go with the minus sign proper', () => {
    const text = `t_s,soc\n${rows(40, (k) => `${k},${k < 25 ? 5 : '\u22122.5'} °C`)}`;
    expect(read(text, channel('soc', 'temperature', 'soc')).values!.slice(24, 26)).toEqual([5, -2.5]);
  });
});

describe('intake/rows: a second header', () => {
  const soc = channel('soc', 'temperature', 'soc_c');
  const first = (name: string) => `t_s,${name},soc_c\n${rows(30, (k) => `${k},1.${k % 3},${50 + (k % 7)}`)}`;

  it('is seen where it begins with a digit', () => {
    const later = rows(30, (k) => `${90 + k}.5,${50 + (k % 7)},${30 + k}`);
    for (const name of ['12V_A', '12V', '5V rail'])
      expect(read(`${first(name)}${name},soc_c,t_s\n${later}`, soc).errors).toEqual(['header-changed:32']);
  });

  it('is the same again behind a tab', () => {
    const part = (from: number) => `\t12V_A\tsoc_c\ttime_s\n${rows(30, (k) => `${k}\t1.5\t${50 + (k % 7)}\t${from + k}`)}`;
    const { log, problems } = readWhole(bytes(part(0) + part(30)), declare([soc]), 'data/a.csv');
    expect([log!.rows, log!.setAside, problems]).toEqual([60, [], []]);
  });
});
