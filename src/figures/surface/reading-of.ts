/** What a camera shows of a surface at a temperature: the inverse of the correction. */
import type { RunContext } from '../context.ts';
import { correctionOf } from '../sources.ts';
import { correct } from './correct.ts';
import { LONG_WAVE } from './radiation.ts';
import { cameraOf } from './spot.ts';
import type { Surface, SurfaceReading } from './surface-table.ts';

const STEPS = 60;

/** °C, for the emissivities and the reflected temperature of a row; null where they are not stated or no reading gives the temperature. */
export function readingOf(context: RunContext, surface: Surface, row: SurfaceReading, temperature: number): number | null {
  const { emissivity, emissivitySet, reflected } = row;
  if (emissivity === null || emissivitySet === null || reflected === null) return null;
  const added = correctionOf(context, cameraOf(surface, row))?.value ?? 0;
  const seen = { emissivity: emissivity.value, emissivitySet, reflected: reflected.value };
  const shown = (reading: number) =>
    correct({ ...seen, reading: reading + added }, LONG_WAVE)?.temperature ?? Number.NEGATIVE_INFINITY;
  // The correction rises with the reading, so halving finds it.
  let [low, high] = [reflected.value - 200, temperature + 500];
  if (shown(low) > temperature || shown(high) < temperature) return null;
  for (let step = 0; step < STEPS; step += 1) {
    const middle = (low + high) / 2;
    if (shown(middle) < temperature) low = middle;
    else high = middle;
  }
  return high;
}
