import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { readMatrix } from '../../../src/figures/surface/matrix.ts';
import { readSurface } from '../../../src/figures/surface/read-surface.ts';
import { draw } from '../../../src/plots/draw.ts';
import { indexedPng } from '../../../src/plots/drawing/indexed-png.ts';
import { heatColours } from '../../../src/plots/thermal/colours.ts';
import { contours } from '../../../src/plots/thermal/contour.ts';
import { planThermal } from '../../../src/plots/thermal/plan.ts';
import type { PlotRequest } from '../../../src/register/requests.ts';
import { contextOf, every, instrumentOf, logOf } from '../../figures/build.ts';
import { LID, thermalImage } from '../../simulator/demo-image.ts';

const camera = instrumentOf('camera', 'temperature', { ofReading: 0.02, absolute: 2, larger: true });
const place = { file: 'content/notes/n.md', line: 7, column: 1 };
const request = (...runs: string[]): PlotRequest => ({
  kind: 'thermal',
  id: 'thermal',
  runs: runs.map((alias, slot) => ({ alias, run: alias, slot })),
  channels: [],
  rise: false,
  place,
});

/** A run whose lid reads so many degrees in its middle. */
function subject(alias: string, centre: number) {
  const bytes = (text: string) => new TextEncoder().encode(text);
  const image = readMatrix(bytes(thermalImage({ room: 23, centre, edge: centre - 5, socket: 35 }, 7)), 'data/t.csv').matrix!;
  const within = `${LID.x.map((x) => Math.round(100 * x)).join(' .. ')} % by ${LID.y.map((y) => Math.round(100 * y)).join(' .. ')} %`;
  const table = [
    'spot,material,contact,reading [°C],emissivity_set,emissivity,reflected [°C],at,within',
    `Lid,anodised aluminium,touched briefly,,0.95,0.85 ± 0.05,23 ± 1,,${within}`,
    'Socket,plastic,touched briefly,,0.95,0.93 ± 0.03,23 ± 1,90 % by 90 %,',
    '',
  ].join('\n');
  const { surface } = readSurface(bytes(table), 'data/s.csv', 'camera', undefined, image);
  const context = contextOf({ instruments: { camera }, ambient: { value: 25, unit: '°C', parts: [] } });
  const log = logOf(every(1, 600), {});
  return { alias, title: alias, log, derived: derive(log, context, { surface }), context, surface };
}

describe('plots/thermal', () => {
  it('draws runs on one scale, with corrected temperatures and the isotherm of the touch limit', async () => {
    const [cool, warm] = [subject('rated', 45), subject('fast', 60)];
    const drawn = await draw(request('rated', 'fast'), [cool, warm], 'p');
    expect(drawn.problems).toEqual([]);
    const lid = warm.derived.figures.get('surface.lid')!;
    const shown = isPresent(lid) ? lid.quantity.value : Number.NaN;
    expect(drawn.csv).toContain(`fast,lid,`);
    expect(drawn.csv).toContain(String(Number(shown.toPrecision(10))));
    expect(drawn.title).toMatch(/^Lid, hottest of the thermal image: rated \d+\.\d\u00a0°C and fast \d+\.\d\u00a0°C$/);
    for (const svg of [drawn.wide, drawn.narrow]) {
      expect(svg.match(/<image /g)).toHaveLength(3);
      expect(svg).not.toMatch(/style=|xlink|NaN/);
      expect(svg.match(/>touch limit</g)).toHaveLength(1);
      expect(svg).toContain(drawn.table.rows.find(([run, spot]) => run === 'fast' && spot === 'Lid')![2]);
    }
    // One temperature, one colour: the same place of two images differs only as its reading does.
    expect((await draw(request('rated', 'fast'), [cool, warm], 'p')).svg).toBe(drawn.svg);
  });

  it('refuses a run without an image, at the request', () => {
    const { surface: _none, ...bare } = subject('rated', 45);
    const planned = planThermal(request('rated'), [bare]);
    expect(planned).toMatchObject([{ rule: 'no-image', place, found: '`rated` has no thermal image to draw' }]);
  });
});

/** CIE 1976 lightness of an sRGB colour. Source: IEC 61966-2-1 and CIE 15 (from memory). */
function lightness(colour: readonly number[]): number {
  const [r = 0, g = 0, b = 0] = colour.map((each) => {
    const share = each / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return y > 216 / 24_389 ? 116 * Math.cbrt(y) - 16 : (y * 24_389) / 27;
}

describe('thermal/colours', () => {
  it('get lighter evenly, so that they read in grey', () => {
    const light = heatColours().map(lightness);
    expect(light[0]).toBeLessThan(3);
    expect(light.at(-1)).toBeGreaterThan(95);
    const steps = light.slice(1).map((each, index) => each - light[index]!);
    expect(Math.min(...steps)).toBeGreaterThan(-0.2);
    // Over sixteenths of the scale the steps are of one size to a third.
    const sixteenths = Array.from({ length: 15 }, (_, part) => light[(part + 1) * 16]! - light[part * 16]!);
    const mean = sixteenths.reduce((sum, each) => sum + each, 0) / 15;
    expect(sixteenths.every((each) => Math.abs(each - mean) < mean / 2)).toBe(true);
  });
});

describe('thermal/contour', () => {
  const grid = (width: number, height: number, at: (x: number, y: number) => number) => ({ width, height, at });

  it('of a cone is a circle, closed', () => {
    const lines = contours(
      grid(41, 41, (x, y) => 20 - Math.hypot(x - 20, y - 20)),
      7.9,
    );
    expect(lines).toHaveLength(1);
    const [line] = lines as [[number, number][]];
    for (const [x, y] of line) expect(Math.abs(Math.hypot(x - 20.5, y - 20.5) - 12.1)).toBeLessThan(0.05);
    expect(line[0]![0]).toBeCloseTo(line.at(-1)![0], 9);
    expect(line[0]![1]).toBeCloseTo(line.at(-1)![1], 9);
  });

  it('of a slope is a straight line, and of nothing none', () => {
    const [line] = contours(
      grid(10, 10, (x) => x),
      4.25,
    ) as [[number, number][]];
    expect(line.every(([x]) => Math.abs(x - 4.75) < 1e-12)).toBe(true);
    expect(
      contours(
        grid(10, 10, () => 3),
        4,
      ),
    ).toEqual([]);
  });
});

describe('drawing/indexed-png', () => {
  it('is a PNG that other programs read', async () => {
    const colours = heatColours();
    const url = indexedPng(3, 2, Uint8Array.from([0, 128, 255, 255, 0, 1]), colours);
    const { data, info } = await sharp(Buffer.from(url.split(',')[1]!, 'base64'))
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([3, 2]);
    expect([...data.subarray(3, 6)]).toEqual([...colours[128]!]);
    const large = indexedPng(400, 300, new Uint8Array(120_000), colours);
    expect((await sharp(Buffer.from(large.split(',')[1]!, 'base64')).metadata()).width).toBe(400);
  });
});
