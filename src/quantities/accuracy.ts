/** An instrument's accuracy as data sheets state it: `0.5 % + 2 digits`, `± 0.5 °C`. */

/** Limits (rectangular unless `coverage` says otherwise): the sum of the terms bounds the error. */
export interface Accuracy {
  /** Share of the reading: 0.005 for 0.5 %. */
  readonly ofReading: number;
  /** Absolute limit in the canonical unit (K for temperatures). */
  readonly absolute: number;
  /** Number of last digits of the display; times the resolution. */
  readonly digits: number;
  /** How the limits turn into a standard uncertainty: ÷ √3, ÷ k, or as they are. */
  readonly coverage: 'rectangular' | 'standard' | { readonly k: number };
  /** As the author wrote it. */
  readonly text: string;
}
