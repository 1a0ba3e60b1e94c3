/** The one door to unitmath: factors and dimensions of units that our own table lacks. Temperatures never come through it. */
import unit from 'unitmath/es/UnitMath.js';
import { type Dimension, single, times } from './dimension.ts';

/** Mechanical and radiometric units worth reading; the library's links, drops and sticks are more likely a slip or a score's word. */
const ADMITTED =
  /^(?:(?:[yzafpnumcdhkMGT]|da)?(?:m|g|N|Pa|bar|eV|L|mol|cd|H|psi)|[pnum]F|atm|ft|foot|inch|mile|lbf|hp|BTU|hectare)$/;
const BASES = ['kg', 'm', 's', 'A', 'K', 'cd', 'mol'];

/** Dimension and factor to coherent SI units of one unit symbol, or undefined where it is not admitted. */
export function lookUp(symbol: string): { readonly dimension: Dimension; readonly factor: number } | undefined {
  if (!ADMITTED.test(symbol)) return undefined;
  const found = unit(1, symbol);
  const dimension = BASES.reduce(
    (product, base, i) => times(product, single(base), found.dimension[i] ?? 0),
    new Map() as Dimension,
  );
  return { dimension, factor: found.getNormalizedValue() };
}
