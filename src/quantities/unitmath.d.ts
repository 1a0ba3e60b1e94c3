/** The part of unitmath that `unit-library.ts` uses; the package's own declarations do not describe the file that Node can load. */
declare module 'unitmath/es/UnitMath.js' {
  interface LibraryUnit {
    /** Exponents of kg, m, s, A, K, cd, mol, rad, bit, sr. */
    readonly dimension: readonly number[];
    getNormalizedValue(): number;
  }
  const unit: (value: number, spelling: string) => LibraryUnit;
  export default unit;
}
