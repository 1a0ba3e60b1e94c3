/** Mean and 99th percentile of a region of a thermal image, corrected as a spot is. */
import { mean } from '../../statistics/mean.ts';
import { type Figure, isPresent } from '../figure.ts';
import type { Entry, Soak } from '../soak.ts';
import { correctionOf } from '../sources.ts';
import { correct } from './correct.ts';
import { percentile99 } from './in-image.ts';
import { LONG_WAVE } from './radiation.ts';
import { cameraOf, surfaceFigure } from './spot.ts';
import type { Surface, SurfaceReading } from './surface-table.ts';

/** `surface_mean` and `surface_percentile_99` of a region; nothing of a spot. */
export function regionFigures(soak: Soak, surface: Surface, spot: SurfaceReading): Entry[] {
  const { region, ...alone } = spot;
  if (!region) return [];
  const showing = (value: number): Figure => surfaceFigure(soak, surface, { ...alone, reading: { ...spot.reading, value } });
  const pixels = { pixels: region.values.length };
  const p99 = named('surface_percentile_99', showing(percentile99(region)), pixels);
  const middle = named('surface_mean', showing(mean(region.values)), pixels);
  const value = meanCorrected(soak, surface, spot);
  const whole = isPresent(middle) && value !== null ? { ...middle, quantity: { ...middle.quantity, value } } : middle;
  return [
    [`surface_mean.${spot.spot}`, whole],
    [`surface_percentile_99.${spot.spot}`, p99],
  ];
}

function named(name: 'surface_mean' | 'surface_percentile_99', figure: Figure, of: { readonly pixels: number }): Figure {
  if (!isPresent(figure)) return { ...figure, name };
  const { correction_k: _correction, ...known } = figure.of ?? {};
  return { ...figure, name, of: { ...known, ...of } };
}

/** The mean of the corrected pixels: that of the readings, corrected, lies below it by a few hundredths of a kelvin. */
function meanCorrected(soak: Soak, surface: Surface, spot: SurfaceReading): number | null {
  const { emissivity, emissivitySet, reflected, region } = spot;
  if (emissivity === null || emissivitySet === null || reflected === null || !region) return null;
  const added = correctionOf(soak.context, cameraOf(surface, spot))?.value ?? 0;
  const seen = { emissivity: emissivity.value, emissivitySet, reflected: reflected.value };
  // Many pixels read the same, and each correction takes an iteration.
  const known = new Map<number, number | null>();
  const values: number[] = [];
  for (const reading of region.values) {
    const corrected = known.get(reading) ?? correct({ ...seen, reading: reading + added }, LONG_WAVE)?.temperature ?? null;
    if (corrected === null) return null;
    known.set(reading, corrected);
    values.push(corrected);
  }
  return mean(values);
}
