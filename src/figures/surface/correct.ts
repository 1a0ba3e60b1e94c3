/** What a camera showed, and what the surface is: the correction for emissivity and for reflected radiation. */
import type { RadiationLaw } from './radiation.ts';

const ZERO_CELSIUS = 273.15;

/** A reading and what it was taken with. Temperatures in °C, emissivities from above 0 to 1. */
export interface CameraReading {
  readonly reading: number;
  /** As set in the camera. */
  readonly emissivitySet: number;
  /** As it is. */
  readonly emissivity: number;
  /** Apparent temperature of the surroundings that the surface mirrors, the same as set in the camera. */
  readonly reflected: number;
}

export interface Corrected {
  /** °C */
  readonly temperature: number;
  /** Partial derivatives of it: by reading and reflected temperature K/K, by emissivity K. */
  readonly by: { readonly reading: number; readonly emissivity: number; readonly reflected: number };
}

/**
 * Solves the measurement equation of infrared thermography for the object, air and window left out: the camera made
 * `W(T) = W_camera` of `W_camera·ε_set = ε·W(T_object) + (ε_set − ε)·W(T_reflected)`, hence
 *
 *     W(T_object) = W(T_reflected) + (ε_set / ε) · (W(T) − W(T_reflected))
 *
 * Null where that is not above zero: the surface would radiate less than nothing, so one of the statements is wrong.
 * Source: W. Minkina and S. Dudzik, Infrared Thermography: Errors and Uncertainties, 2009, as restated by Thermimage.
 */
export function correct({ reading, emissivitySet, emissivity, reflected }: CameraReading, law: RadiationLaw): Corrected | null {
  const [shown, mirrored] = [reading + ZERO_CELSIUS, reflected + ZERO_CELSIUS];
  const [seen, around] = [law.radiance(shown), law.radiance(mirrored)];
  const ratio = emissivitySet / emissivity;
  const own = around + ratio * (seen - around);
  if (!(own > 0)) return null;
  const kelvin = ratio === 1 || seen === around ? shown : law.temperature(own);
  const slope = law.slope(kelvin);
  return {
    temperature: kelvin - ZERO_CELSIUS,
    by: {
      reading: (ratio * law.slope(shown)) / slope,
      emissivity: (-(ratio / emissivity) * (seen - around)) / slope,
      reflected: ((1 - ratio) * law.slope(mirrored)) / slope,
    },
  };
}
