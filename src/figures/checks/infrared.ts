/** The correction for emissivity against worked examples that others published. */
import { type Corrected, correct } from '../surface/correct.ts';
import { type RadiationLaw, TOTAL } from '../surface/radiation.ts';
import { CONTACTS, touchLimit } from '../surface/touch-limits.ts';
import { asPrinted, type Check, type CheckedValue, toDigits } from './check.ts';

const ZERO_CELSIUS = 273.15;

export const INFRARED_CHECKS: readonly Check[] = [
  {
    id: 'infrared-data-sheet',
    title: 'Worked example of the data sheet of an infrared sensor: surroundings and object, T⁴ with a reflected term',
    source: 'data sheet of the MLX90640, as the test suites of several public drivers quote it',
    compare: sensorExample,
  },
  {
    id: 'infrared-camera',
    title: "A camera's raw signals with its own calibration constants, through air and a window",
    source: 'README and help of Thermimage for R (which cites Minkina and Dudzik, 2009): 17994.06 and 18109 counts',
    compare: cameraExample,
  },
  {
    id: 'touch-limits',
    title: 'Touch temperature limits of metal and of plastic, °C, by contact',
    source:
      'IEC 62368-1, class TS1 (Table 38 of the 2014 and later editions), as two public repositories quote a technical brief on it; the standard itself was not open to us',
    compare: limits,
  },
];

const seen = (reading: number, emissivitySet: number, emissivity: number, reflected: number) => ({
  reading,
  emissivitySet,
  emissivity,
  reflected,
});

/** The sensor sees an object through what its surroundings radiate: T_a-r = Tr⁴ − (Tr⁴ − Ta⁴)/ε, Ta 39.184 °C, Tr 31 °C. */
function sensorExample(): CheckedValue[] {
  const surrounding = TOTAL.radiance(known(correct(seen(39.184, 1, 1, 31), TOTAL)).temperature + ZERO_CELSIUS);
  const [signal, alpha, ksTo] = [679.250909123826, 1.1876487360496e-7, -0.00080108642578125];
  const sx = ksTo * (alpha ** 3 * signal + alpha ** 4 * surrounding) ** 0.25;
  const object = signal / (alpha * (1 - ZERO_CELSIUS * ksTo) + sx) + surrounding;
  return [
    toDigits('radiation of the surroundings, K⁴', '9516495632.56', surrounding, 11),
    asPrinted('temperature of the object, °C', '80.36331', TOTAL.temperature(object) - ZERO_CELSIUS),
  ];
}

/** Planck's law with the constants of one camera: signal and kelvin. */
const [R1, B, F, O, R2] = [21106.77, 1501, 1, -7340, 0.012545258];
const CAMERA: RadiationLaw = {
  band: 'of the camera',
  radiance: (kelvin) => R1 / (R2 * (Math.exp(B / kelvin) - F)),
  slope: (kelvin) => (R1 * B * Math.exp(B / kelvin)) / (R2 * (Math.exp(B / kelvin) - F) ** 2 * kelvin ** 2),
  temperature: (radiance) => B / Math.log(R1 / (R2 * radiance) + F),
};

function cameraExample(): CheckedValue[] {
  const celsius = (signal: number) => CAMERA.temperature(signal + O) - ZERO_CELSIUS;
  const air = transmission(20, 0.5, 1);
  // With everything around at one temperature, air and window act as a lower emissivity does.
  const behind = (signal: number) => known(correct(seen(celsius(signal), 1, 0.95 * 0.96 * air * air, 20), CAMERA)).temperature;
  return [
    asPrinted('17994.06 counts: emissivity 0.95, 1 m, window 0.96, °C', '23.31223', behind(17994.06)),
    asPrinted('23 °C, emissivity 1, 0 m, counts', '17994.06', CAMERA.radiance(23 + ZERO_CELSIUS) - O),
  ];
}

/** Transmission of half of a path of air, as Thermimage has it: °C, relative humidity, m. */
function transmission(air: number, humidity: number, distance: number): number {
  const water = humidity * Math.exp(1.5587 + 0.06939 * air - 0.00027816 * air ** 2 + 0.00000068455 * air ** 3);
  const part = (alpha: number, beta: number) => Math.exp(-Math.sqrt(distance / 2) * (alpha + beta * Math.sqrt(water)));
  return 1.9 * part(0.006569, -0.002276) + (1 - 1.9) * part(0.01262, -0.00667);
}

const METAL = ['48', '51', '60', '70'];
const PLASTIC = ['48', '60', '77', '94'];

function limits(): CheckedValue[] {
  return (['metal', 'plastic'] as const).flatMap((material) =>
    CONTACTS.map((contact, k) =>
      asPrinted(`${material}, ${contact}`, (material === 'metal' ? METAL : PLASTIC)[k]!, touchLimit(contact, [material])!.limit),
    ),
  );
}

function known(corrected: Corrected | null): Corrected {
  if (corrected === null) throw new Error('a published example that cannot be');
  return corrected;
}
