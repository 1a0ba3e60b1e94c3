/** How much a black surface radiates at a temperature, over all wavelengths or in the band that an infrared camera sees. */

/** BIPM, SI Brochure, 9th ed.: h, c and k are exact, so these are too, to the digits given. */
const STEFAN_BOLTZMANN = 5.670374419e-8;
/** Second radiation constant hc/k, µm·K. */
const C2 = 14387.76877504;

/** A law between temperature (kelvin) and what is radiated, in a unit of its own: only ratios are used. */
export interface RadiationLaw {
  /** For readers: "8 to 14 µm". */
  readonly band: string;
  readonly radiance: (kelvin: number) => number;
  /** Derivative of `radiance`. */
  readonly slope: (kelvin: number) => number;
  /** The inverse of `radiance`, for values above zero. */
  readonly temperature: (radiance: number) => number;
}

/** All wavelengths: T⁴ (Stefan and Boltzmann). */
export const TOTAL: RadiationLaw = {
  band: 'all wavelengths',
  radiance: (kelvin) => kelvin ** 4,
  slope: (kelvin) => 4 * kelvin ** 3,
  temperature: (radiance) => radiance ** 0.25,
};

/** Planck's law between two wavelengths, µm. Radiance is the exitance in W/m². */
export function bandLaw(from: number, to: number): RadiationLaw {
  const radiance = (kelvin: number) => STEFAN_BOLTZMANN * kelvin ** 4 * (fractionBelow(to * kelvin) - fractionBelow(from * kelvin));
  const slope = (kelvin: number) => STEFAN_BOLTZMANN * kelvin ** 3 * (growth(to * kelvin) - growth(from * kelvin));
  return { band: `${from} to ${to} µm`, radiance, slope, temperature: (wanted) => inverse(radiance, slope, wanted) };
}

/** The band of long-wave infrared cameras and thermometers. */
export const LONG_WAVE: RadiationLaw = bandLaw(8, 14);

/**
 * Share of a black body's radiation below a wavelength, from the product of wavelength and temperature, µm·K.
 * Source: J. R. Howell, M. P. Mengüç, R. Siegel, Thermal Radiation Heat Transfer, series of the blackbody fraction (from memory).
 */
export function fractionBelow(wavelengthTemperature: number): number {
  const z = C2 / wavelengthTemperature;
  let sum = 0;
  for (let n = 1; n <= 1000; n++) {
    const term = (Math.exp(-n * z) * (z ** 3 + (3 * z ** 2) / n + (6 * z) / n ** 2 + 6 / n ** 3)) / n;
    sum += term;
    if (term <= sum * 1e-17) break;
  }
  return (15 / Math.PI ** 4) * sum;
}

/** d(σT⁴F)/dT ÷ σT³: four times the fraction, and what the fraction itself gains. */
function growth(wavelengthTemperature: number): number {
  const z = C2 / wavelengthTemperature;
  return 4 * fractionBelow(wavelengthTemperature) + ((15 / Math.PI ** 4) * z ** 4) / Math.expm1(z);
}

const STEPS = 100;

/** Newton's iteration; the laws are convex and rise, so that from the second step on it comes down to the root. */
function inverse(radiance: (kelvin: number) => number, slope: (kelvin: number) => number, wanted: number): number {
  let kelvin = 300;
  for (let step = 0; step < STEPS; step++) {
    const next = Math.max(kelvin / 2, kelvin + (wanted - radiance(kelvin)) / slope(kelvin));
    if (Math.abs(next - kelvin) <= 1e-13 * kelvin) return next;
    kelvin = next;
  }
  return kelvin;
}
