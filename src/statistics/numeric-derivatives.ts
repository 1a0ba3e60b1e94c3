/** Fifth root of the rounding of doubles: where the error of the five-point rule and that of rounding balance. */
const RELATIVE_STEP = 7e-4;

/**
 * Derivatives of a curve by each of its parameters, by the five-point rule: about twelve digits for a smooth model.
 *
 * When: a model whose derivatives are not worth writing out.
 * @param model y = model(x, parameters)
 * @param x finite numbers. Unit: any.
 * @param parameters where to derive; a parameter of zero is moved by an absolute step instead of a relative one
 * @returns a column for each parameter, in the unit of y ÷ that of the parameter
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.3.6.
 * Cost: 4 × parameters × x evaluations of the model.
 * @example
 * Math.round(numericDerivatives((x, [a]) => a * x, [5], [3])[0][0]) // 5
 */
export function numericDerivatives(
  model: (x: number, parameters: readonly number[]) => number,
  x: ArrayLike<number>,
  parameters: readonly number[],
): Float64Array[] {
  return parameters.map((value, k) => {
    const step = RELATIVE_STEP * (Math.abs(value) || 1);
    const moved = [-2, -1, 1, 2].map((times) => parameters.with(k, value + times * step)) as [
      number[],
      number[],
      number[],
      number[],
    ];
    return Float64Array.from(x, (at) => {
      const [a, b, c, d] = moved.map((there) => model(at, there)) as [number, number, number, number];
      return (8 * (c - b) - (d - a)) / (12 * step);
    });
  });
}
