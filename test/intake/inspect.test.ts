import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/intake/inspect.ts';
import { bytes, fixture } from './declare.ts';

const of = (name: string) => inspect(fixture(name), `data/${name}`);
const text = (csv: string) => inspect(bytes(csv), 'data/a.csv');

describe('intake/inspect', () => {
  it('proposes quantity and unit with the evidence for each', () => {
    const { columns, time } = of('usb-meter.csv');
    expect(columns.map(({ column, quantity, unit }) => [column, quantity, unit])).toEqual([
      ['#', 'other', undefined],
      ['Voltage(V)', 'voltage', 'V'],
      ['Current(A)', 'current', 'A'],
      ['Power(W)', 'power', 'W'],
      ['Energy(Wh)', 'energy', 'Wh'],
      ['Temp(C)', 'temperature', 'C'],
    ]);
    expect(columns[1]).toMatchObject({ quantityWhy: 'by its name and unit', unitWhy: 'stands in brackets in the header' });
    expect(time).toMatchObject({ column: 'Time(ms)', format: 'elapsed', certain: true });
  });

  it('never takes a range for a unit: it only suggests one', () => {
    const [soc, power] = text('t_s,soc temp,power\n0,48,5.1\n1,49,5.2\n').columns;
    expect(soc).toMatchObject({ quantity: 'temperature', suggestion: '°C', unitWhy: 'stated nowhere in the file' });
    expect(soc!.unit).toBeUndefined();
    expect(power!.unit).toBeUndefined();
  });

  it('counts what can be checked by hand', () => {
    const [soc] = text('t_s,soc_c\n0,48\n1,NA\n2,50\n3,bad\n').columns;
    expect(soc!.numbers).toEqual({ count: 2, missing: 1, text: 1, min: 48, max: 50, first: 48, last: 50, mean: 49 });
    expect(soc!.oddities).toEqual(['1 cell is neither a number nor empty']);
  });

  it('suggests what may mean "no reading", and takes nothing for it', () => {
    const [soc, fan] = text(`t_s,soc_c,fan_rpm\n${[48, 49, -127, 50, 51].map((c, t) => `${t},${c},0`).join('\n')}\n`).columns;
    expect(soc!.oddities[0]).toMatch(/^one reading is exactly -127 .*`missing: "-127"`$/);
    expect(fan!.oddities[0]).toMatch(/^it is 0 throughout/);
    expect(soc!.numbers.count).toBe(5);
  });

  it('notes preamble, units line, footer, and columns without numbers', () => {
    expect(of('preamble-footer-midnight.csv')).toMatchObject({
      preamble: ['Bench logger (invented)', 'serial no. 17, started 2026-02-01'],
      footer: ['stopped 2026-02-02', 'sensor board: type K'],
    });
    expect(of('two-line-header.csv').unitsLine).toBe('min\t°C\t°C\tmA');
    expect(of('stray-quotes.csv').leftOut.map(({ column }) => column)).toEqual(['note']);
  });

  it('takes the first of two clocks, and says that it is not certain', () => {
    expect(of('semicolon-two-clocks.csv')).toMatchObject({
      timeCandidates: ['Ortszeit', 'UTC'],
      time: { column: 'Ortszeit', certain: false },
    });
    expect(text('time,soc_c\n0,48\n1,49\n').time).toMatchObject({ column: 'time', certain: false, format: 'elapsed' });
  });

  it('tells the day of the first row', () => {
    expect(of('epoch.csv').time!.date).toBe('2026-03-14');
    expect(of('zone-in-header.csv').time!.date).toBe('2026-03-14');
    expect(of('clock-back.csv').time!.date).toBeUndefined();
  });

  it('names flags by what their cells are', () => {
    expect(of('throttle-bits.csv').columns[1]).toMatchObject({
      column: 'flags',
      quantity: 'throttle_flag',
      numbers: { count: 6, max: 0xe0008 },
    });
  });
});
