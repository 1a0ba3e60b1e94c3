import { describe, expect, test } from 'vitest';
import { cautions, mergeCautions } from '../../../src/figures/cautions.ts';
import type { RunContext } from '../../../src/figures/context.ts';
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { correct } from '../../../src/figures/surface/correct.ts';
import { isBareMetal, materialClasses } from '../../../src/figures/surface/material.ts';
import { LONG_WAVE, TOTAL } from '../../../src/figures/surface/radiation.ts';
import { readSurface } from '../../../src/figures/surface/read-surface.ts';
import { contactOfTime, touchLimit } from '../../../src/figures/surface/touch-limits.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { apart, contextOf, every, instrumentOf, logOf, presentAt } from '../build.ts';

const HEAD = 'spot,part,material,contact,reading [°C],emissivity_set,emissivity,reflected [°C]';

function read(rows: readonly string[], head = HEAD, instrument: string | undefined = 'camera') {
  return readSurface(new TextEncoder().encode([head, ...rows, ''].join('\n')), 'data/larch-2/surface.csv', instrument);
}

const camera = instrumentOf('camera', 'temperature', { ofReading: 0.02, absolute: 2, larger: true });
const exactly = (value: number) => ({ value, unit: '°C', parts: [] });

function figuresOf(rows: readonly string[], context: Partial<RunContext> = {}, head = HEAD) {
  const whole = contextOf({ instruments: { camera }, ambient: exactly(23), ...context });
  const derived = derive(logOf(every(1, 600), {}), whole, { surface: read(rows, head).surface });
  return { figures: derived.figures, derived, context: whole };
}

/** The code of an absence, or the value to three decimals. */
function told(figures: ReturnType<typeof figuresOf>['figures'], address: string): string {
  const figure = figures.get(address);
  if (!figure) return 'none';
  return isPresent(figure) ? figure.quantity.value.toFixed(3) : figure.absent;
}

const LID = 'Lid centre,lid,anodised aluminium,touched briefly,59.3,0.95,0.85 ± 0.05,23.4 ± 1.0';
const FOOT = 'Foot,base,rubber,held,40.0,0.95,0.95 ± 0.02,23.4 ± 1.0';

describe('surface figures', () => {
  test('a spot is its corrected reading, with the uncertainty of all that was stated', () => {
    const { figures } = figuresOf([LID, FOOT]);
    const lid = presentAt(figures, 'surface.lid-centre');
    const { temperature, by } = correct({ reading: 59.3, emissivitySet: 0.95, emissivity: 0.85, reflected: 23.4 }, LONG_WAVE)!;
    const total = correct({ reading: 59.3, emissivitySet: 0.95, emissivity: 0.85, reflected: 23.4 }, TOTAL)!.temperature;
    expect(lid.quantity.value).toBe(temperature);
    // Limits are rectangular: JCGM 100:2008, 4.3.7. Of 2 °C and 2 % the larger is 2 °C below 100 °C.
    const limits = [by.reading * 2, by.emissivity * 0.05, by.reflected * 1, temperature - total];
    expect(apart(standardUncertainty(lid.quantity)!, Math.hypot(...limits) / Math.sqrt(3))).toBeLessThan(1e-3);
    expect(lid.of).toMatchObject({ spot: 'lid-centre', spot_title: 'Lid centre', emissivity: 0.85, emissivity_set: 0.95 });
    expect(lid.from).toEqual({
      columns: ['reading [°C]', 'emissivity_set', 'emissivity', 'reflected [°C]'],
      rows: [2, 2],
      file: 'data/larch-2/surface.csv',
    });
    // Set and true emissivity equal: as shown.
    expect(told(figures, 'surface.foot')).toBe('40.000');
  });

  test('a table of spots and temperatures alone gives camera_reading, marked, and no surface temperature', () => {
    const { figures } = figuresOf(['Lid centre,48.7', 'Base,40.0'], {}, 'spot,reading [°C]');
    expect(told(figures, 'camera_reading.lid-centre')).toBe('48.700');
    const lid = presentAt(figures, 'camera_reading.lid-centre');
    expect(lid.of).toEqual({
      spot: 'lid-centre',
      spot_title: 'Lid centre',
      stands_in: 'as the camera says, without correction for emissivity',
    });
    // Of 2 °C and 2 % the larger, as limits.
    expect(apart(standardUncertainty(lid.quantity)!, Math.hypot(2 / Math.sqrt(3), 0.1 / Math.sqrt(12)))).toBeLessThan(2e-3);
    expect(told(figures, 'surface.lid-centre')).toBe('no-condition');
    expect(told(figures, 'hottest_surface')).toBe('operand-absent');
    expect(told(figures, 'touch_margin.base')).toBe('no-condition');
    expect(figures.has('hottest_surface.')).toBe(false);
  });

  test('a spot of bare metal has no camera_reading, and a corrected one needs none', () => {
    const { figures } = figuresOf(['Fin,copper,50,', 'Foot,rubber,40,'], {}, 'spot,material,reading [°C],emissivity');
    expect([told(figures, 'camera_reading.fin'), told(figures, 'camera_reading.foot')]).toEqual(['low-emissivity', '40.000']);
    expect(told(figuresOf([FOOT]).figures, 'camera_reading.foot')).toBe('none');
  });

  test('what two spots share cancels in their difference: the camera’s offset', () => {
    const { figures } = figuresOf([FOOT, FOOT.replace('Foot', 'Foot 2').replace('40.0', '38.0')]);
    const [one, two] = ['surface.foot', 'surface.foot-2'].map((address) => presentAt(figures, address).quantity.parts!);
    const shared = (parts: typeof one) => parts!.find(({ source }) => source.id === 'instrument:camera/temperature/offset')!.share;
    expect(apart(shared(one), shared(two))).toBeLessThan(1e-12);
  });

  test.each([
    ['no camera named', FOOT, { instruments: {} }],
    ['an emissivity without limits', FOOT.replace('0.95 ± 0.02', '0.95'), {}],
    ['a reflected temperature without limits that counts', LID.replace('23.4 ± 1.0', '23.4'), {}],
  ])('uncertainty unknown: %s', (_, row, context) => {
    const [figure] = [...figuresOf([row], context).figures.values()].filter(({ name }) => name === 'surface');
    expect(figure && isPresent(figure) && figure.quantity.parts).toBeNull();
  });

  test('bare metal and low emissivities are refused, unless a remedy is stated', () => {
    const row = (material: string, emissivity: string, remedy: string) =>
      `Fin,sink,${material},none,50,0.95,${emissivity},23 ± 1,${remedy}`;
    const first = (...cells: [string, string, string]) =>
      told(figuresOf([row(...cells)], {}, `${HEAD},remedy`).figures, 'surface.fin');
    expect(first('aluminium', '0.95', '')).toBe('low-emissivity');
    expect(first('polished steel', '0.07', '')).toBe('low-emissivity');
    expect(first('oxidised copper', '0.4', '')).toBe('low-emissivity');
    expect(first('painted steel', '0.92', '')).not.toBe('low-emissivity');
    expect(first('aluminium', '0.95 ± 0.02', 'matt black tape')).toBe('50.000');
    expect(first('aluminium', '0.05', 'matt black tape')).toBe('low-emissivity');
  });

  test('absent with its reason: nothing stated, impossible statements, no table', () => {
    expect(told(figuresOf(['Lid,lid,plastic,held,40,0.95,,23']).figures, 'surface.lid')).toBe('no-condition');
    expect(told(figuresOf(['Lid,lid,plastic,held,40,,0.95,23']).figures, 'surface.lid')).toBe('no-condition');
    expect(told(figuresOf(['Lid,lid,plastic,held,40,0.95,0.9,']).figures, 'surface.lid')).toBe('no-condition');
    expect(told(figuresOf(['Lid,lid,plastic,held,-60,1,0.5,90']).figures, 'surface.lid')).toBe('out-of-range');
    expect(told(derive(logOf(every(1, 60), {}), contextOf()).figures, 'hottest_surface')).toBe('no-readings');
    expect(told(figuresOf([]).figures, 'hottest_surface')).toBe('no-readings');
  });

  test('the hottest spot of all and of each part; one that is unread leaves a bound', () => {
    const { figures } = figuresOf([LID, FOOT, 'Edge,lid,plastic,held,45,0.95,0.95 ± 0.02,23.4 ± 1.0']);
    expect(presentAt(figures, 'hottest_surface').of).toMatchObject({ spot: 'lid-centre', spots: 3 });
    expect(presentAt(figures, 'hottest_surface').quantity).toEqual(presentAt(figures, 'surface.lid-centre').quantity);
    expect(told(figures, 'hottest_surface.base')).toBe('40.000');
    const unread = figuresOf([FOOT, 'Fin,base,aluminium,none,99,0.95,0.95,23']).figures.get('hottest_surface.base')!;
    expect(unread).toMatchObject({
      absent: 'operand-absent',
      bound: { relation: '>', unit: '°C' },
      why: expect.stringContaining('Fin'),
    });
    expect('bound' in unread && unread.bound!.value.toFixed(3)).toBe('40.000');
  });
});

describe('touch margins', () => {
  // IEC 62368-1, limits TS1, as public sources restate the table: metal and plastic.
  test.each([
    ['held', 48, 48],
    ['held briefly', 51, 60],
    ['touched briefly', 60, 77],
    ['not touched', 70, 94],
  ] as const)('limits of metal and plastic, %s', (contact, metal, plastic) => {
    expect(touchLimit(contact, ['metal'])).toEqual({ limit: metal, material: 'metal', fromMemory: false });
    expect(touchLimit(contact, ['plastic'])).toEqual({ limit: plastic, material: 'plastic', fromMemory: false });
    // Of several the lowest.
    expect(touchLimit(contact, ['plastic', 'metal'])!.limit).toBe(Math.min(metal, plastic));
  });

  // The same table, from memory.
  test.each([
    ['touched briefly', 71, 107],
    ['not touched', 85, 140],
  ] as const)('limits of glass and wood, %s, say that they are from memory', (contact, glass, wood) => {
    expect(touchLimit(contact, ['glass'])).toMatchObject({ limit: glass, fromMemory: true });
    expect(touchLimit(contact, ['wood'])).toMatchObject({ limit: wood, fromMemory: true });
  });

  test.each([
    [0.5, 'not touched'],
    [1, 'touched briefly'],
    [5, 'touched briefly'],
    [10, 'held briefly'],
    [60, 'held briefly'],
    [61, 'held'],
    [8 * 3600, 'held'],
    [8 * 3600 + 1, undefined],
  ] as const)('%f s is %s', (seconds, contact) => {
    expect(contactOfTime(seconds)).toBe(contact);
  });

  test('materials by their words', () => {
    expect(materialClasses('anodised aluminium')).toEqual(['metal']);
    expect(materialClasses('ABS')).toEqual(['plastic']);
    expect(materialClasses('rubber over steel')).toEqual(['metal', 'plastic']);
    expect(materialClasses('felt')).toEqual([]);
    expect(['steel', 'bare painted-over metal', 'Stainless steel'].map(isBareMetal)).toEqual([true, true, true]);
    expect(['painted steel', 'anodised aluminium', 'plastic', 'powder coated steel'].map(isBareMetal)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  test('the margin is the limit less the surface, in a room as warm as the limits mean', () => {
    const { figures } = figuresOf([LID, FOOT]);
    const margin = presentAt(figures, 'touch_margin.lid-centre');
    expect(margin.quantity.unit).toBe('K');
    // The room was at 23 °C: in one of 25 °C the lid would have been 2 K warmer.
    expect(apart(margin.quantity.value, 60 - presentAt(figures, 'surface.lid-centre').quantity.value - 2)).toBeLessThan(1e-12);
    expect(margin.of).toMatchObject({ limit_celsius: 60, contact: 'touched briefly (1 s to 10 s)', colder_than_reference_k: 2 });
    expect(told(figures, 'touch_margin.foot')).toBe('6.000');
    // A warmer room is left as it is: it errs on the side of care.
    expect(told(figuresOf([FOOT], { ambient: exactly(33) }).figures, 'touch_margin.foot')).toBe('8.000');
    // 40 °C in a room of 16 °C is 49 °C in one of 25 °C: past the limit of 48 °C, where the reading itself is 8 K below it.
    expect(told(figuresOf([FOOT], { ambient: exactly(16) }).figures, 'touch_margin.foot')).toBe('-1.000');
  });

  test.each([
    ['nobody touches it', FOOT.replace('held', 'none'), {}, 'no-condition'],
    ['longer than the table knows', FOOT.replace('held', '10 h'), {}, 'no-rating'],
    ['a material that the table lacks', FOOT.replace('rubber', 'felt'), {}, 'no-rating'],
    ['the spot is unread', FOOT.replace('rubber', 'steel'), {}, 'operand-absent'],
    ['the room is too far from the table’s', FOOT, { ambient: exactly(36) }, 'out-of-range'],
  ])('absent: %s', (_, row, context, code) => {
    expect(told(figuresOf([row], context).figures, 'touch_margin.foot')).toBe(code);
  });

  test('absent without an ambient', () => {
    const { ambient: _, ...context } = contextOf({ instruments: { camera } });
    const { figures } = derive(logOf(every(1, 60), {}), context, { surface: read([FOOT]).surface });
    expect(told(figures, 'touch_margin.foot')).toBe('no-condition');
  });

  test('a surface past its limit, or too near to tell, has its caution; one well below has none', () => {
    const done = (rows: string[]) => {
      const { context, derived } = figuresOf(rows);
      return mergeCautions(cautions(context, derived)).map(({ id, done }) => [id, ...done].join(': '));
    };
    expect(done([LID.replace('59.3', '70.0'), FOOT.replace('40.0', '44.0')])).toEqual([
      expect.stringMatching(/^hot-surface: These surfaces .*: Lid centre \(1\d\.\d.K over\), Foot \(2\.0.K below\)\.$/),
    ]);
    expect(done([FOOT.replace('40.0', '30.0')])).toEqual([]);
  });
});

describe('surface/read-surface', () => {
  const problems = (rows: readonly string[], head = HEAD) =>
    read(rows, head).problems.map(({ rule, place, found, expected, remedy }) =>
      [`${place.line}:${place.column} ${rule}: ${found}`, expected, remedy].filter(Boolean).join(' | '),
    );

  test('a whole table has no problems, whatever its marks and units', () => {
    expect(problems([LID, FOOT])).toEqual([]);
    const comma = read(['Lid;lid;plastic;5 s;59,3;0,95;0,85;23,4'], HEAD.replaceAll(',', ';'));
    expect(comma.problems).toEqual([]);
    expect(comma.surface.readings[0]).toMatchObject({ contact: 'touched briefly', reading: { value: 59.3 }, emissivitySet: 0.95 });
    const fahrenheit = read(['Lid,lid,plastic,held,122,0.95,0.95,20 °C'], HEAD.replace('reading [°C]', 'reading [°F]')).surface;
    expect(fahrenheit.readings[0]!.reading.value.toFixed(9)).toBe('50.000000000');
  });

  test('temperatures without a unit are taken as °C, and that is said', () => {
    const bare = read(['Lid,lid,plastic,held,40,0.95,0.95,23'], HEAD.replaceAll(' [°C]', ''));
    expect(bare.problems).toEqual([]);
    expect(bare.surface.inferred).toEqual(['Numbers without a unit in `reading` and `reflected` are taken as °C.']);
    expect(read([LID]).surface.inferred).toEqual([]);
  });

  test('each wrong cell is located, and its row left out', () => {
    const rows = [
      'Lid,lid,plastic,heldd,40,0.95,0.95,23',
      'Lid,lid,plastic,held,warm,0.95,0.95,23',
      'Lid,lid,plastic,held,40,0.95,1.2,23',
      'Lid,lid,plastic,held,,0.95,0.9,23',
      ',lid,plastic,held,40,0.95,0.9,23',
      'Lid,lid,plastic,held,40,0.95,0.9,23',
      'lid!,Lid,plastic,held,40,0.95,0.9,23',
    ];
    expect(problems(rows)).toEqual([
      '2:17 surface-contact: `contact` is `heldd` | `held`, `held briefly`, `touched briefly`, `not touched`, `none`, or a time such as 5 s | did you mean `held`?',
      '3:22 surface-reading: `reading` is `warm`: no number at "warm" | a value such as 59.3 °C',
      '4:30 surface-emissivity: `emissivity` is `1.2` | a number above 0, at most 1',
      '5:22 surface-reading: a spot without a reading | leave the row out, or give its reading',
      '6:1 surface-spot: no `spot` | words',
      '8:1 surface-spot: the spot `lid!` has the id `lid`, as `Lid` in line 7 has | where the table holds several settings or runs, say under `rows` which are meant; else give one spot another name or an `id`',
      '8:6 surface-part: the part is `Lid`, and `lid` in line 7 | spell it in one way',
    ]);
    expect(read(rows).surface.readings.map(({ line }) => line)).toEqual([7]);
  });
});
