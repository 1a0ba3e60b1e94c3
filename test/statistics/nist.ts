/** Reads a data set of src/figures/checks/nist; its README names NIST as source. */
import { readFileSync } from 'node:fs';

export interface Certified {
  readonly params: readonly number[];
  readonly sd: readonly number[];
  readonly rss: number;
  readonly residualSd: number;
  readonly rSquared: number;
  readonly df: number;
  readonly mean: number;
  readonly stdDev: number;
  readonly lag1: number;
}

export interface NistSet {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly starts: readonly (readonly number[])[];
  readonly certified: Certified;
}

export function nist(name: string): NistSet {
  return read(name) as NistSet;
}

/** The two samples of AUTO83B: miles per gallon of 249 and of 79 cars. */
export function autoMileage(): { readonly us: readonly number[]; readonly japan: readonly number[] } {
  return read('AUTO83B') as { us: number[]; japan: number[] };
}

function read(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../src/figures/checks/nist/${name}.json`, import.meta.url), 'utf8'));
}
