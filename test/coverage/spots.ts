/** Spots of a case as a camera with errors of its own reads them, through emissivities and reflections that are stated nearly right. */
import type { RunContext } from '../../src/figures/context.ts';
import { derive } from '../../src/figures/derive.ts';
import { bandLaw, type RadiationLaw } from '../../src/figures/surface/radiation.ts';
import type { SurfaceReading } from '../../src/figures/surface/surface-table.ts';
import { type Coverage, distributionOf, standardOfHalfWidth } from '../../src/quantities/coverage.ts';
import { contextOf, every, instrumentOf, logOf } from '../figures/build.ts';
import { quantise } from '../simulator/noise.ts';
import { type Random, random } from '../simulator/random.ts';
import { type Asked, count, emptyTally, type Tally } from './asked.ts';
import { heldAt } from './holds.ts';
import { type Errors, errorsOf } from './plan.ts';

export const SPOTS: Readonly<Record<string, Asked>> = {
  surface: {
    words: 'temperature of the spot, seen by a camera of another band than it is corrected for',
    kind: 'mean or fit',
  },
  hottest_surface: { words: 'highest temperature of three spots that lie up to 10 K apart, read by one camera', kind: 'extreme' },
  touch_margin: {
    words: 'limit of painted metal, held briefly, less the temperature that the spot would have in a room of 25 °C',
    kind: 'mean or fit',
  },
};

/** Limits, or expanded uncertainties, of camera, emissivity and reflected temperature. */
const CAMERA = 2;
const EMISSIVITY = 0.03;
const REFLECTED = 2;
const HELD_BRIEFLY = 51;
/** °C: the room of the case, and the one that limits mean; its rise is the same in both. */
const ROOM = 24;
const REFERENCE = 25;
const ZERO_CELSIUS = 273.15;
/** Seeds of spots lie far from those of runs and benches. */
const SEEDS = 2_000_000;

/** Counts over one case with three spots for each seed. */
export function tallySpots(seeds: readonly number[], errors: Errors): Tally {
  const tally = emptyTally(Object.keys(SPOTS));
  for (const seed of seeds) {
    const draw = random(SEEDS + seed);
    const about = 40 + 30 * draw.uniform();
    const camera = cameraOf(draw, errors);
    const spots = ['left', 'middle', 'right'].map((name) => spotOf(name, about + 10 * draw.uniform(), camera, errors, draw));
    const surface = {
      file: 'spots.csv',
      instrument: 'camera',
      readings: spots.map(({ reading }) => reading),
      columns: [],
      inferred: [],
    };
    const { figures } = derive(logOf(every(1, 10), {}), contextFor(errors), { surface });
    const [{ truth }] = spots as [Spot, Spot, Spot];
    count(tally, 'surface', heldAt(figures, 'surface.left', truth));
    count(tally, 'hottest_surface', heldAt(figures, 'hottest_surface', Math.max(...spots.map((spot) => spot.truth))));
    count(tally, 'touch_margin', heldAt(figures, 'touch_margin.left', HELD_BRIEFLY - (truth + REFERENCE - ROOM)));
  }
  return tally;
}

interface Spot {
  readonly reading: SurfaceReading;
  readonly truth: number;
}

interface Camera {
  readonly law: RadiationLaw;
  readonly offset: number;
  readonly emissivitySet: number;
}

function cameraOf(draw: Random, errors: Errors): Camera {
  const between = (low: number, high: number) => low + (high - low) * draw.uniform();
  const law = bandLaw(between(7, 8.5), between(13, 14.5));
  return { law, offset: errorsOf(draw, errors).within(CAMERA), emissivitySet: draw.uniform() < 0.5 ? 0.95 : 1 };
}

const coverageOf = (errors: Errors): Coverage => (errors === 'limits' ? 'rectangular' : { k: 2 });

function contextFor(errors: Errors): RunContext {
  const camera = instrumentOf('camera', 'temperature', { absolute: CAMERA, coverage: coverageOf(errors) });
  return contextOf({ instruments: { camera }, ambient: { value: ROOM, unit: '°C', parts: [] } });
}

function spotOf(name: string, truth: number, { law, offset, emissivitySet }: Camera, errors: Errors, draw: Random): Spot {
  const off = errorsOf(draw, errors);
  const emissivity = 0.8 + 0.14 * draw.uniform();
  const reflected = 18 + 12 * draw.uniform();
  const mirrored = law.radiance(reflected + ZERO_CELSIUS);
  const seen = mirrored + (emissivity / emissivitySet) * (law.radiance(truth + ZERO_CELSIUS) - mirrored);
  const shown = quantise(law.temperature(seen) - ZERO_CELSIUS + offset, 0.1);
  const coverage = coverageOf(errors);
  const stated = (value: number, half: number, step: number) => ({
    value: quantise(value + off.within(half), step),
    u: standardOfHalfWidth(half, coverage),
    ...distributionOf(coverage),
    step,
  });
  const reading: SurfaceReading = {
    line: 2,
    spot: name,
    title: name,
    part: { id: 'lid', title: 'lid' },
    material: 'painted steel',
    contact: 'held briefly',
    reading: { value: shown, u: null, step: 0.1 },
    emissivitySet,
    emissivity: stated(emissivity, EMISSIVITY, 0.001),
    reflected: stated(reflected, REFLECTED, 0.1),
    remedy: null,
  };
  return { reading, truth };
}
