/**
 * Arithmetic with quantities: units checked, uncertainty carried through by source. °C is a point on a scale: °C − °C = K,
 * °C ± K = °C; what has no meaning is refused with both operands.
 */
import { combine, qualified, sumSorted, type Term } from './combine.ts';
import { dimensionOf, nameOf, sameDimension, times } from './dimension.ts';
import { printQuantity } from './print.ts';
import type { Quantity } from './quantity.ts';
import { isRefusal, type Refusal, refuse } from './refusal.ts';

export { combine, isRefusal, type Refusal };

/** a + b, in a's unit. Refuses different units and °C + °C. */
export function add(a: Quantity, b: Quantity): Quantity | Refusal {
  const written = () => `${describe(a)} + ${describe(b)}`;
  if (a.unit === '°C' && b.unit === '°C') {
    return refuse(`${written()}: Celsius temperatures cannot be added`, 'a temperature and a difference in K');
  }
  const unit = a.unit === '°C' || b.unit === '°C' ? '°C' : a.unit;
  if (!addable(a, b)) return mismatch(written, a);
  return finite(written, combine(a.value + b.value, unit, weighed([a, b], 1)));
}

/** a − b: K for two Celsius temperatures, else in a's unit. Refuses different units and K − °C. */
export function subtract(a: Quantity, b: Quantity): Quantity | Refusal {
  const written = () => `${describe(a)} − ${describe(b)}`;
  if (!addable(a, b)) return mismatch(written, a);
  if (b.unit === '°C' && a.unit !== '°C') {
    return refuse(`${written()}: a temperature cannot be taken from a difference`, 'a difference in K');
  }
  const unit = b.unit === '°C' ? 'K' : a.unit;
  const terms = [
    { quantity: a, sensitivity: 1 },
    { quantity: b, sensitivity: -1 },
  ];
  return finite(written, combine(a.value - b.value, unit, terms));
}

/** a × b in the product of their units. Refuses Celsius temperatures. */
export function multiply(a: Quantity, b: Quantity): Quantity | Refusal {
  const written = () => `${describe(a)} × ${describe(b)}`;
  if (a.unit === '°C' || b.unit === '°C') return scaleOnly(written, 'multiplied');
  const terms = [
    { quantity: a, sensitivity: b.value },
    { quantity: b, sensitivity: a.value },
  ];
  return finite(written, combine(a.value * b.value, nameOf(times(dimensionOf(a.unit), dimensionOf(b.unit))), terms));
}

/** a ÷ b in the quotient of their units. Refuses Celsius temperatures and a divisor of zero. */
export function divide(a: Quantity, b: Quantity): Quantity | Refusal {
  const written = () => `${describe(a)} / ${describe(b)}`;
  if (a.unit === '°C' || b.unit === '°C') return scaleOnly(written, 'divided');
  if (b.value === 0) return refuse(`${written()}: division by zero`, 'a divisor other than 0');
  const quotient = a.value / b.value;
  const terms = [
    { quantity: a, sensitivity: 1 / b.value },
    { quantity: b, sensitivity: -quotient / b.value },
  ];
  return finite(written, combine(quotient, nameOf(times(dimensionOf(a.unit), dimensionOf(b.unit), -1)), terms));
}

/** −a. Refuses Celsius temperatures: a number below zero is written as one (`-5 °C`). */
export function negate(a: Quantity): Quantity | Refusal {
  if (a.unit === '°C') return scaleOnly(() => `−(${describe(a)})`, 'negated');
  return combine(a.value === 0 ? 0 : -a.value, a.unit, [{ quantity: a, sensitivity: -1 }]);
}

/** |a|. Refuses Celsius temperatures. */
export function absolute(a: Quantity): Quantity | Refusal {
  if (a.unit === '°C') return scaleOnly(() => `abs(${describe(a)})`, 'made absolute');
  return a.value < 0 ? negate(a) : a;
}

/** The smallest operand with its uncertainty (the first of equal ones). Refuses an empty list and different units. */
export function minimum(list: readonly Quantity[]): Quantity | Refusal {
  return extreme('min', list, (candidate, best) => candidate < best);
}

/** The largest operand with its uncertainty (the first of equal ones). Refuses an empty list and different units. */
export function maximum(list: readonly Quantity[]): Quantity | Refusal {
  return extreme('max', list, (candidate, best) => candidate > best);
}

/** The mean, °C included. Its step is the coarsest operand's: averaging resolves no finer than the instrument shows. Refuses an empty list and different units. */
export function mean(list: readonly Quantity[]): Quantity | Refusal {
  const refused = unlike('mean', list);
  if (refused) return refused;
  const n = list.length;
  const combined = combine(sumSorted(list.map(({ value }) => value)) / n, list[0]!.unit, weighed(list, 1 / n));
  const step = Math.max(0, ...list.map((quantity) => quantity.step ?? 0));
  return finite(() => called('mean', list), step > 0 ? { ...combined, step } : combined);
}

/** The sum of differences or other quantities in one pass. Refuses an empty list, different units and Celsius temperatures. */
export function sum(list: readonly Quantity[]): Quantity | Refusal {
  const refused = unlike('sum', list);
  if (refused) return refused;
  if (list[0]!.unit === '°C') return scaleOnly(() => called('sum', list), 'added');
  return finite(() => called('sum', list), combine(sumSorted(list.map(({ value }) => value)), list[0]!.unit, weighed(list, 1)));
}

function extreme(
  name: string,
  list: readonly Quantity[],
  better: (candidate: number, best: number) => boolean,
): Quantity | Refusal {
  const refused = unlike(name, list);
  if (refused) return refused;
  const { value, unit, parts, step } = list.reduce((best, candidate) => (better(candidate.value, best.value) ? candidate : best));
  const known = list.every((quantity) => quantity.parts !== null);
  return qualified({ value, unit, parts: known ? parts : null }, list, step);
}

/** Why quantities cannot be compared or averaged, or undefined where they can. */
function unlike(name: string, list: readonly Quantity[]): Refusal | undefined {
  const [first] = list;
  if (!first) return refuse(`${name}() of nothing`, 'at least one quantity');
  const other = list.find(({ unit }) => unit !== first.unit);
  return other && refuse(`${name}(${describe(first)}, ${describe(other)}): the units differ`, `quantities in ${first.unit}`);
}

function addable(a: Quantity, b: Quantity): boolean {
  return a.unit === b.unit || sameDimension(dimensionOf(a.unit), dimensionOf(b.unit));
}

function weighed(list: readonly Quantity[], sensitivity: number): Term[] {
  return list.map((quantity) => ({ quantity, sensitivity }));
}

function mismatch(written: () => string, a: Quantity): Refusal {
  return refuse(`${written()}: the units differ`, `a quantity in ${a.unit === '°C' ? '°C or K' : a.unit}`);
}

function scaleOnly(written: () => string, done: string): Refusal {
  return refuse(`${written()}: a Celsius temperature cannot be ${done}`, 'a difference in K');
}

function finite(written: () => string, result: Quantity): Quantity | Refusal {
  const bounded = Number.isFinite(result.value) && (result.parts ?? []).every(({ share }) => Number.isFinite(share));
  return bounded ? result : refuse(`${written()}: too large to compute`, 'smaller numbers');
}

function called(name: string, list: readonly Quantity[]): string {
  return `${name}(${list.slice(0, 3).map(describe).join(', ')}${list.length > 3 ? ', …' : ''})`;
}

/** A quantity as refusals name it: as it is printed everywhere, with a plain blank; of one that overflowed, what is left. */
function describe(quantity: Quantity): string {
  const { value, unit, parts } = quantity;
  if (![value, ...(parts ?? []).map(({ share }) => share)].every(Number.isFinite)) return `${value} ${unit}`;
  return printQuantity(quantity).text.replaceAll('\u00a0', ' ');
}
