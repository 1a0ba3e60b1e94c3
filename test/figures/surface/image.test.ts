import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { correct } from '../../../src/figures/surface/correct.ts';
import { readBox, readingAt, readPoint, regionOf } from '../../../src/figures/surface/in-image.ts';
import { readMatrix } from '../../../src/figures/surface/matrix.ts';
import { LONG_WAVE } from '../../../src/figures/surface/radiation.ts';
import { readSurface } from '../../../src/figures/surface/read-surface.ts';
import { readingOf } from '../../../src/figures/surface/reading-of.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { apart, contextOf, every, instrumentOf, logOf, presentAt } from '../build.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const camera = instrumentOf('camera', 'temperature', { ofReading: 0.02, absolute: 2, larger: true });

/** An image of temperatures that are known: 30 °C, in its upper left quarter 40 + column / 10 + row / 100. */
const HOT = (row: number, column: number) => (row < 10 && column < 10 ? 40 + column / 10 + row / 100 : 30);
const rowsOf = (divider: string, point: string) =>
  Array.from({ length: 20 }, (_, row) =>
    Array.from({ length: 20 }, (__, column) => HOT(row, column).toFixed(2).replace('.', point)).join(divider),
  ).join('\n');
const IMAGE = readMatrix(bytes(rowsOf(',', '.')), 'data/image.csv').matrix!;

describe('surface/matrix', () => {
  it.each([
    [',', '.'],
    [';', ','],
    [';', '.'],
    ['\t', ','],
    [' ', '.'],
    [' ', ','],
    [', ', '.'],
  ])('reads an export with %j between numbers and %j in them', (divider, point) => {
    const { matrix, problems } = readMatrix(bytes(rowsOf(divider, point)), 'data/image.csv');
    expect(problems).toEqual([]);
    expect(matrix).toMatchObject({ width: 20, height: 20, step: 0.01, others: 0 });
    expect(matrix!.values[3 * 20 + 4]).toBe(40.43);
  });

  it('has the step of its last digit, 1 K in whole degrees', () => {
    const step = (digits: number) => {
      const text = rowsOf(',', '.').replaceAll(/\d+\.\d+/g, (cell) => Number(cell).toFixed(digits));
      return readMatrix(bytes(text), 'data/image.csv').matrix!.step;
    };
    expect([0, 1, 2].map(step)).toEqual([1, 0.1, 0.01]);
  });

  it('reads decimal commas in quotes', () => {
    const quoted = rowsOf(';', ',')
      .split('\n')
      .map((line) => `"${line.replaceAll(';', '","')}"`);
    const { matrix } = readMatrix(bytes(quoted.join('\n')), 'data/image.csv');
    expect(matrix).toMatchObject({ width: 20, height: 20, step: 0.01 });
    expect(matrix!.values[3 * 20 + 4]).toBe(40.43);
  });

  it('reads UTF-16 and counts lines that are no readings', () => {
    const text = `Invented camera;no-1\nemissivity;0,95\n\n${rowsOf(';', ',')}\nend\n`;
    const utf16 = new Uint8Array([0xff, 0xfe, ...Array.from(text).flatMap((letter) => [letter.charCodeAt(0), 0])]);
    expect(readMatrix(utf16, 'data/image.csv').matrix).toMatchObject({ width: 20, height: 20, others: 3 });
  });

  it.each([
    ['', 1, 'no table of temperatures'],
    ['a,b,c\n1,2,3\n', 1, 'no table of temperatures'],
    [rowsOf(',', '.').replace('40.43', 'n/a'), 4, 'cell 5 of this line is no number'],
    [rowsOf(',', '.').replace(',40.43', ''), 4, 'this line has 19 cells, and the first 20'],
    [rowsOf(',', '.').replace('40.43', '-300'), 4, '-300 °C in cell 5'],
    [rowsOf(',', '.').split('\n').slice(0, 5).join('\n'), 1, '20 × 5 pixels'],
  ])('says what is wrong with an export, and where', (text, line, found) => {
    const { matrix, problems } = readMatrix(bytes(text), 'data/image.csv');
    expect(matrix).toBeNull();
    expect(problems.map((problem) => [problem.rule, problem.place.line])).toEqual([['bad-image', line]]);
    expect(problems[0]!.found).toContain(found);
  });
});

describe('surface/matrix refuses what could be read as other temperatures', () => {
  const told = (text: string) => {
    const { matrix, problems } = readMatrix(bytes(text), 'data/image.csv');
    return [matrix, problems.map(({ rule, place, found }) => `${place.line} ${rule} ${found}`).join()];
  };
  const plain = rowsOf(',', '.');
  const moved = (to: (celsius: number) => number) => plain.replaceAll(/[\d.]+/g, (text) => to(Number(text)).toFixed(2));

  it('kelvins', () => {
    expect(told(moved((celsius) => celsius + 273.15))).toEqual([null, '1 bad-image the coldest pixel is 303.15: kelvins?']);
  });

  it.each(['Unit: degF', 'Temperature [K]', 'unit;°F', 'Temperatures in Kelvin', 'Fahrenheit', 'Scale,F'])(
    'a line that names another unit: %s',
    (line) => {
      expect(told(`Invented camera\n${line}\n${plain}`)[1]).toMatch(/^2 bad-image this line names the unit /);
    },
  );

  it.each(['Unit: °C', 'Noise: 0.05 K', 'Lens,f', 'K. Alder, bench 2', 'Reflected;293.15;K', 'F-number 1.1'])(
    'but none that names it for something else, or °C: %s',
    (line) => {
      expect(told(`${line}\n${plain}`)[1]).toBe('');
    },
  );

  it.each([1, 2])('commas between numbers and in them, with %i decimals', (decimals) => {
    const rows = Array.from({ length: 12 }, (_, row) =>
      Array.from({ length: 12 }, (__, column) => (HOT(row, column) + 0.37).toFixed(decimals).replace('.', ',')).join(','),
    );
    expect(told(rows.join('\n'))[1]).toMatch(/^1 bad-image commas stand between the numbers and in them/);
  });

  it('but no whole degrees', () => {
    const rows = Array.from({ length: 12 }, (_, row) =>
      Array.from({ length: 12 }, (__, column) => 20 + column + (row % 3)).join(','),
    );
    expect(told(rows.join('\n'))[1]).toBe('');
  });

  it('numbers of rows and columns', () => {
    const counted = plain.split('\n').map((line, row) => `${row},${line}`);
    expect(told(counted.join('\n'))[1]).toContain('the first column counts the pixels');
    const head = Array.from({ length: 20 }, (_, column) => column + 1).join(',');
    expect(told(`${head}\n${plain}`)[1]).toContain('1 bad-image the first row counts the pixels');
  });
});

describe('surface/in-image', () => {
  it('reads places and boxes, and nothing like them', () => {
    expect(readPoint('50 % by 12.5 %')).toEqual({ x: 0.5, y: 0.125 });
    expect(readBox('10 .. 90 % by 20..80%')).toEqual({ x: [0.1, 0.9], y: [0.2, 0.8] });
    expect(['', '50 %', '50, 40', '101 % by 1 %', '0.5 by 0.4'].map(readPoint)).toEqual([null, null, null, null, null]);
    expect(['90 .. 10 % by 0 .. 5 %', '0 .. 110 % by 0 .. 5 %', '0-10 % by 0-5 %'].map(readBox)).toEqual([null, null, null]);
  });

  it('gives the pixels of a box back, the hottest with its place', () => {
    const region = regionOf(IMAGE, { x: [0, 0.5], y: [0, 0.5] })!;
    expect(region.values).toHaveLength(100);
    expect(region.hottest).toEqual({ x: 9.5 / 20, y: 9.5 / 20 });
    const around = [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => HOT(8 + row, 8 + column)));
    expect(apart(region.standsOut, 40.99 - around.reduce((sum, value) => sum + value, 0) / 9)).toBeLessThan(1e-12);
    expect(regionOf(IMAGE, { x: [0.501, 0.509], y: [0, 1] })).toBeNull();
    expect(apart(readingAt(IMAGE, { x: 4.5 / 20, y: 4.5 / 20 }), 40.44)).toBeLessThan(1e-12);
  });
});

const HEAD = 'spot,material,contact,reading [°C],emissivity_set,emissivity,reflected [°C],at,within';
const read = (rows: readonly string[], image: typeof IMAGE | undefined = IMAGE) =>
  readSurface(bytes([HEAD, ...rows, ''].join('\n')), 'data/surface.csv', 'camera', undefined, image);
const figuresOf = (rows: readonly string[]) => {
  const { surface, problems } = read(rows);
  expect(problems).toEqual([]);
  const context = contextOf({ instruments: { camera }, ambient: { value: 25, unit: '°C', parts: [] } });
  return { ...derive(logOf(every(1, 600), {}), context, { surface }), context, surface };
};
const REGION = 'Block,anodised aluminium,held,,0.95,0.8 ± 0.05,25 ± 1,,0 .. 50 % by 0 .. 50 %';

describe('regions of a thermal image', () => {
  it('give back the hottest, mean and 99th percentile of known temperatures, corrected pixel by pixel', () => {
    const { figures } = figuresOf([REGION]);
    const corrected = Array.from({ length: 100 }, (_, index) => {
      const reading = Number(HOT(Math.floor(index / 10), index % 10).toFixed(2));
      return correct({ reading, emissivitySet: 0.95, emissivity: 0.8, reflected: 25 }, LONG_WAVE)!.temperature;
    }).sort((a, b) => a - b);
    const value = (address: string) => presentAt(figures, address).quantity.value;
    expect(apart(value('surface.block'), corrected.at(-1)!)).toBeLessThan(1e-12);
    expect(apart(value('surface_mean.block'), corrected.reduce((sum, each) => sum + each, 0) / 100)).toBeLessThan(1e-12);
    // Type 7: rank 0.99 · 99 = 98.01.
    expect(apart(value('surface_percentile_99.block'), corrected[98]! + 0.01 * (corrected[99]! - corrected[98]!))).toBeLessThan(
      1e-6,
    );
    expect(value('surface.block')).toBeGreaterThan(40.99);
  });

  it('are as sure as camera, emissivity and surroundings, and the hottest less so by what it stands out', () => {
    const { figures } = figuresOf([REGION]);
    const sources = (address: string) => presentAt(figures, address).quantity.parts!.map(({ source }) => source.id);
    expect(sources('surface.block').filter((id) => id.endsWith('/pixel'))).toEqual(['run:soak/surface.block/pixel']);
    expect(sources('surface_mean.block').some((id) => id.endsWith('/pixel'))).toBe(false);
    const u = (address: string) => standardUncertainty(presentAt(figures, address).quantity)!;
    expect(u('surface.block')).toBeGreaterThan(u('surface_percentile_99.block'));
  });

  it('have a touch margin and count among the hottest surfaces', () => {
    const { figures } = figuresOf([REGION, 'Foot,rubber,held,34.0,0.95,0.95,25,80 % by 80 %,']);
    expect(presentAt(figures, 'touch_margin.block').quantity.value).toBeGreaterThan(0);
    expect(presentAt(figures, 'hottest_surface').of).toMatchObject({ spot: 'block' });
  });

  it('of bare metal are absent with their reason, all of them', () => {
    const { figures } = figuresOf([REGION.replace('anodised aluminium', 'polished steel')]);
    for (const name of ['surface', 'surface_mean', 'surface_percentile_99'])
      expect(figures.get(`${name}.block`)).toMatchObject({ absent: 'low-emissivity' });
  });

  it('and spots say where a cell is wrong', () => {
    const told = (row: string, image?: typeof IMAGE) =>
      read([row], image).problems.map(({ place, found }) => [place.line, place.column, found]);
    expect(told(REGION.replace('0 .. 50 %', '50 %'))).toContainEqual([2, 56, '`within` is `50 % by 0 .. 50 %`']);
    expect(told(REGION.replace(',held,,', ',held,40,')).map(([, , found]) => found)).toContain('a region with `reading` beside it');
    expect(told('Foot,rubber,held,40,0.95,0.95,25,left,').map(([, , found]) => found)).toContain('`at` is `left`');
    const none = readSurface(bytes(`${HEAD}\n${REGION}\n`), 'data/surface.csv', 'camera');
    expect(none.problems.map(({ found }) => found)).toContain('`within` of a run without a thermal image');
  });

  it('are held against typed readings: one that is nothing like its image is warned of, and kept', () => {
    const told = (typed: string, set = '0.95') => {
      const { surface, problems } = read([`Foot,rubber,held,${typed},${set},0.95,25,80 % by 80 %,`]);
      return [surface.readings.length, ...problems.map(({ rule, severity, found }) => `${severity} ${rule} ${found}`)];
    };
    expect(told('31.5')).toEqual([1]);
    expect(told('45.9')).toEqual([
      1,
      'warning surface-image `reading` is `45.9`, and the image has 30.0 to 30.0 °C about that place',
    ]);
    // A probe's.
    expect(told('45.9', '').join()).not.toContain('surface-image');
    // At the edge of the image, too.
    const edge = read(['Foot,rubber,held,30,0.95,0.95,25,100 % by 0 %,', 'Block,rubber,held,41,0.95,0.95,25,0 % by 0 %,']);
    expect(edge.problems).toEqual([]);
  });

  it('of which a temperature is asked give the reading that is corrected to it', () => {
    const { context, surface } = figuresOf([REGION]);
    const reading = readingOf(context, surface, surface.readings[0]!, 48)!;
    const back = correct({ reading, emissivitySet: 0.95, emissivity: 0.8, reflected: 25 }, LONG_WAVE)!.temperature;
    expect(apart(back, 48)).toBeLessThan(1e-10);
    expect(reading).toBeLessThan(48);
  });
});
