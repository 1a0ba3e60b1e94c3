/** Regions of thermal images: cameras with errors and noise of their own, emissivities and surroundings that are stated nearly right. */
import { derive } from '../../../src/figures/derive.ts';
import { regionOf } from '../../../src/figures/surface/in-image.ts';
import type { Matrix } from '../../../src/figures/surface/matrix.ts';
import { bandLaw } from '../../../src/figures/surface/radiation.ts';
import type { SurfaceReading } from '../../../src/figures/surface/surface-table.ts';
import { quantile } from '../../../src/statistics/quantile.ts';
import { contextOf, every, instrumentOf, logOf } from '../../figures/build.ts';
import { quantise } from '../../simulator/noise.ts';
import type { Cell, Family, Trial } from '../family.ts';

const ZERO_CELSIUS = 273.15;
const PIXELS = { width: 40, height: 30 };
/** The region: all of the image but its border. */
const BOX = { x: [0.1, 0.9], y: [0.1, 0.9] } as const;
const CAMERA = 2;
const EMISSIVITY = 0.05;
const REFLECTED = 1;
const SURROUNDINGS = 23;

interface Made {
  /** Standard deviation of a pixel, K. */
  readonly noise: number;
  /** Limits of the camera, K. */
  readonly camera: number;
}

function simulate({ noise, camera }: Made, { setting, noise: chance, run }: Trial) {
  const law = bandLaw(7.5 + setting.uniform(), 13 + 1.5 * setting.uniform());
  const stated = 0.8 + 0.1 * setting.uniform();
  const emissivity = stated + setting.within(EMISSIVITY);
  const around = SURROUNDINGS + chance.within(REFLECTED);
  const offset = setting.within(camera);
  const [peak, cx, cy] = [45 + 25 * setting.uniform(), 0.35 + 0.3 * setting.uniform(), 0.35 + 0.3 * setting.uniform()];
  const truth = Float64Array.from({ length: PIXELS.width * PIXELS.height }, (_, index) => {
    const x = ((index % PIXELS.width) + 0.5) / PIXELS.width - cx;
    const y = (Math.floor(index / PIXELS.width) + 0.5) / PIXELS.height - cy;
    return peak - 40 * (x * x + y * y);
  });
  const W = (celsius: number) => law.radiance(celsius + ZERO_CELSIUS);
  const seen = truth.map((celsius) => {
    const shown = law.temperature(W(around) + (emissivity / 0.95) * (W(celsius) - W(around))) - ZERO_CELSIUS;
    return quantise(shown + offset + noise * chance.normal(), 0.1);
  });
  const matrix: Matrix = { file: 'image.csv', ...PIXELS, values: seen, step: 0.1, others: 0 };
  const region = regionOf(matrix, BOX)!;
  const within = (u: number) => ({ u: u / Math.sqrt(3), distribution: 'rectangular' as const, step: 0 });
  const reading: SurfaceReading = {
    line: 2,
    spot: 'lid',
    title: 'Lid',
    part: { id: '', title: '' },
    material: 'painted steel',
    contact: 'held briefly',
    reading: { value: Math.max(...region.values), u: null, step: 0.1 },
    emissivitySet: 0.95,
    emissivity: { value: stated, ...within(EMISSIVITY) },
    reflected: { value: SURROUNDINGS, ...within(REFLECTED) },
    remedy: null,
    at: region.hottest,
    region,
  };
  const surface = { file: 'spots.csv', instrument: 'camera', readings: [reading], columns: [], inferred: [], image: matrix };
  const context = contextOf({ run, instruments: { camera: instrumentOf('camera', 'temperature', { absolute: camera }) } });
  const { figures } = derive(logOf(every(1, 10), {}), context, { surface });
  const own = regionOf({ ...matrix, values: truth }, BOX)!.values;
  return [
    { asked: 'surface.lid', figure: figures.get('surface.lid'), truth: Math.max(...own) },
    {
      asked: 'surface_mean.lid',
      figure: figures.get('surface_mean.lid'),
      truth: own.reduce((sum, each) => sum + each, 0) / own.length,
    },
    {
      asked: 'surface_percentile_99.lid',
      figure: figures.get('surface_percentile_99.lid'),
      truth: quantile(own, 0.99),
    },
  ];
}

function cell(name: string, made: Made, more: Partial<Cell> = {}): Cell {
  return { name, simulate: (trial) => simulate(made, trial), ...more };
}

export const FAMILY: Family = {
  title: 'Regions of thermal images',
  words:
    'A camera of a long-wave band of its own, set to 0.95, sees a surface that is hottest in one place and falls by some kelvins around it. Its offset, the emissivity of the surface and the reflected temperature lie anywhere within what is stated of them; each pixel has noise of its own and is rounded to 0.1 K. The truths are the hottest, the mean and the 99th percentile of the surface itself.',
  trials: 600,
  quick: 100,
  cells: [
    cell('limits of 2 K, noise of 0.06 K', { noise: 0.06, camera: CAMERA }, { quick: true }),
    cell('limits of 2 K, noise of 0.3 K', { noise: 0.3, camera: CAMERA }),
    cell('limits of 0.5 K, noise of 0.06 K', { noise: 0.06, camera: 0.5 }, { quick: true }),
    cell('limits of 0.5 K, noise of 0.3 K', { noise: 0.3, camera: 0.5 }),
  ],
};
