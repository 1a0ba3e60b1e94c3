/** Inputs of worked examples of JCGM 100:2008 (the GUM), from memory except where a line says otherwise. */

/** Table 1 of 4.4.3: temperatures in °C. */
export const TWENTY_TEMPERATURES: readonly number[] = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2, 101.57,
  101.84, 102.36, 102.72,
];

/** Table H.2: five simultaneous readings in V, A, rad (voltages as in the public repository MSLNZ/GTC, `GTC/type_a.py`). */
export const VOLTAGES: readonly number[] = [5.007, 4.994, 5.005, 4.99, 4.999];
export const CURRENTS: readonly number[] = [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3];
export const PHASES: readonly number[] = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];

/** Table H.6: thermometer readings in °C and their corrections in °C (as in MSLNZ/GTC, `examples/GUM_H3.py`). */
export const READINGS: readonly number[] = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
export const CORRECTIONS: readonly number[] = [
  -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16,
];
