import { describe, expect, it } from 'vitest';
import { hiddenIn } from '../../src/hidden-characters.ts';
import { read } from '../../src/intake/read.ts';
import { brief, bytes, channel, declare, RUN, readFixture } from './declare.ts';

const SOC = channel('soc', 'temperature', 'soc_c');
const soc = (text: string, more = {}) => read(bytes(text), declare([SOC], more), 'data/a.csv');
const values = (result: ReturnType<typeof read>, at = 0) => [...result.log!.channels[at]!.values];

describe('intake/read: structure', () => {
  it('reads a file without header, sets a backward clock and glued lines aside', () => {
    const result = readFixture('headerless-backward.csv', [channel('soc', 'temperature', 'column 2', { unit: '°C' })]);
    expect(result.log).toMatchObject({ rows: 19, time: { format: 'clock', column: 'column 1' } });
    expect(result.log!.setAside).toEqual([
      { line: 11, reason: 'the time runs backward', text: '12:00:04,45.0,1800' },
      { line: 12, reason: '5 fields where the other rows have 3', text: '12:00:05,45.5,180012:00:10,46.0,1800' },
    ]);
    expect(brief(result)).toEqual([
      'data/headerless-backward.csv:11:1 warning time-backward',
      'data/headerless-backward.csv:12:1 warning field-count',
    ]);
  });

  it('finds the header below a preamble, the end above a footer, and a day after midnight', () => {
    const result = readFixture('preamble-footer-midnight.csv', [
      channel('soc', 'temperature', 'soc [°C]'),
      channel('board', 'temperature', 'board [°C]'),
    ]);
    expect(result.problems).toEqual([]);
    expect(result.log!.lines).toEqual(Int32Array.from({ length: 12 }, (_, k) => 5 + k));
    expect([...result.log!.time.seconds]).toEqual(Array.from({ length: 12 }, (_, k) => 2 * k));
    expect(result.log!.inferences.map(({ method }) => method)).toEqual(
      expect.arrayContaining(['header-line', 'footer', 'midnight', 'time-column', 'time-format', 'unit-from-header']),
    );
  });

  it('never lets later values slide left where a sensor did not answer', () => {
    const result = readFixture('missing-field.csv', [channel('power', 'power', 'power_w')]);
    expect(values(result)).toEqual([5, 5.1, 5.2, 5.3, 5.5, 5.6, 5.7, 5.8, 5.9]);
    expect(result.log!.setAside.map(({ line }) => line)).toEqual([6]);
  });

  it('cuts a NUL tail and the half-written line before it', () => {
    const result = readFixture('nul-tail.csv', [SOC]);
    expect(result.log!.rows).toBe(8);
    expect(brief(result)).toEqual(['data/nul-tail.csv:10:1 warning last-line-cut', 'data/nul-tail.csv:10:1 warning nul-tail']);
  });

  it('drops a last line that stops short', () => {
    expect(soc('t_s,soc_c,b\n0,50,1\n1,51,1\n2,5').log).toMatchObject({
      rows: 2,
      setAside: [{ line: 4, reason: 'the last line is cut off after 2 of 3 fields' }],
    });
  });

  it('shows what nobody sees in names, units and lines set aside by its name', () => {
    const text = 't_s,so\u202ec [°C]\n0,50\n1,7\u200b1\n2,52\n3,52\n4,52\n5,52,\u001b[2J\n6,52\n';
    const result = read(bytes(text), declare([channel('soc', 'temperature', 'so⟨U+202E⟩c [°C]')]), 'data/a.csv');
    expect(result.log!.channels[0]).toMatchObject({ column: 'so⟨U+202E⟩c [°C]', unit: '°C', missing: 1 });
    expect(result.log!.setAside.map(({ text: shown }) => shown)).toEqual(['1,7⟨U+200B⟩1', '5,52,⟨U+001B⟩[2J']);
    expect(hiddenIn(JSON.stringify(result))).toEqual([]);
    expect(brief(result)).toContain('data/a.csv:1:1 warning hidden-character');
  });

  it('sets lines with NUL bytes inside aside', () => {
    expect(soc('t_s,soc_c\n0,50\n1,5\0\0\0\n2,52\n').log!.setAside[0]).toMatchObject({
      line: 3,
      reason: 'the line holds NUL bytes, as after a power cut',
    });
  });

  it('reads a wide file in an 8-bit encoding with a trailing delimiter on every line', () => {
    const result = readFixture('wide-cp1252-footer.csv', [
      channel('core', 'temperature', 'Core 40 [°C]'),
      channel('power', 'power', 'Pwr [µW]'),
    ]);
    expect(result.problems).toEqual([]);
    expect(values(result, 1)).toEqual([2.5, 2.501, 2.502, 2.503, 2.504, 2.505]);
    expect(result.log!.channels[0]!.values[5]).toBe(48.9);
  });

  it('keeps the numbers of a file in two encodings', () => {
    const result = readFixture('two-encodings.csv', [SOC]);
    expect(values(result)).toEqual([50, 51, 52, 53]);
    expect(brief(result)).toEqual(['data/two-encodings.csv:4:1 warning mixed-encoding']);
  });

  it('loses one line to a stray quote, not the rest of the file', () => {
    const result = readFixture('stray-quotes.csv', [SOC]);
    expect(values(result)).toEqual([50, 52, 53, 55, 56]);
    expect(result.log!.setAside.map(({ line, reason }) => `${line}: ${reason}`)).toEqual([
      '3: a quote at column 6 is not closed, or closed inside a field',
      '6: a quote at column 8 is not closed, or closed inside a field',
    ]);
  });

  it('keeps line numbers right behind quoted line ends', () => {
    const result = soc(`t_s,soc_c,note\n0,50,"two\nlines"\n1,51,one\n2,bad,one\n${[3, 4, 5].map((t) => `${t},52,one\n`).join('')}`);
    expect([...result.log!.lines]).toEqual([2, 4, 5, 6, 7, 8]);
    expect(brief(result)).toEqual(['data/a.csv:5:3 warning cell-not-a-number']);
  });

  it('skips repeated headers among padded cells', () => {
    const result = readFixture('padded-repeated-headers.csv', [SOC, channel('power', 'power', 'power_w')]);
    expect(result.problems).toEqual([]);
    expect(values(result)).toEqual([50, 51, 52, 53, 54, 55, 56, 57]);
  });

  it('reads scientific notation below a long preamble', () => {
    const result = readFixture('meter-preamble-scientific.csv', [
      channel('v', 'voltage', 'Voltage [V]'),
      channel('a', 'current', 'Current [A]'),
    ]);
    expect(values(result)).toEqual([5.12, 5.11, 5.12]);
    expect(values(result, 1)).toEqual([0.591, 0.921, 0.93]);
  });

  it('stops where names and fields disagree in every row', () => {
    const result = readFixture('more-fields-than-names.csv', [SOC]);
    expect(result.log).toBeNull();
    expect(brief(result)).toEqual(['data/more-fields-than-names.csv:1:1 error names-and-fields-disagree']);
  });

  it('says where a column was added half way', () => {
    const result = readFixture('column-added.csv', [SOC]);
    expect(result.log).toMatchObject({ rows: 14, setAside: [] });
    expect(brief(result)).toContain('data/column-added.csv:11:1 warning field-count-changed');
  });

  it('looks at the last fifty rows alone for where a column was before a field was added', () => {
    const rows = (count: number, from: number, celsius: number) =>
      Array.from({ length: count }, (_, k) => `${from + k},${celsius + (k % 3)}`).join('\n');
    const added = (count: number, from: number, celsius: number) =>
      Array.from({ length: count }, (_, k) => `${from + k},${celsius + (k % 3)},9999`).join('\n');
    const found = (early: number, late: number) =>
      brief(soc(`t_s,soc_c\n${rows(early, 0, 20)}\n${rows(late, early, 60)}\n${added(10, early + late, 22)}\n`));
    expect(found(20, 50)).not.toEqual(found(20, 49));
  });

  it('reads units from a second header line', () => {
    const result = readFixture('two-line-header.csv', [channel('soc', 'temperature', 'SoC'), channel('input', 'current', 'Input')]);
    expect(result.problems).toEqual([]);
    expect(result.log).toMatchObject({ delimiter: '\t', time: { step: 30, column: 'Elapsed' } });
    expect(values(result, 1)).toEqual([0.9, 0.901, 0.902, 0.903, 0.904, 0.905]);
  });

  it.each([
    ['matrix.csv', 'not-a-log'],
    ['matrix-commas.csv', 'not-a-log'],
    ['long-form.csv', 'long-form'],
    ['empty.csv', 'empty-file'],
  ])('refuses %s with a reason', (name, rule) => {
    const result = readFixture(name, [SOC]);
    expect(result.log).toBeNull();
    expect(result.problems.map((problem) => problem.rule)).toEqual([rule]);
  });

  it('refuses key-value lines and prose', () => {
    expect(soc("temp: 50.1'C\nvolt: 0.9V\n\ntemp: 50.2'C\nvolt: 0.9V\n").problems[0]).toMatchObject({
      rule: 'not-a-log',
      found: 'the file consists of key-value lines',
    });
    expect(soc('The run began well.\nThen the fan stopped, and so did we.\n').problems[0]).toMatchObject({ rule: 'not-a-log' });
  });

  it('computes nothing from header only, nothing but a row from one row', () => {
    expect(readFixture('header-only.csv', [SOC])).toMatchObject({
      log: { rows: 0, time: { start: null, step: null } },
      problems: [{ rule: 'few-rows', severity: 'warning' }],
    });
    expect(readFixture('one-row.csv', [SOC])).toMatchObject({
      log: { rows: 1, channels: [{ values: Float64Array.of(50.5) }] },
      problems: [{ rule: 'few-rows' }],
    });
  });
});

describe('intake/read: columns and units', () => {
  it('reads decimal commas between semicolons and inside quotes', () => {
    const two = readFixture('semicolon-two-clocks.csv', [channel('p', 'power', 'Leistung (W)')], { time: { column: 'UTC' } });
    expect(values(two)).toEqual([5, 5.1, 5.2, 5.3, 5.4, 5.5, 5.6, 5.7]);
    expect(two.log!.time).toMatchObject({ start: Date.UTC(2026, 2, 14, 9) / 1000, step: 5 });
    expect(values(readFixture('quoted-decimal-comma.csv', [SOC]))).toEqual([50.25, 51.25, 52.25, 53.25, 54.25, 55.25]);
  });

  it('reads units and flags from the cells', () => {
    const result = readFixture('units-in-cells.csv', [
      channel('soc', 'temperature', 'soc'),
      channel('clock', 'clock', 'clock'),
      channel('flag', 'throttle_flag', 'throttled'),
    ]);
    expect(result.problems).toEqual([]);
    expect(values(result)).toEqual([50.5, 51.5, 52.5, 53.5, 54.5, 55.5]);
    expect(values(result, 1)).toEqual([1.8e9, 1.8e9, 1.8e9, 1.5e9, 1.5e9, 1.5e9]);
    expect(values(result, 2)).toEqual([0, 0, 0, 0x50000, 0x50000, 0x50000]);
    expect(result.log!.inferences.filter(({ method }) => method === 'unit-from-cells')).toHaveLength(2);
  });

  it('brings Fahrenheit, kelvin, millidegrees and kHz to °C and Hz', () => {
    const beside = readFixture('fahrenheit-beside.csv', [SOC, channel('f', 'temperature', 'soc_f')]);
    values(beside, 1).forEach((value, k) => {
      expect(Math.abs(value - values(beside)[k]!)).toBeLessThan(1e-12);
    });
    const small = readFixture('millidegree-khz.csv', [
      channel('soc', 'temperature', 'soc_mc'),
      channel('clock', 'clock', 'clock_khz'),
      channel('bus', 'clock', 'bus_hz'),
    ]);
    expect(values(small).slice(0, 2)).toEqual([50.123, 50.61]);
    expect(small.log!.channels.map(({ unit, originalUnit, step }) => [unit, originalUnit, step])).toEqual([
      ['°C', 'm°C', 0.487],
      ['Hz', 'kHz', 1000],
      ['Hz', 'Hz', 1],
    ]);
    expect(
      values(
        soc('t_s,soc_c\n0,300.15\n', {
          channels: [channel('soc', 'temperature', 'soc_c', { unit: 'K', unitReason: 'the logger names it wrongly' })],
        }),
      )[0],
    ).toBeCloseTo(27, 9);
  });

  it('reads bare hexadecimal words where letters prove them, or where declared', () => {
    expect(values(readFixture('throttle-bits.csv', [channel('f', 'throttle_flag', 'flags')]))).toEqual([
      0, 0, 0xe0000, 0xe0008, 0x50005, 0,
    ]);
    const bare = 't_s,f\n0,0\n1,50005\n';
    expect(values(read(bytes(bare), declare([channel('f', 'throttle_flag', 'f')]), 'data/a.csv'))).toEqual([0, 50005]);
    expect(values(read(bytes(bare), declare([channel('f', 'throttle_flag', 'f', { unit: 'hex' })]), 'data/a.csv'))).toEqual([
      0, 0x50005,
    ]);
  });

  it('sets one damaged word of a flag aside, and reads the intact ones as before', () => {
    const words = [0, 10, 10, 10, 10];
    const log = (last: string) => bytes(`t_s,f\n${[...words, last].map((word, row) => `${row},${word}`).join('\n')}\n`);
    const read1 = (last: string) => read(log(last), declare([channel('f', 'throttle_flag', 'f')]), 'data/a.csv');
    expect(values(read1('10'))).toEqual([...words, 10]);
    const damaged = read1('e0');
    expect(values(damaged)).toEqual([...words, Number.NaN]);
    expect(damaged.log!.setAside).toEqual([
      { line: 7, column: 3, reason: 'channel f: the reading is hexadecimal, and most are not', text: '5,e0' },
    ]);
    expect(damaged.problems.map(({ place, found }) => `${place.file}:${place.line}:${place.column} ${found}`)).toEqual([
      'data/a.csv:7:3 channel f: `e0` is hexadecimal, and most words are not (declare `unit: hex` if all of the column is); taken as no reading',
    ]);
  });

  it('takes the usual markers and the declared ones for no reading, and nothing else', () => {
    const text = 't_s,soc_c\n0,50\n1,NA\n2,\n3,-1\n4,error 3\n5,22.\n';
    const plain = soc(text);
    expect(values(plain)).toEqual([50, Number.NaN, Number.NaN, -1, Number.NaN, Number.NaN]);
    expect(plain.log!.channels[0]!.missing).toBe(4);
    expect(plain.log!.setAside).toEqual([
      { line: 6, column: 3, reason: 'channel soc: the reading is not a number', text: '4,error 3' },
      { line: 7, column: 3, reason: 'channel soc: the reading is not a number', text: '5,22.' },
    ]);
    const told = plain.problems.find(({ rule }) => rule === 'cell-not-a-number')!;
    expect(told.place).toEqual({ file: 'data/a.csv', line: 6, column: 3, endLine: 6, endColumn: 10 });
    expect(told.found).toBe('channel soc: `error 3` is not a number, and so it is on 1 other line; taken as no reading');
    expect(values(soc(text, { channels: [{ ...SOC, missing: ['-1', 'error 3'] }] }))[3]).toBeNaN();
  });

  it('tells equal names apart, and asks which is meant', () => {
    const text = 't_s,temp (C),temp (C)\n0,50,40\n1,51,41\n';
    const read2 = (column: string) => read(bytes(text), declare([channel('b', 'temperature', column)]), 'data/a.csv');
    expect(values(read2('temp (C) (2)'))).toEqual([40, 41]);
    expect(read2('temp (C)').problems[0]).toMatchObject({
      rule: 'column-ambiguous',
      place: RUN,
      expected: 'one of `temp (C) (1)`, `temp (C) (2)`',
    });
  });

  it.each([
    [{ column: 'soc' }, 'column-not-found', 'did you mean `soc_c`?'],
    [{ unit: 'Celcius' }, 'unit-unknown', 'did you mean `°C`?'],
    [{ unit: 'mV' }, 'unit-impossible', /correct the quantity/],
    [{ quantity: 'other', column: 'soc_c' }, 'unit-missing', /unit: /],
  ] as const)('declared %j: %s', (more, rule, remedy) => {
    const result = soc('t_s,soc_c\n0,50\n1,51\n', { channels: [{ ...SOC, ...more }] });
    expect(result.problems.map((problem) => problem.rule)).toEqual([rule]);
    expect(result.log).toBeNull();
    expect(result.problems[0]).toMatchObject({
      severity: 'error',
      place: RUN,
      remedy: remedy instanceof RegExp ? expect.stringMatching(remedy) : remedy,
    });
  });

  it('takes a declared unit against the header only with a reason', () => {
    const text = 't_s,input (mA)\n0,0.9\n1,0.8\n';
    const of = (more: object) => read(bytes(text), declare([channel('i', 'current', 'input (mA)', more)]), 'data/a.csv');
    expect(of({ unit: 'A' })).toMatchObject({ log: null, problems: [{ rule: 'unit-conflict', severity: 'error', place: RUN }] });
    const reasoned = of({ unit: 'A', unitReason: 'the header is wrong since firmware 2' });
    expect(reasoned.problems).toMatchObject([{ rule: 'unit-conflict', severity: 'warning' }]);
    expect(values(reasoned)).toEqual([0.9, 0.8]);
    expect(of({ unit: 'mA' }).problems).toEqual([]);
    expect(soc('t_s,soc_c\n0,300\n1,301\n', { channels: [{ ...SOC, unit: 'K' }] })).toMatchObject({
      log: { rows: 2 },
      problems: [{ rule: 'unit-conflict', severity: 'warning' }],
    });
  });

  it('reports header against cells, and a header that its quantity cannot have', () => {
    const cells = read(
      bytes('t_s,soc [°C]\n0,122 °F\n1,123 °F\n'),
      declare([channel('soc', 'temperature', 'soc [°C]')]),
      'data/a.csv',
    );
    expect(cells.problems.map(({ rule }) => rule)).toEqual(['unit-conflict']);
    const volts = read(bytes('t_s,soc [V]\n0,1\n'), declare([channel('soc', 'temperature', 'soc [V]')]), 'data/a.csv');
    expect(volts.problems.map(({ rule }) => rule)).toContain('unit-impossible');
  });

  it('names a unit in brackets that nobody knows', () => {
    const result = read(
      bytes('t_s,soc (Celcius)\n0,1\n1,2\n'),
      declare([channel('soc', 'temperature', 'soc (Celcius)')]),
      'data/a.csv',
    );
    expect(result.problems[0]!.found).toContain('`Celcius` in the header is not a unit that is known');
  });

  it('makes a column without any reading an error', () => {
    expect(brief(soc('t_s,soc_c\n0,NA\n1,NA\n'))).toEqual(['content/runs/a.md:5:3 error no-readings']);
  });
});

describe('intake/read: time', () => {
  it.each([
    ['epoch.csv', 'epoch', 1773480000, 10],
    ['epoch-ms.csv', 'epoch', 1773480000.123, 0.5],
    ['epoch-ns.csv', 'epoch', 1773480000, 1],
    ['offset.csv', 'iso8601', Date.UTC(2026, 2, 14, 9, 0, 0, 250) / 1000, 1],
    ['offset-and-z.csv', 'iso8601', null, 1],
    ['zone-in-header.csv', 'iso8601', null, 1],
  ])('%s', (name, format, start, step) => {
    const column = name === 'zone-in-header.csv' ? 'soc (°C)' : 'soc_c';
    const result = readFixture(name, [channel('soc', 'temperature', column)]);
    expect(result.problems).toEqual([]);
    expect(result.log!.time).toMatchObject({ format, start, step });
    expect([...result.log!.time.seconds]).toEqual(Array.from({ length: 6 }, (_, k) => k * step));
  });

  it('asks which of two clocks counts, and reads a dotted one day first', () => {
    const asked = readFixture('semicolon-two-clocks.csv', [channel('soc', 'temperature', 'SoC (°C)')]);
    expect(asked.problems).toMatchObject([{ rule: 'time-column-undecided', place: RUN, expected: 'one of them, named' }]);
    const local = readFixture('semicolon-two-clocks.csv', [channel('soc', 'temperature', 'SoC (°C)')], {
      time: { column: 'Ortszeit', zone: 'Europe/Vienna' },
    });
    expect(local.log!.time.start).toBe(Date.UTC(2026, 2, 14, 9) / 1000);
    expect(local.log!.inferences.find(({ method }) => method === 'time-format')!.statement).toContain(
      'day first: a number above 12 proves it',
    );
  });

  it('stays local without a zone and never guesses the order of day and month from slashes', () => {
    expect(soc('time,soc_c\n2026-01-05 10:00:00,50\n2026-01-05 10:00:02,51\n').log!.time).toMatchObject({ start: null, step: 2 });
    const one = soc('time,soc_c\n01/02/2026 10:00:00,50\n01/02/2026 10:00:02,51\n').log!;
    expect(one.time.step).toBe(2);
    expect(one.inferences.find(({ method }) => method === 'time-format')!.statement).toBe(
      'All dates in `time` are equal: they are read day first, and elapsed time is the same the other way round.',
    );
    expect(soc('time,soc_c\n01/02/2026 10:00:00,50\n02/02/2026 10:00:00,51\n').problems).toMatchObject([
      { rule: 'date-order-unknown', severity: 'error' },
    ]);
    expect(soc('time,soc_c\n01/02/2026 10:00:00,50\n01/02/2026 10:00:02,51\n').log!.time.step).toBe(2);
    expect(soc('time,soc_c\n01/13/2026 10:00:00,50\n01/14/2026 10:00:00,51\n').log!.time.step).toBe(86400);
  });

  it('joins a column of dates and one of clock times', () => {
    const result = soc('date,clock,soc_c\n2026-01-05,23:59:59,50\n2026-01-06,00:00:01,51\n');
    expect(result.log!.time).toMatchObject({ column: 'date + clock', step: 2 });
  });

  it('says how to declare a unit that the time lacks', () => {
    const result = soc('time,soc_c\n0,50\n1,51\n');
    expect(result).toMatchObject({
      log: null,
      problems: [{ rule: 'time-unit-missing', place: RUN, remedy: expect.stringContaining('unit: s') }],
    });
    expect(soc('time,soc_c\n0,50\n1,51\n', { time: { unit: 'min' } }).log!.time.step).toBe(60);
    expect(soc('time,soc_c\n0,50\n1,51\n', { time: { unit: 'mins.' } }).problems[0]).toMatchObject({ rule: 'unit-unknown' });
  });

  it('takes from its author when elapsed time was zero, and only of elapsed time', () => {
    const start = Date.UTC(2026, 4, 3, 8) / 1000;
    const log = (csv: string, time: object) => soc(csv, { time: { start, ...time } });
    expect(log('t_s,soc_c\n0,50\n2,51\n', {}).log!.time.start).toBe(start);
    expect(log('t_min,soc_c\n5,50\n6,51\n', { unit: 'min' }).log!.time.start).toBe(start + 300);
    expect(log('t_ms,soc_c\n?,50\n1250,51\n', { column: 't_ms' }).log!.time.start).toBe(start + 1.25);
    for (const time of ['2026-05-03T08:00:00Z', '08:00:00', '1777795200']) {
      expect(log(`time,soc_c\n${time},50\n`, {}), time).toMatchObject({
        log: null,
        problems: [{ rule: 'time-start', place: RUN }],
      });
    }
  });

  it('reports a time column that is not there, and a format that does not fit', () => {
    expect(soc('t_s,soc_c\n0,50\n', { time: { column: 't_sec' } }).problems[0]).toMatchObject({
      rule: 'column-not-found',
      remedy: 'did you mean `t_s`?',
    });
    expect(soc('t_s,soc_c\n0,50\n', { time: { format: 'clock' } }).problems[0]).toMatchObject({ rule: 'time-format' });
    expect(soc('time,soc_c\n2026-01-05 10:00:00,50\n', { time: { zone: 'Europe/Vienne' } }).problems[0]).toMatchObject({
      rule: 'zone-unknown',
      remedy: 'did you mean `Europe/Vienna`?',
    });
  });

  it('sets rows with an impossible time aside', () => {
    const result = soc('time,soc_c\n2026-01-05 10:00:00,50\n2026-01-05 10:99:00,51\n2026-01-05 10:00:02,52\n,53\n');
    expect(result.log).toMatchObject({
      rows: 2,
      setAside: [
        { line: 3, reason: 'the time cannot be read' },
        { line: 5, reason: 'the row has no time' },
      ],
    });
  });

  it('reports a clock that was put back, with the line, and takes a declared shift for it', () => {
    const back = readFixture('clock-back.csv', [SOC]);
    expect(back.log!.rows).toBe(16);
    expect(brief(back)).toEqual([
      'data/clock-back.csv:12:1 warning time-backward',
      'data/clock-back.csv:16:1 warning time-repeated',
    ]);
    const repair = {
      kind: 'shift_time',
      fromLine: 12,
      toLine: 21,
      bySeconds: 10,
      reason: 'the clock was set',
      place: RUN,
    } as const;
    const mended = readFixture('clock-back.csv', [SOC], { repairs: [repair] });
    expect(mended.problems).toEqual([]);
    expect(mended.log).toMatchObject({ rows: 20, setAside: [], repairs: [{ repair, rows: 10 }] });
    expect([...mended.log!.time.seconds]).toEqual(Array.from({ length: 20 }, (_, k) => 2 * k));
  });

  it('drops a ragged row with the reason given, and then says no more of it', () => {
    const result = soc('t_s,soc_c\n0,50\n1,51,9\n2,52\n3,53\n', {
      repairs: [{ kind: 'drop', fromLine: 3, toLine: 3, reason: 'a glued line', place: RUN }],
    });
    expect(result.problems).toEqual([]);
    expect(result.log!.rows).toBe(3);
    expect(result.log!.setAside).toEqual([]);
    expect(result.log!.repairs.map(({ rows }) => rows)).toEqual([1]);
  });

  it('drops declared lines and says when a repair touches nothing', () => {
    const drop = (fromLine: number, toLine: number) =>
      ({ kind: 'drop', fromLine, toLine, reason: 'door open', place: RUN }) as const;
    const result = soc('t_s,soc_c\n0,50\n1,51\n2,52\n3,53\n', { repairs: [drop(3, 4), drop(90, 99)] });
    expect(values(result)).toEqual([50, 53]);
    expect(result.log!.repairs.map(({ rows }) => rows)).toEqual([2, 0]);
    expect(result.problems).toMatchObject([{ rule: 'repair-idle', severity: 'warning', place: RUN }]);
  });

  it('sets all rows of a counter that starts again aside', () => {
    expect(readFixture('reboots.csv', [SOC]).log).toMatchObject({ rows: 6, setAside: { length: 4 } });
  });

  it('reports gaps and repeats with their first line', () => {
    const result = soc(`t_s,soc_c\n${[0, 1, 2, 3, 3, 4, 30, 31, 32, 33].map((t) => `${t},50`).join('\n')}\n`);
    expect(result.log!.time.gaps).toEqual([{ row: 6, length: 26 }]);
    expect(brief(result)).toEqual(['data/a.csv:6:1 warning time-repeated', 'data/a.csv:8:1 warning time-gap']);
  });
});
