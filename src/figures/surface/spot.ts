/** The temperature of one spot: its reading corrected, with all that makes it uncertain. */
import type { Part, Source } from '../../quantities/quantity.ts';
import { absent, type Reason } from '../absent.ts';
import { rangeWords } from '../accurate-range.ts';
import type { Figure, From } from '../figure.ts';
import { plain } from '../in-words.ts';
import type { Soak } from '../soak.ts';
import { correctionOf, errorsOf, instrumentOf, limitsOf, quantityOf, type Sensor, scaled, stepOf } from '../sources.ts';
import type { StatedNumber } from '../table-cells.ts';
import { type CameraReading, type Corrected, correct } from './correct.ts';
import { isBareMetal } from './material.ts';
import { LONG_WAVE, TOTAL } from './radiation.ts';
import type { Surface, SurfaceReading } from './surface-table.ts';

/** Below this emissivity more than half of what a camera sees comes from elsewhere: common practice, no source. */
const LOWEST_EMISSIVITY = 0.5;

/** `surface` of a spot, or the reason why its reading says nothing. */
export function surfaceFigure(soak: Soak, surface: Surface, spot: SurfaceReading): Figure {
  const camera = cameraOf(surface, spot);
  const correction = correctionOf(soak.context, camera);
  const seen = seenOf(spot, correction?.value ?? 0);
  if ('absent' in seen) return absent('surface', { ...seen, of: spotOf(spot) });
  const corrected = correct(seen, LONG_WAVE);
  if (corrected === null) return absent('surface', { ...IMPOSSIBLE, of: spotOf(spot) });
  const { temperature, by } = corrected;
  const parts = partsOf(soak, camera, spot, seen, corrected);
  const title = instrumentOf(soak.context, camera)?.title;
  const corrections = correction ? [`The reading by ${title} was corrected by ${correction.text}.`] : [];
  const inferred = [...surface.inferred, ...corrections];
  const step = stepOf(soak.context, camera) * Math.abs(by.reading);
  const quantity = quantityOf(temperature, '°C', parts ?? [], { stated: true, step });
  return {
    name: 'surface',
    quantity: parts === null ? { ...quantity, parts: null } : quantity,
    from: fromOf(surface, [spot]),
    ...(inferred.length > 0 ? { inferred } : {}),
    of: {
      ...spotOf(spot),
      ...rangeWords(soak.context, camera, seen.reading),
      emissivity: seen.emissivity,
      emissivity_set: seen.emissivitySet,
      reflected_celsius: seen.reflected,
      correction_k: temperature - seen.reading,
      band: LONG_WAVE.band,
    },
  };
}

const AS_IT_SAYS = 'as the camera says, without correction for emissivity';

/**
 * `camera_reading` of a spot of which the table does not state what a correction takes: what the camera showed, marked as that; absent of
 * bare metal, which shows its surroundings. Null where `surface` says all there is.
 */
export function cameraReading(soak: Soak, surface: Surface, spot: SurfaceReading): Figure | null {
  const { reading, emissivitySet, emissivity, reflected } = spot;
  if (emissivitySet !== null && emissivity !== null && reflected !== null) return null;
  const mirrors = mirrorOf(spot);
  if (mirrors) return absent('camera_reading', { ...mirrors, of: spotOf(spot) });
  const camera = cameraOf(surface, spot);
  const correction = correctionOf(soak.context, camera);
  const value = reading.value + (correction?.value ?? 0);
  const errors = errorsOf(soak.context, camera, value);
  const inferred = [
    ...surface.inferred,
    ...(correction ? [`The reading by ${instrumentOf(soak.context, camera)?.title} was corrected by ${correction.text}.`] : []),
  ];
  const quantity = quantityOf(value, '°C', errors.parts, { stated: errors.stated, step: stepOf(soak.context, camera) });
  return {
    name: 'camera_reading',
    quantity: errors.stated ? quantity : { ...quantity, parts: null },
    from: fromOf(surface, [spot]),
    ...(inferred.length > 0 ? { inferred } : {}),
    of: { ...spotOf(spot), ...rangeWords(soak.context, camera, value), stands_in: AS_IT_SAYS },
  };
}

/** What read a spot. */
export function cameraOf({ instrument }: Surface, { reading }: SurfaceReading): Sensor {
  return { quantity: 'temperature', step: reading.step, ...(instrument === undefined ? {} : { instrument }) };
}

const IMPOSSIBLE: Reason = {
  absent: 'out-of-range',
  why: 'With the stated emissivity and reflected temperature the surface would radiate less than nothing: one of them is wrong.',
};

/** Which spot it is, for addresses and readers. */
export function spotOf({ spot, title, part, material, remedy }: SurfaceReading) {
  return {
    spot,
    spot_title: title,
    ...(part.title === '' ? {} : { part: part.title }),
    ...(material === '' ? {} : { material }),
    ...(remedy === null ? {} : { remedy }),
  };
}

/** Columns and lines of some spots. */
export function fromOf(surface: Surface, spots: readonly SurfaceReading[]): From {
  const lines = spots.map(({ line }) => line);
  return { columns: surface.columns, rows: [Math.min(...lines), Math.max(...lines)], file: surface.file };
}

function mirrorOf({ remedy, material, title }: SurfaceReading): Reason | null {
  if (remedy !== null || !isBareMetal(material)) return null;
  return {
    absent: 'low-emissivity',
    why: `${title} is bare metal (${material}), which mirrors its surroundings: a camera reads them, not the metal. Tape or paint the spot and state that in \`remedy\`.`,
  };
}

function seenOf(spot: SurfaceReading, correction: number): CameraReading | Reason {
  const { reading, emissivitySet, emissivity, reflected, title } = spot;
  const mirrors = mirrorOf(spot);
  if (mirrors) return mirrors;
  const missing = [
    ...(emissivitySet === null ? ['the emissivity set in the camera'] : []),
    ...(emissivity === null ? ['the emissivity of the surface'] : []),
    ...(reflected === null ? ['the reflected temperature'] : []),
  ];
  if (emissivitySet === null || emissivity === null || reflected === null) {
    return { absent: 'no-condition', why: `The row of ${title} does not state ${missing.join(' and ')}.` };
  }
  if (emissivity.value < LOWEST_EMISSIVITY) {
    return {
      absent: 'low-emissivity',
      why: `The emissivity of ${title} is ${plain(emissivity.value)}: more than half of what the camera saw came from elsewhere. Tape or paint the spot, and state that in \`remedy\` with the emissivity of the tape or paint.`,
    };
  }
  return { reading: reading.value + correction, emissivitySet, emissivity: emissivity.value, reflected: reflected.value };
}

/** Parts by source; null where camera, emissivity or reflected temperature state no uncertainty. */
function partsOf(
  soak: Soak,
  camera: Sensor,
  spot: SurfaceReading,
  seen: CameraReading,
  { temperature, by }: Corrected,
): Part[] | null {
  const { context } = soak;
  const errors = errorsOf(context, camera, seen.reading);
  const { emissivity, reflected, region } = spot;
  if (!errors.stated || unstated(emissivity, by.emissivity) || unstated(reflected, by.reflected)) return null;
  const coated = `device:${context.device.id}/${context.specimen}/surface.${spot.spot}/emissivity`;
  const part = (id: string, title: string, share: number, distribution: Pick<Source, 'distribution'>): Part => ({
    source: { id, title, dof: null, ...distribution },
    share,
  });
  const byTotal = correct(seen, TOTAL);
  const model = byTotal === null ? 0 : (temperature - byTotal.temperature) / Math.sqrt(3);
  return [
    ...scaled(errors.parts, by.reading),
    part(coated, `emissivity of ${spot.title} on ${context.specimen}`, by.emissivity * (emissivity?.u ?? 0), limitsOf(emissivity)),
    part(
      `run:${context.run}/surface/reflected`,
      `reflected temperature in ${context.run}`,
      by.reflected * (reflected?.u ?? 0),
      limitsOf(reflected),
    ),
    part(`instrument:${camera.instrument}/temperature/band`, `wavelengths that ${camera.instrument} sees`, model, {
      distribution: 'rectangular',
    }),
    ...(region
      ? [
          part(
            `run:${context.run}/surface.${spot.spot}/pixel`,
            `one pixel of the image of ${context.run}`,
            (by.reading * region.standsOut) / Math.sqrt(3),
            { distribution: 'rectangular' },
          ),
        ]
      : []),
  ];
}

/** A statement without uncertainty that changes the result. */
function unstated(number: StatedNumber | null, sensitivity: number): boolean {
  return number?.u === null && sensitivity !== 0;
}
