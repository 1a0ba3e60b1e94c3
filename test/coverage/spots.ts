/** Spots of a case as a camera with errors of its own reads them, through emissivities and reflections that are stated nearly right. */
import type { RunContext } from '../../src/figures/context.ts';
import { derive } from '../../src/figures/derive.ts';
import { bandLaw } from '../../src/figures/surface/radiation.ts';
import type { SurfaceReading } from '../../src/figures/surface/surface-table.ts';
import { type Coverage, distributionOf, standardOfHalfWidth } from '../../src/quantities/coverage.ts';
import { contextOf, every, instrumentOf, logOf } from '../figures/build.ts';
import { quantise } from '../simulator/noise.ts';
import { random } from '../simulator/random.ts';
import { type Asked, count, emptyTally, type Tally } from './asked.ts';
import { heldAt } from './holds.ts';
import { type Errors, errorsOf } from './plan.ts';

export const SPOTS: Readonly<Record<string, Asked>> = {
  surface: {
    words: 'temperature of the spot, seen by a camera of another band than it is corrected for',
    kind: 'mean or fit',
  },
  touch_margin: { words: 'limit of painted metal, held briefly, less the temperature of the spot', kind: 'mean or fit' },
};

/** Limits, or expanded uncertainties, of camera, emissivity and reflected temperature. */
const CAMERA = 2;
const EMISSIVITY = 0.03;
const REFLECTED = 2;
const HELD_BRIEFLY = 51;
const ZERO_CELSIUS = 273.15;
/** Seeds of spots lie far from those of runs and benches. */
const SEEDS = 2_000_000;

/** Counts over one spot for each seed. */
export function tallySpots(seeds: readonly number[], errors: Errors): Tally {
  const tally = emptyTally(Object.keys(SPOTS));
  for (const seed of seeds) {
    const { context, reading, truth } = spotOf(seed, errors);
    const surface = { file: 'spots.csv', instrument: 'camera', readings: [reading], columns: [], inferred: [] };
    const { figures } = derive(logOf(every(1, 10), {}), context, { surface });
    count(tally, 'surface', heldAt(figures, 'surface.spot', truth));
    count(tally, 'touch_margin', heldAt(figures, 'touch_margin.spot', HELD_BRIEFLY - truth));
  }
  return tally;
}

function spotOf(seed: number, errors: Errors): { context: RunContext; reading: SurfaceReading; truth: number } {
  const draw = random(SEEDS + seed);
  const off = errorsOf(draw, errors);
  const between = (low: number, high: number) => low + (high - low) * draw.uniform();
  const truth = between(35, 75);
  const emissivity = between(0.8, 0.94);
  const reflected = between(18, 30);
  const emissivitySet = draw.uniform() < 0.5 ? 0.95 : 1;
  const law = bandLaw(between(7, 8.5), between(13, 14.5));
  const mirrored = law.radiance(reflected + ZERO_CELSIUS);
  const seen = mirrored + (emissivity / emissivitySet) * (law.radiance(truth + ZERO_CELSIUS) - mirrored);
  const shown = quantise(law.temperature(seen) - ZERO_CELSIUS + off.within(CAMERA), 0.1);
  const coverage: Coverage = errors === 'limits' ? 'rectangular' : { k: 2 };
  const stated = (value: number, half: number, step: number) => ({
    value: quantise(value + off.within(half), step),
    u: standardOfHalfWidth(half, coverage),
    ...distributionOf(coverage),
    step,
  });
  const reading: SurfaceReading = {
    line: 2,
    spot: 'spot',
    title: 'spot',
    part: { id: 'lid', title: 'lid' },
    material: 'painted steel',
    contact: 'held briefly',
    reading: { value: shown, u: null, step: 0.1 },
    emissivitySet,
    emissivity: stated(emissivity, EMISSIVITY, 0.001),
    reflected: stated(reflected, REFLECTED, 0.1),
    remedy: null,
  };
  const camera = instrumentOf('camera', 'temperature', { absolute: CAMERA, coverage });
  return { context: contextOf({ instruments: { camera }, ambient: { value: 24, unit: '°C', parts: [] } }), reading, truth };
}
