/**
 * A value with its unit and its uncertainty, the latter as sensitivities to named independent sources
 * (JCGM 100:2008, 5.1 and 5.2: what two quantities share is carried by name, so correlation is exact).
 */

/** One independent cause of uncertainty: an instrument's offset, a run's ambient, a column of a fit's covariance factor. */
export interface Source {
  /** Unique and stable, as design section 7 spells it: `instrument:inline-meter/current/gain`. */
  readonly id: string;
  /** In words, for readers: "gain error of the inline meter". */
  readonly title: string;
  /** Degrees of freedom; null means infinitely many (a stated limit, not an estimate from data). */
  readonly dof: number | null;
  /** Said where its error is known only to lie within limits (JCGM 100:2008, 4.3.7); else it is normal, or Student's by its degrees of freedom. */
  readonly distribution?: 'rectangular';
  /** Its own standard uncertainty, above zero; K where it is of a temperature. Left out where it is known only by what it adds to a figure. */
  readonly standard?: { readonly u: number; readonly unit: string };
}

/** One source's share of a quantity: sensitivity × standard uncertainty, signed, in the unit of the quantity (K where it is °C). */
export interface Part {
  readonly source: Source;
  readonly share: number;
}

export interface Quantity {
  /** In `unit`, finite, unrounded. */
  readonly value: number;
  /** Canonical unit: °C, K, s, Hz, A, V, W, J, 1, a quotient such as K/W, or a score's own word. */
  readonly unit: string;
  /** Sorted by source id, at most one part a source; [] = exact; null = uncertainty unknown. */
  readonly parts: readonly Part[] | null;
  /** True when `parts` hold repeatability alone, because a sensor that it rests on states no accuracy. */
  readonly repeatabilityOnly?: boolean;
  /** Coarsest instrument step that the value rests on, in `unit`: printing is never finer. */
  readonly step?: number;
  /** Of an exact value that its author wrote with zeros at its end, 2.0: what its last digit counts, in `unit`. Printed; arithmetic leaves it behind. */
  readonly lastDigit?: number;
}
