/** Data sets and certified values of NIST; `nist/README.md` says where each was read. */
import autoMileage from './nist/AUTO83B.json' with { type: 'json' };
import boxBod from './nist/BoxBOD.json' with { type: 'json' };
import chwirut2 from './nist/Chwirut2.json' with { type: 'json' };
import danWood from './nist/DanWood.json' with { type: 'json' };
import lanczos3 from './nist/Lanczos3.json' with { type: 'json' };
import lew from './nist/Lew.json' with { type: 'json' };
import michelso from './nist/Michelso.json' with { type: 'json' };
import misra1a from './nist/Misra1a.json' with { type: 'json' };
import misra1b from './nist/Misra1b.json' with { type: 'json' };
import noInt1 from './nist/NoInt1.json' with { type: 'json' };
import norris from './nist/Norris.json' with { type: 'json' };
import numAcc1 from './nist/NumAcc1.json' with { type: 'json' };
import numAcc2 from './nist/NumAcc2.json' with { type: 'json' };
import numAcc3 from './nist/NumAcc3.json' with { type: 'json' };
import piDigits from './nist/PiDigits.json' with { type: 'json' };
import pontius from './nist/Pontius.json' with { type: 'json' };
import zarr13 from './nist/ZARR13.json' with { type: 'json' };

/** A least-squares set: data, certified parameters and their standard deviations. */
export interface FitSet {
  readonly name: string;
  readonly model: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly certified: {
    readonly params: readonly number[];
    readonly sd: readonly number[];
    readonly rss: number;
    readonly residualSd: number;
    readonly df: number;
  };
}

export interface LinearSet extends FitSet {
  readonly certified: FitSet['certified'] & { readonly rSquared: number };
}

export interface NonlinearSet extends FitSet {
  /** NIST's level of difficulty: Lower or Higher. */
  readonly level: string;
  /** Start 1, far from the solution, and start 2, near it. */
  readonly starts: readonly (readonly number[])[];
}

export interface UnivariateSet {
  readonly name: string;
  readonly y: readonly number[];
  readonly certified: { readonly mean: number; readonly stdDev: number; readonly lag1: number };
}

export const LINEAR: readonly LinearSet[] = [norris, noInt1, pontius];
export const NONLINEAR: readonly NonlinearSet[] = [misra1a, misra1b, boxBod, danWood, chwirut2, lanczos3];
export const UNIVARIATE: readonly UnivariateSet[] = [lew, michelso, piDigits, numAcc1, numAcc2, numAcc3];

/** Heat-flow meter of the e-Handbook, 1.3.5.2. */
export const ZARR13: { readonly y: readonly number[] } = zarr13;
/** Miles per gallon of 249 and of 79 cars, e-Handbook, 1.3.5.3. */
export const AUTO83B: { readonly us: readonly number[]; readonly japan: readonly number[] } = autoMileage;
